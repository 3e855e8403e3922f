import { type LimitRow, usesOf } from "@/lib/portfolio/planLimits";
import type { PlanProblem } from "@/lib/portfolio/planProblem";
import type { LimitUse } from "@/lib/portfolio/planResult";
import type { Candidate } from "@/lib/portfolio/planSlots";
import { byQuarter } from "@/lib/portfolio/planSpend";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";
import type { BoardView, QuarterCash, SiteMoney, UsedRow, YearMoney } from "@/lib/view/planBoard";
import type { PlanInputs } from "@/lib/view/planInputs";

interface MoneyTerms {
  readonly evaluator: PlanEvaluator;
  readonly problem: PlanProblem;
  readonly limits: readonly LimitRow[];
  readonly chosen: readonly number[];
  readonly inputs: PlanInputs;
}

/** Stands for "nobody stated how much there is"; such a limit is shown without one. */
const UNSTATED = 1_000_000;

/** Money by year, site, quarter and currency, and the hands used, of the chosen ways. */
export function boardMoney(
  terms: MoneyTerms,
): Pick<BoardView, "years" | "sites" | "cash" | "engineers" | "crews"> {
  const { limits, chosen } = terms;
  const uses = usesOf(limits, chosen);
  const paid = paidOf(terms);
  return {
    years: yearsOf(terms, paid),
    sites: sitesOf(terms, paid),
    cash: cashOf(terms, paid),
    engineers: uses.flatMap((use) => rowOf(use, "engineers")),
    crews: uses.flatMap((use) => rowOf(use, "crew-weeks")),
  };
}

/** A payment: typical cost of a way, in a quarter. */
interface Paid {
  readonly siteId: string;
  readonly quarter: number;
  readonly euros: number;
}

function paidOf({ evaluator, chosen }: MoneyTerms): Paid[] {
  return chosen.flatMap((index) => {
    const candidate = evaluator.candidates[index] as Candidate;
    const { typical, phases } = candidate.option.cost;
    const { siteId } = candidate.line;
    return byQuarter(candidate, typical, phases).map(({ quarter, part }) => ({
      siteId,
      quarter,
      euros: part,
    }));
  });
}

function yearMoney(
  { problem }: MoneyTerms,
  paid: readonly Paid[],
  key: { readonly year: number; readonly siteId: string | null },
): YearMoney {
  const { budgets, quarters, reserveShare } = problem;
  const budget =
    budgets.find(({ year, siteId }) => year === key.year && siteId === key.siteId)?.amount ?? null;
  const own = paid.filter(
    ({ quarter, siteId }) =>
      quarters[quarter]?.year === key.year && (key.siteId === null || siteId === key.siteId),
  );
  return {
    ...{ year: key.year, budget, most: budget === null ? null : budget * (1 - reserveShare) },
    spent: own.reduce((sum, { euros }) => sum + euros, 0),
  };
}

function yearsOf(terms: MoneyTerms, paid: readonly Paid[]): YearMoney[] {
  const years = [...new Set(terms.problem.quarters.map(({ year }) => year))];
  return years.map((year) => yearMoney(terms, paid, { year, siteId: null }));
}

function sitesOf(terms: MoneyTerms, paid: readonly Paid[]): SiteMoney[] {
  const years = [...new Set(terms.problem.quarters.map(({ year }) => year))];
  return terms.inputs.sites.flatMap(({ id: siteId }) =>
    years.map((year) => ({ siteId, ...yearMoney(terms, paid, { year, siteId }) })),
  );
}

function cashOf({ problem, inputs }: MoneyTerms, paid: readonly Paid[]): QuarterCash[] {
  const rate = new Map(inputs.rates.map(({ currency, perEuro }) => [currency, perEuro]));
  const currency = new Map(inputs.sites.map((site) => [site.id, site.currency]));
  return problem.quarters.map(({ id: quarterId }, at) => {
    const own = paid.filter(({ quarter }) => quarter === at);
    const local: Record<string, number> = {};
    for (const { siteId, euros } of own) {
      const name = currency.get(siteId) ?? "EUR";
      local[name] = (local[name] ?? 0) + euros * (rate.get(name) ?? 1);
    }
    return { quarterId, local, euros: own.reduce((sum, { euros }) => sum + euros, 0) };
  });
}

function rowOf({ limit, used, most }: LimitUse, kind: "engineers" | "crew-weeks"): UsedRow[] {
  if (limit.kind !== kind) return [];
  return [{ what: limit.region, quarterId: limit.quarterId, used, most: most >= UNSTATED ? null : most }];
}
