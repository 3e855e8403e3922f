interface DeltaProps {
  /** Whether the change is good, not whether the number grew. */
  readonly kind: "better" | "worse" | "same";
  /** The change in words and numbers, e.g. `€ 40 k less than last month`. */
  readonly text: string;
}

const LOOKS = {
  better: { path: "M0 9L5 0L10 9Z", fill: "var(--better)", word: "Better: " },
  worse: { path: "M0 0H10L5 9Z", fill: "var(--worse)", word: "Worse: " },
  same: { path: "M0 3.5H10V5.5H0Z", fill: "var(--ink-3)", word: "Unchanged: " },
} as const;

/** A change for the better or the worse: pointing up or down, blue or orange, always with words. */
export function Delta({ kind, text }: DeltaProps) {
  const { path, fill, word } = LOOKS[kind];
  return (
    <span className="inline-flex items-baseline gap-1.5">
      <svg viewBox="0 0 10 9" className="h-[0.6em] w-[0.7em] shrink-0" aria-hidden="true">
        <path d={path} fill={fill} />
      </svg>
      <span>
        <span className="sr-only">{word}</span>
        {text}
      </span>
    </span>
  );
}
