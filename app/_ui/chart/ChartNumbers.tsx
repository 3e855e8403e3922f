import { plainNumber } from "@/lib/view/number";
import type { ChartPoint, SpanChart } from "@/lib/view/spanChart";

function shown(value: number | null | undefined): string {
  if (value === null || value === undefined) return "not known";
  return plainNumber(value, Number.isInteger(value) ? 0 : 1);
}

function bandText({ band }: ChartPoint): string {
  return band === null ? "not known" : `${shown(band[0])}–${shown(band[1])}`;
}

/** The numbers of a chart as a table. */
export function ChartNumbers({ chart, open }: { readonly chart: SpanChart; readonly open: boolean }) {
  const { title, xLabel, unit, lines, points, bandName } = chart;
  return (
    <details open={open} className="disclosure mt-1">
      <summary className="py-1.5 text-sm">The numbers of this chart</summary>
      <div className="table-frame" data-long="">
        <table className="table">
          <caption className="sr-only">{`${title}, ${unit}`}</caption>
          <thead>
            <tr>
              <th scope="col" className="label">
                {xLabel}
              </th>
              {lines.map(({ key, name }) => (
                <th key={key} scope="col" className="label" data-align="end">
                  {name} <span className="unit block">{unit}</span>
                </th>
              ))}
              {bandName === null ? null : (
                <th scope="col" className="label" data-align="end">
                  {bandName} <span className="unit block">{unit}</span>
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {points.map((point) => (
              <tr key={point.label}>
                <th scope="row">{point.label}</th>
                {lines.map(({ key }) => (
                  <td key={key} data-align="end">
                    {shown(point.values[key])}
                  </td>
                ))}
                {bandName === null ? null : <td data-align="end">{bandText(point)}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
