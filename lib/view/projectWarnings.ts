import { compareAmounts } from "@/lib/kernel/money";
import { type Overrun, overrunNorms } from "@/lib/projects/overrun";
import { percent } from "@/lib/view/chance";
import { exactMoney } from "@/lib/view/format";
import { count } from "@/lib/view/number";
import type { ProjectFigures, ProjectFile } from "@/lib/view/project";
import { localMoney } from "@/lib/view/projectMoney";

/** What the forecasts and the ledger say that somebody must act on; empty when nothing. */
export function projectWarnings(project: Pick<ProjectFile, "currency">, figures: ProjectFigures): string[] {
  const { control, overdue, unscheduled, earned } = figures;
  return [
    overrunWarning(figures.overrun, { currency: project.currency, earned }),
    ...moneyWarnings(project, figures),
    restWarning(control?.tcpi ?? null),
    overdue.length > 0 ? `${count(overdue.length, "milestone is", "milestones are")} overdue.` : "",
    (unscheduled ?? 0) > 0
      ? "Milestones without a due day are never planned, so they cannot show as late."
      : "",
    control !== null && control.cpi === null ? "Nothing is paid yet, so there is no cost index." : "",
  ].filter((text) => text !== "");
}

function overrunWarning(
  seen: Overrun | null,
  { currency, earned }: { readonly currency: string; readonly earned: number | null },
): string {
  if (seen === null || seen.state === "early" || seen.state === "kept") return "";
  const { tolerance, leastEarned } = overrunNorms;
  const enough =
    seen.state === "budget"
      ? "what is left of contingency would not be enough"
      : "only contingency could pay for it";
  return (
    `Overrun: with ${percent(earned)} earned, even the lowest forecast of the work, ${localMoney(seen.low, currency)}, ` +
    `passes the budget less contingency, ${localMoney(seen.work, currency)}; ${enough}. ` +
    `(Said from ${percent(leastEarned)} earned and ${percent(tolerance)} above; common practice, no source.)`
  );
}

/** What the ledger alone says that somebody must act on. */
export function moneyWarnings(
  { currency }: Pick<ProjectFile, "currency">,
  figures: ProjectFigures,
): string[] {
  const { ledger, bound, budget } = figures;
  const { total, askedNew, askedOfContingency, contingencyLeft, overInvoiced, withoutOrder } = ledger;
  const above = (amount: string | null, limit: string) =>
    amount !== null && compareAmounts(amount, limit) > 0;
  return [
    above(bound, budget) ? "Paid and ordered together are above the budget." : "",
    above(total.forecast, budget)
      ? `Paid, ordered and still to order together are ${exactMoney(total.forecast, currency)}, above the budget.`
      : "",
    contingencyLeft !== null && compareAmounts(contingencyLeft, "0") < 0
      ? "More was taken from contingency than there was."
      : "",
    above(askedNew, "0")
      ? `${exactMoney(askedNew, currency)} of new money is asked for and not decided.`
      : "",
    above(askedOfContingency, "0")
      ? `${exactMoney(askedOfContingency, currency)} from contingency is asked for and not decided.`
      : "",
    ...overInvoiced.map(
      ({ reference, by }) => `Invoices for ${reference} are ${exactMoney(by, currency)} above the order.`,
    ),
    withoutOrder.length > 0
      ? `${count(withoutOrder.length, "invoice names", "invoices name")} an order that is not in the ledger: ${withoutOrder.slice(0, 3).join(", ")}.`
      : "",
  ].filter((text) => text !== "");
}
/** Above this the rest of the budget has to earn more than work usually does; common practice, no source. */
const HARD_REST = 1.1;

function restWarning(tcpi: number | null): string {
  if (tcpi === null) return "";
  if (tcpi < 0) return "The budget is spent and work is left: the budget cannot be kept.";
  return tcpi > HARD_REST
    ? `To keep the budget, each unit of money still to be spent would have to earn ${tcpi.toFixed(2)}: hardly reachable.`
    : "";
}
