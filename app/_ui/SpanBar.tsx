interface SpanBarProps {
  readonly low: number;
  readonly mean: number;
  readonly high: number;
  /** Both ends of the scale all bars of the column share. */
  readonly min?: number;
  readonly max: number;
  /** The same figure in words, e.g. from `moneySpan`; read out and shown as title. */
  readonly text: string;
  /** Rests on assumed values: dotted outline. */
  readonly assumed?: boolean;
}

function share(value: number, min: number, max: number): number {
  return max <= min ? 0 : Math.min(100, Math.max(0, ((value - min) / (max - min)) * 100));
}

/** An uncertain figure on a shared scale: the span as a bar, the mean as a tick across it. */
export function SpanBar({ low, mean, high, min = 0, max, text, assumed = false }: SpanBarProps) {
  const [from, at, to] = [low, mean, high].map((value) => share(value, min, max)) as [number, number, number];
  return (
    <svg
      role="img"
      aria-label={text}
      viewBox="0 0 100 14"
      preserveAspectRatio="none"
      className="inline-block h-3.5 w-full min-w-24 max-w-60 align-[-0.15em]"
    >
      <title>{text}</title>
      <line x1="0" x2="100" y1="7" y2="7" stroke="var(--rule-2)" vectorEffect="non-scaling-stroke" />
      <rect
        x={from}
        y="4"
        width={Math.max(to - from, 0.8)}
        height="6"
        fill={assumed ? "var(--sheet)" : "var(--money-2)"}
        stroke="var(--money-4)"
        strokeDasharray={assumed ? "1.5 2.5" : undefined}
        vectorEffect="non-scaling-stroke"
      />
      <line
        x1={at}
        x2={at}
        y1="0.5"
        y2="13.5"
        stroke="var(--money-5)"
        strokeWidth="2.5"
        vectorEffect="non-scaling-stroke"
      />
    </svg>
  );
}
