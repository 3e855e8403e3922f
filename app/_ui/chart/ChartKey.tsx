import { LOOKS } from "@/app/_ui/chart/chartLooks";
import type { SpanChart } from "@/lib/view/spanChart";

/** What the lines and the band of a chart are. */
export function ChartKey({ lines, bandName }: Pick<SpanChart, "lines" | "bandName">) {
  return (
    <span className="mt-1 flex flex-wrap gap-x-5 text-ink-2 text-sm">
      {lines.map(({ key, name, look }) => (
        <span key={key} className="inline-flex items-center gap-2">
          <svg viewBox="0 0 28 8" className="h-2 w-7" aria-hidden="true">
            <line
              x2="28"
              y1="4"
              y2="4"
              stroke={LOOKS[look].stroke}
              strokeWidth={LOOKS[look].width}
              strokeDasharray={LOOKS[look].dash}
            />
          </svg>
          {name}
        </span>
      ))}
      {bandName === null ? null : (
        <span className="inline-flex items-center gap-2">
          <span className="inline-block h-3 w-7 bg-money-2" aria-hidden="true" />
          {bandName}
        </span>
      )}
    </span>
  );
}
