import { RowTable } from "@/app/_ui/RowTable";
import type { MeanHours } from "@/lib/reliability/downtime";
import type { DowntimeRow } from "@/lib/view/downtimeTable";
import { plainNumber } from "@/lib/view/number";
import { hours } from "@/lib/view/time";

interface DowntimeTableProps {
  readonly caption: string;
  /** A class of items with its rows. */
  readonly groups: readonly { readonly label: string; readonly rows: readonly DowntimeRow[] }[];
}

const HEADS = ["Number", "Median", "Mean", "Of it waiting", "Of it work", "Class belief", "Pulled to it"];

const told = (value: number | null) => (value === null ? "–" : hours(value));
const split = ({ hours: mean, stops }: MeanHours) => (mean === null ? "–" : `${hours(mean)} (${stops} told)`);

/** Recorded stops by class and by whether a spare was at hand, split into waiting and work. */
export function DowntimeTable({ caption, groups }: DowntimeTableProps) {
  return (
    <>
      <RowTable caption={caption} heads={["Class", "Stops", ...HEADS.map((text) => ({ text, end: true }))]}>
        {groups.flatMap(({ label, rows }) =>
          rows.map((row) => (
            <tr key={`${label} ${row.spare}`}>
              <th scope="row">{label}</th>
              <td>{row.spare === "not known" ? "spare at hand not known" : row.spare}</td>
              <td data-align="end">{plainNumber(row.stops)}</td>
              <td data-align="end">{told(row.median)}</td>
              <td data-align="end">{told(row.mean)}</td>
              <td data-align="end">{split(row.waiting)}</td>
              <td data-align="end">{split(row.work)}</td>
              <td data-align="end">
                {row.belief === null
                  ? "–"
                  : `${hours(row.belief.hours)}, worth ${plainNumber(row.belief.weight)} stops`}
              </td>
              <td data-align="end">{told(row.pulled)}</td>
            </tr>
          )),
        )}
      </RowTable>
      <p className="measure mt-2 text-ink-2 text-sm">
        Waiting and work are means over the stops that tell both. Waiting is the logistic delay; diagnosis,
        repair and restart are recorded as one, as work. Pulled = (belief × its weight + hours of the stops) ÷
        (weight + number of stops).
      </p>
    </>
  );
}
