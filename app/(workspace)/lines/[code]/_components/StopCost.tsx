import { Legend } from "@/app/_ui/Legend";
import { RowTable } from "@/app/_ui/RowTable";
import { StackBar } from "@/app/_ui/StackBar";
import { StaleMark } from "@/app/_ui/StaleMark";
import { WhereFrom } from "@/app/_ui/WhereFrom";
import { money } from "@/lib/view/format";
import type { LineDossier } from "@/lib/view/lineDossier";
import { approvalEnded, type LineCost } from "@/lib/view/lineRanking";
import { NBSP } from "@/lib/view/number";
import { type StopCostRow, stopCostTable } from "@/lib/view/stopCostTable";
import { day } from "@/lib/view/time";

const FOUND = {
  margin: "Found from the contribution margin that is lost.",
  contract: "Found from contracts.",
  estimate: "Estimated by people who know the line.",
} as const;

/** What stops of five lengths cost on the line, split into where the money goes. */
export function StopCost({ line }: { readonly line: LineDossier }) {
  const rows = stopCostTable(line);
  const { costMethod } = line.stored;
  if (rows === null) return <p>Without a cost per hour nobody can say what a stop costs. Enter one above.</p>;
  return (
    <>
      <Stale cost={line.cost} asOf={line.asOf} />
      <Rows code={line.code} rows={rows} />
      <Legend
        items={[
          { label: "any stop at all", look: "pale" },
          { label: "hours beyond the buffer", look: "solid" },
          { label: "steps passed", look: "hatch" },
        ]}
      />
      <p className="measure mt-2 text-ink-2">
        {stepsInWords(line.cost)}{" "}
        {costMethod === null ? "How it was found is not recorded." : FOUND[costMethod]} In EUR at the budget
        rate; a step counts only once the stop has lasted longer than its hours.
      </p>
      <WhereFrom entity="Line" id={line.id} of={line.code} />
    </>
  );
}

function Stale({ cost, asOf }: Pick<LineDossier, "cost" | "asOf">) {
  if (!approvalEnded(cost, asOf) || cost.validUntil === null) return null;
  const text = `Approval ran out on ${day(cost.validUntil)}`;
  return (
    <p className="measure mb-3 border-ink border-l-4 bg-shade px-4 py-2">
      <StaleMark text="Expired" /> <strong>{text}.</strong> Ask {cost.owner ?? "finance"} to confirm it again;
      until then the figures below rest on the old approval.
    </p>
  );
}

/** Hours as recorded: a step after 48.5 h is not one after 49 h. */
const exactHours = (value: number) => `${value}${NBSP}h`;

function stepsInWords({ fixed, steps }: LineCost): string {
  const words = steps.map(({ afterHours, cost }) => `${money(cost)} more after ${exactHours(afterHours)}`);
  const first = fixed === null ? [] : [`${money(fixed)} by any stop`];
  const all = [...first, ...words];
  return all.length === 0 ? "No fixed cost and no step is recorded." : `${all.join("; ")}.`;
}

function Rows({ code, rows }: { readonly code: string; readonly rows: readonly StopCostRow[] }) {
  const max = Math.max(...rows.map(({ total }) => total));
  const heads = [
    "Stop of",
    { text: "Costs", end: true },
    { text: "Of it steps", end: true },
    `Scale to ${money(max)}`,
  ];
  return (
    <div className="mb-2 max-w-3xl">
      <RowTable caption={`What a stop costs on ${code}`} heads={heads}>
        {rows.map(({ hours, fixed, hourly, steps, total }) => (
          <tr key={hours}>
            <th scope="row">{exactHours(hours)}</th>
            <td data-align="end">{money(total)}</td>
            <td data-align="end">{money(steps)}</td>
            <td>
              <StackBar
                max={max}
                text={`${money(fixed)} fixed, ${money(hourly)} by the hour, ${money(steps)} by steps`}
                parts={[
                  { label: "fixed", value: fixed, look: "pale" },
                  { label: "by the hour", value: hourly, look: "solid" },
                  { label: "steps", value: steps, look: "hatch" },
                ]}
              />
            </td>
          </tr>
        ))}
      </RowTable>
    </div>
  );
}
