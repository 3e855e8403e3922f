export interface StackPart {
  readonly label: string;
  /** In the unit of `max`, not negative. */
  readonly value: number;
  /** `solid` what is there anyway, `hatch` what only a shortage adds, `pale` a third part. */
  readonly look: "solid" | "hatch" | "pale";
}

interface StackBarProps {
  readonly parts: readonly StackPart[];
  /** The scale all bars of the column share. */
  readonly max: number;
  /** The same figures in words; read out and shown as title. */
  readonly text: string;
}

/** A sum and what it is made of, on a shared scale. */
export function StackBar({ parts, max, text }: StackBarProps) {
  return (
    <span
      role="img"
      aria-label={text}
      title={text}
      className="inline-flex h-3 w-full min-w-24 max-w-60 border-rule-2 border-b align-[-0.1em]"
    >
      {parts.map(({ label, value, look }) => (
        <span
          key={label}
          className={`h-full ${look}`}
          style={{ width: `${max > 0 ? Math.min(100, (value / max) * 100) : 0}%` }}
        />
      ))}
    </span>
  );
}
