import { AsOfLink } from "@/app/_ui/AsOfLink";
import { money } from "@/lib/view/format";
import { type PlanSummary, planStatusWords } from "@/lib/view/plan";
import { day } from "@/lib/view/time";

const HEADS = ["Plan", "Year", "State", "Budget", "Spent", "Funded lines", "Kept"] as const;
const NUMBERS: readonly string[] = ["Year", "Budget", "Spent", "Funded lines"];

/** The plans, each with its totals or, where some of its lines are not the person's, only a count. */
export function PlanTable({ plans }: { readonly plans: readonly PlanSummary[] }) {
  return (
    <div className="table-frame">
      <table className="table">
        <caption className="sr-only">Plans</caption>
        <thead>
          <tr>
            {HEADS.map((head) => (
              <th
                key={head}
                scope="col"
                className="label"
                data-align={NUMBERS.includes(head) ? "end" : undefined}
              >
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {plans.map((plan) => (
            <tr key={plan.id}>
              <th scope="row">
                <AsOfLink href={`/plans/${plan.id}`} className="row-link">
                  {plan.name}
                </AsOfLink>
              </th>
              <td data-align="end">{plan.year}</td>
              <td>{planStatusWords(plan.status)}</td>
              <PlanMoney plan={plan} />
              <td>
                {day(plan.createdOn)}, {plan.createdBy}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function PlanMoney({ plan }: { readonly plan: PlanSummary }) {
  const { totals, ownFunded, ownLines } = plan;
  if (totals === null)
    return (
      <>
        <td colSpan={2} className="text-ink-2">
          covers more sites than yours
        </td>
        <td data-align="end">
          {ownFunded} of your {ownLines}
        </td>
      </>
    );
  return (
    <>
      <td data-align="end">{money(totals.budget)}</td>
      <td data-align="end">{money(totals.spent)}</td>
      <td data-align="end">
        {totals.funded} of {totals.lines}
      </td>
    </>
  );
}
