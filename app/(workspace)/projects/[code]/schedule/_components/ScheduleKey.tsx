const LOOKS = [
  { name: "As it now looks", fill: "var(--money-2)", height: 8 },
  { name: "Any slip moves the end", fill: "var(--money-4)", height: 8 },
  { name: "Done", fill: "var(--ink)", height: 8 },
  { name: "Plan in force", fill: "none", height: 8 },
  { name: "First plan", fill: "var(--rule-2)", height: 3 },
] as const;

/** What the bars mean, and how to move them. */
export function ScheduleKey({ mayWrite }: { readonly mayWrite: boolean }) {
  return (
    <div className="mt-2 flex flex-wrap gap-x-5 gap-y-1 text-ink-2 text-sm">
      {LOOKS.map(({ name, fill, height }) => (
        <span key={name} className="inline-flex items-center gap-2">
          <svg viewBox="0 0 28 10" className="h-2.5 w-7" aria-hidden="true">
            <rect
              x="0.5"
              y={(10 - height) / 2}
              width="27"
              height={height}
              fill={fill}
              stroke="var(--money-4)"
            />
          </svg>
          {name}
        </span>
      ))}
      <span>Pale bands are shutdowns; the line is today; ◆ is a gate; w needs a shutdown.</span>
      {mayWrite ? (
        <span className="no-print">
          Drag a bar, or focus it: ← → one working day, with Shift a week, Esc puts it back.
        </span>
      ) : null}
    </div>
  );
}
