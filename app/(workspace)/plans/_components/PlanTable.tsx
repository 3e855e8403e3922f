import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { money } from "@/lib/view/format";
import { type PlanSummary, planStatusWords } from "@/lib/view/plan";
import { day } from "@/lib/view/time";

const HEADS = [
  "Plan",
  { text: "Year", end: true },
  "State",
  { text: "Budget", end: true },
  { text: "Spent", end: true },
  { text: "Funded lines", end: true },
  "Kept",
];

/** The plans, each with its totals or, where some of its lines are not the person's, only a count. */
export function PlanTable({ plans }: { readonly plans: readonly PlanSummary[] }) {
  return (
    <RowTable caption="Plans" heads={HEADS}>
      {plans.map((plan) => (
        <tr key={plan.id}>
          <th scope="row">
            <AsOfLink href={`/plans/${plan.id}`} className="row-link">
              {plan.name}
            </AsOfLink>
            <span className="block text-ink-2 text-sm">
              {plan.kind === "board" ? `over years from ${plan.year}` : "ranking cut by a budget"}
            </span>
          </th>
          <td data-align="end">{plan.year}</td>
          <td>{planStatusWords(plan.status)}</td>
          <PlanMoney plan={plan} />
          <td>
            {day(plan.createdOn)}, {plan.createdBy}
          </td>
        </tr>
      ))}
    </RowTable>
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
