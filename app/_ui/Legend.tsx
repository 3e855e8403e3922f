interface LegendProps {
  readonly items: readonly { readonly label: string; readonly look: "solid" | "hatch" | "pale" }[];
}

/** What the looks of a stacked bar mean. */
export function Legend({ items }: LegendProps) {
  return (
    <ul className="flex flex-wrap gap-x-5 gap-y-1 text-ink-2 text-sm">
      {items.map(({ label, look }) => (
        <li key={label} className="inline-flex items-center gap-2">
          <span className={`inline-block h-3 w-6 ${look}`} aria-hidden="true" />
          {label}
        </li>
      ))}
    </ul>
  );
}
