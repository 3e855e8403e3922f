import { crossRate } from "@/lib/kernel/money";
import type { CostClass } from "@/lib/schema/costClass";
import type { CostEntryRow } from "@/seed/moneyTables";
import type { MilestoneRow, ProjectRow } from "@/seed/projectTables";
import { PROJECTS, type ProjectSpec } from "@/seed/scenarios/showcase/projectSpecs";
import { lineId, SITES, type SiteCode, siteId, siteSpec } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";

export const projectId = (code: string): string => seedId("Project", code);
const linesOf = (text: string): string[][] =>
  text
    .trim()
    .split("\n")
    .map((line) => line.split(";"));
const orNull = (text: string | undefined): string | null =>
  text === undefined || text === "-" ? null : text;

export function projectRows(): ProjectRow[] {
  return PROJECTS.map(
    ({ code, line, name, status, budget, budgetRate, forecast, startsOn, endsOn, cause }) => {
      const site = line.slice(0, 3) as SiteCode;
      return {
        id: projectId(code),
        siteId: siteId(site),
        lineId: lineId(line),
        code,
        name,
        status,
        currency: siteSpec(site).currency,
        budget,
        budgetRate: budgetRate?.perEuro ?? null,
        budgetRatedOn: budgetRate?.on ?? null,
        forecast,
        startsOn,
        endsOn,
        cause,
      };
    },
  );
}

function milestonesOf({ code, milestones }: ProjectSpec): MilestoneRow[] {
  return linesOf(milestones).map(([name = "", weight, dueOn, doneOn, axisRound], i) => ({
    id: seedId("Milestone", `${code}/${i + 1}`),
    projectId: projectId(code),
    sequence: i + 1,
    name,
    weight: Number(weight),
    dueOn: orNull(dueOn),
    doneOn: orNull(doneOn),
    axisStep: orNull(axisRound) === null ? null : "powered",
    axisRound: axisRound === "all" || orNull(axisRound) === null ? null : Number(axisRound),
  }));
}

function costsOf({ code, line, costs }: ProjectSpec): CostEntryRow[] {
  const { currency } = siteSpec(line.slice(0, 3) as SiteCode);
  return linesOf(costs).map(
    ([kind, amount = "", spentOn = "", text = "", reference = "", costClass, ownAmount, ownCurrency]) => ({
      id: seedId("CostEntry", `${code}/${kind}/${reference}`),
      projectId: projectId(code),
      kind: kind === "committed" ? "committed" : "actual",
      ...{ amount, spentOn, text, reference, costClass: costClass as CostClass, orderReference: null },
      ...ownMoney(ownAmount, ownCurrency, currency),
    }),
  );
}

/** What an entry was in its own currency, at the budget rates. */
function ownMoney(ownAmount: string | undefined, ownCurrency: string | undefined, wanted: string) {
  if (ownAmount === undefined || ownCurrency === undefined)
    return { ownAmount: null, ownCurrency: null, rate: null, ratedOn: null, rateSource: null };
  const perEuro = (currency: string) => String(SITES.find((site) => site.currency === currency)?.rate ?? 1);
  return {
    ...{ ownAmount, ownCurrency, rate: crossRate(perEuro(wanted), perEuro(ownCurrency)) },
    ...{ ratedOn: "2026-01-01", rateSource: "budget rate, Group treasury, budget rates 2026" },
  };
}

export const milestoneRows = (): MilestoneRow[] => PROJECTS.flatMap(milestonesOf);
export const costEntryRows = (): CostEntryRow[] => PROJECTS.flatMap(costsOf);
