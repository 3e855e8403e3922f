import { RowTable } from "@/app/_ui/RowTable";
import { SignLines } from "@/app/_ui/SignLines";
import type { JudgedCheck } from "@/lib/retrofit/judgeAxis";
import { type AxisFile, axisState, recordedValue, verdictWords } from "@/lib/view/axisRecord";
import { checkUnit, paperValues, ruleWords } from "@/lib/view/axisRule";
import { count } from "@/lib/view/number";
import { day } from "@/lib/view/time";

const HEADS = [
  "Check",
  "Passes when",
  { text: "Recorded", end: true },
  { text: "Limit", end: true },
  "Measured with the new drive",
  "Result",
  "Names, day",
];

/** The sheet an axis is accepted by: recorded beside measured values, limits, rules, results and names. */
export function PaperAcceptance({ axis }: { readonly axis: AxisFile }) {
  const { checks, hindrances } = axisState(axis);
  return (
    <section aria-label="Sheet 2, acceptance" className="break-before-page">
      <h2 className="mb-1 font-semibold text-lg">
        {`Sheet 2: acceptance of ${axis.machineCode} ${axis.code}, ${axis.projectCode}`}
      </h2>
      <p className="mb-2 text-sm">
        {axis.acceptedOn === null
          ? `Not accepted: ${count(hindrances.length, "check stands", "checks stand")} in the way.`
          : `Accepted on ${day(axis.acceptedOn)} by ${axis.acceptedBy}.`}
      </p>
      <RowTable caption="Recorded and measured values" heads={HEADS}>
        {checks.map((judged) => (
          <CheckRow key={judged.check.id} judged={judged} axis={axis} />
        ))}
      </RowTable>
      <SignLines roles={["Measured by", "Second name, safety checks", "Accepted by"]} />
    </section>
  );
}

interface CheckRowProps {
  readonly judged: JudgedCheck;
  readonly axis: AxisFile;
}

function CheckRow({ judged, axis }: CheckRowProps) {
  const { check, entry, verdict } = judged;
  const { before, limit } = paperValues(judged, recordedValue(check.id, axis));
  const names = [entry.by, entry.witness].filter((name) => name !== "").join(", ");
  return (
    <tr>
      <th scope="row" className="font-semibold">
        {check.title}
        {check.unit === null ? null : (
          <span className="font-normal">, {checkUnit(check, axis.travelUnit)}</span>
        )}
      </th>
      <td>{ruleWords(check)}</td>
      <td data-align="end">{before}</td>
      <td data-align="end">{limit}</td>
      <td>{check.unit === null ? "–" : entry.asLeft.join("  ")}</td>
      <td>
        <span className="whitespace-nowrap font-semibold">{verdictWords(verdict)}</span>
        <span className="block">{verdict.reason}</span>
      </td>
      <td>
        {names}
        {entry.on === null ? null : <span className="block whitespace-nowrap">{day(entry.on)}</span>}
      </td>
    </tr>
  );
}
