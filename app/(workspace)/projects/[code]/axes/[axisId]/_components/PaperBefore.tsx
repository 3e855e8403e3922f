import { RowTable } from "@/app/_ui/RowTable";
import { SignLines } from "@/app/_ui/SignLines";
import { type AxisFile, axisState, recordedValue } from "@/lib/view/axisRecord";
import { checkUnit, paperValues, takesBefore, takesLimit } from "@/lib/view/axisRule";
import { day } from "@/lib/view/time";

const HEADS = [
  "Value",
  "Unit",
  { text: "Found before", end: true },
  { text: "Limit", end: true },
  "Instrument",
  "By",
  "Day",
];

/** What else leaves with the old drive. Common practice, no source. */
const ALSO = [
  "Direction and polarity, at drive and controller",
  "Following-error limit, position window",
  "Gains, filters, inertia ratio, torque and current limits",
  "Highest speed, acceleration, jerk; brake delays",
  "Cams, gears, phase offsets, probe settings; reaction to each fault",
  "Digest of the program as uploaded from the controller",
] as const;

/** The sheet filled in by hand before the old drive leaves; what is known already is printed in. */
export function PaperBefore({ axis }: { readonly axis: AxisFile }) {
  const rows = axisState(axis).checks.filter(({ check }) => takesBefore(check) || takesLimit(check));
  return (
    <section aria-label="Sheet 1, before removal">
      <h2 className="mt-3 mb-1 font-semibold text-lg">Sheet 1: before the old drive is removed</h2>
      <RowTable caption="Values found before removal" heads={HEADS}>
        {rows.map((judged) => {
          const { check, entry } = judged;
          const { before, limit } = paperValues(judged, recordedValue(check.id, axis));
          return (
            <tr key={check.id} className="h-7">
              <th scope="row">{check.title}</th>
              <td>{checkUnit(check, axis.travelUnit)}</td>
              <td data-align="end">{before}</td>
              <td data-align="end">{limit}</td>
              <td>{entry.instrument}</td>
              <td>{entry.by}</td>
              <td className="whitespace-nowrap">{entry.on === null ? "" : day(entry.on)}</td>
            </tr>
          );
        })}
      </RowTable>
      <h3 className="mt-3 font-semibold">Also written down, here or on a sheet attached</h3>
      <ul className="grid grid-cols-2 gap-x-6 text-sm">
        {ALSO.map((one) => (
          <li key={one} className="h-8 border-rule-2 border-b pt-1">
            {one}
          </li>
        ))}
      </ul>
      <SignLines roles={["Recorded by", "Checked by, somebody else"]} />
    </section>
  );
}
