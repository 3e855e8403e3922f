interface ShareBarsProps {
  /** Share of the usable pieces and of the demand, in [0, 1]; null is none to share. */
  readonly ofSpares: number | null;
  readonly ofDemand: number | null;
  /** The same in words; read out and shown as title. */
  readonly text: string;
}

const across = (share: number | null) => `${Math.min(1, share ?? 0) * 100}`;

/** What a site holds over what it needs, on one scale from nothing to all: filled above, outlined below. */
export function ShareBars({ ofSpares, ofDemand, text }: ShareBarsProps) {
  return (
    <svg
      role="img"
      aria-label={text}
      viewBox="0 0 100 16"
      preserveAspectRatio="none"
      className="inline-block h-4 w-full min-w-20 max-w-40 align-[-0.2em]"
    >
      <title>{text}</title>
      <rect x="0" y="1" width={across(ofSpares)} height="6" fill="var(--money-4)" />
      <rect
        x="0.5"
        y="9.5"
        width={across(ofDemand)}
        height="5"
        fill="var(--sheet)"
        stroke="var(--ink-2)"
        vectorEffect="non-scaling-stroke"
      />
      <line x1="0" x2="0" y1="0" y2="16" stroke="var(--ink)" vectorEffect="non-scaling-stroke" />
    </svg>
  );
}
