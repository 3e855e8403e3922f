import { addMonths } from "@/lib/kernel/isoDate";
import { money } from "@/lib/view/format";
import { approvalEnded, isUnapproved } from "@/lib/view/lineRanking";
import { obligationWords } from "@/lib/view/obligation";
import type { PlanSummary } from "@/lib/view/plan";
import { type ProjectFile, projectFigures } from "@/lib/view/project";
import { localMoney } from "@/lib/view/projectMoney";
import { type FirstLine, firstLines, type ReportInput } from "@/lib/view/report";
import { dueDates } from "@/lib/view/reportDates";
import { worstPools } from "@/lib/view/reportPools";
import { day } from "@/lib/view/time";

/** Above this a site holds clearly more than its share; the product's own choice. */
const HELD_LIMIT = 1.5;
/** A forecast this far above the budget needs somebody's decision; the product's own choice. */
const OVER_LIMIT = 1.05;
const POOLS_LOOKED_AT = 5;
const LINES_LOOKED_AT = 5;

/** Something the reader is asked to decide, and the page it is decided on. */
export interface Decision {
  readonly text: string;
  readonly href: string;
}

/** What the reader is asked to decide, most pressing first. */
export function decisionsAsked(input: ReportInput): Decision[] {
  return [
    ...dutyDecisions(input),
    ...acceptanceDecisions(input),
    ...projectDecisions(input),
    ...buyDecisions(input),
    ...planDecisions(input),
    ...costDecisions(firstLines(input, LINES_LOOKED_AT), input.asOf),
    ...confirmDecisions(input),
    ...transferDecisions(input),
  ];
}

function dutyDecisions({ obligations, asOf }: ReportInput): Decision[] {
  return obligations
    .filter(({ dueOn }) => dueOn < asOf)
    .map(({ line, siteCode, kind, title, dueOn }) => ({
      text: `${line?.code ?? siteCode}: ${obligationWords(kind).name.toLowerCase()} overdue since ${day(dueOn)}: ${title}.`,
      href: line ? `/lines/${line.code}#binding` : "/dates",
    }));
}

/** Risks whose acceptance ran out or will within the next two months; the product's own choice. */
function acceptanceDecisions({ acceptances, asOf }: ReportInput): Decision[] {
  const soon = addMonths(asOf, 2);
  return acceptances
    .filter(({ until }) => until <= soon)
    .map(({ lineCode, acceptedBy, until, loss }) => {
      const held = `${acceptedBy} held its risk${loss ? ` of ${money(loss.mean)} a year` : ""} until ${day(until)}`;
      const text = `${lineCode}: ${until < asOf ? `${held}; decide again` : `${held}; decide before it runs out`}.`;
      return { text, href: `/lines/${lineCode}` };
    });
}

function projectDecisions({ projects, asOf }: ReportInput): Decision[] {
  return projects.flatMap((project: ProjectFile) => {
    const { control, budget: granted } = projectFigures(project, asOf);
    const trend = control?.eac.trend ?? null;
    if (trend === null || Number(granted) === 0 || trend <= OVER_LIMIT * Number(granted)) return [];
    const [end, budget] = [trend, Number(granted)].map((one) => localMoney(one, project.currency));
    const text = `${project.code}: take ${end} at the end for a budget of ${budget}, or cut its scope.`;
    return [{ text, href: `/projects/${project.code}` }];
  });
}

function buyDecisions(input: ReportInput): Decision[] {
  const dates = dueDates(input).filter(({ what }) => what !== "Last shipment" && what !== "Repair ends");
  const soonest = dates.filter((date, at) => dates.findIndex(({ of }) => of === date.of) === at);
  return soonest.map(({ of, on, passed, units }) => ({
    text: passed
      ? `${of}: how many to buy last is overdue since ${day(on)} (${units} units here).`
      : `${of}: how many to buy last, by ${day(on)} (${units} units here).`,
    href: "/dates",
  }));
}

function planDecisions({ plans, hidesAmounts }: ReportInput): Decision[] {
  return plans
    .filter(({ status }) => status === "put_forward")
    .map((plan) => ({
      text: hidesAmounts ? `Plan “${plan.name}” waits for approval.` : planWords(plan),
      href: `/plans/${plan.id}`,
    }));
}

function planWords({ name, totals }: PlanSummary): string {
  return totals === null
    ? `Plan “${name}” waits for approval; it covers more sites than these.`
    : `Plan “${name}” waits for approval: ${money(totals.spent)} for ${totals.funded} lines.`;
}

function costDecisions(lines: readonly FirstLine[], asOf: string): Decision[] {
  const doubtful = lines.filter(({ line: { cost } }) => cost === null || isUnapproved(cost, asOf));
  if (doubtful.length === 0) return [];
  const codes = doubtful.map(({ line }) => line.code).join(", ");
  const text = `Approve what an hour's stop costs on ${codes}; the ranking rests on it.`;
  return [{ text, href: "/lines" }];
}

/** Approvals that ran out, by who answers for them; the cost itself may still be right. */
function confirmDecisions({ lines, asOf }: ReportInput): Decision[] {
  const ended = new Map<string, string[]>();
  for (const { code, cost } of lines)
    if (cost?.owner && approvalEnded(cost, asOf))
      ended.set(cost.owner, [...(ended.get(cost.owner) ?? []), code]);
  return [...ended].map(([owner, codes]) => ({
    text: `Ask ${owner} to confirm again what a stop costs on ${codes.join(", ")}; the approval ran out.`,
    href: "/lines",
  }));
}

function transferDecisions(input: ReportInput): Decision[] {
  const held = worstPools(input, POOLS_LOOKED_AT).filter(
    (pool) => pool.held !== null && pool.held.index > HELD_LIMIT,
  );
  const [first] = held;
  if (!first?.held) return [];
  const { siteCode } = first.held;
  const parts = held.filter((pool) => pool.held?.siteCode === siteCode).map(({ part }) => part.number);
  const text = `Look at moving spares of ${parts.join(", ")}: ${siteCode} holds more than its share.`;
  return [{ text, href: "/pool" }];
}
