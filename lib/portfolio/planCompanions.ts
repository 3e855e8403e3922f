import { breakEvenOf } from "@/lib/portfolio/breakEven";
import { after, isLate } from "@/lib/portfolio/planExchange";
import { brokenBy, type LimitRow } from "@/lib/portfolio/planLimits";
import type { PlanDecision } from "@/lib/portfolio/planProblem";
import type { BelowLine, PlanCompanions } from "@/lib/portfolio/planResult";
import { type Candidate, choiceOf } from "@/lib/portfolio/planSlots";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";
import { rankAndCut, withinMoney } from "@/lib/portfolio/rankAndCut";
import { type Prepared, type Searched, type SearchTerms, searchNear } from "@/lib/portfolio/searchPlan";

interface CompanionTerms extends SearchTerms {
  report(share: number): void;
}

const BUDGET_SHARES = [0.25, 0.5, 0.75, 1.25, 1.5];
/** EUR more in one year. */
const MORE_MONEY = 100_000;
const MOST_BELOW = 12;

/** Something asked of other limits, and what becomes of the answer. */
interface Question {
  readonly limits: readonly LimitRow[];
  readonly take: (answer: { readonly chosen: readonly number[]; readonly value: number }) => void;
}

const withMost = (limits: readonly LimitRow[], most: (row: LimitRow) => number): LimitRow[] =>
  limits.map((row) => ({ ...row, most: most(row) }));

type Draft = {
  readonly curve: PlanCompanions["curve"][number][];
  readonly moreMoney: PlanCompanions["moreMoney"][number][];
  readonly decisions: PlanCompanions["decisions"][number][];
};

function questionsOf(
  evaluator: PlanEvaluator,
  limits: readonly LimitRow[],
  { plan, draft }: { readonly plan: Searched; readonly draft: Draft },
): Question[] {
  const years = [...new Set(evaluator.problem.quarters.map(({ year }) => year))];
  const worthOf = (chosen: readonly number[]) => evaluator.worth(chosen);
  const curve = BUDGET_SHARES.map(
    (budgetShare): Question => ({
      limits: withMost(limits, ({ limit, most }) => (limit.kind === "budget" ? most * budgetShare : most)),
      take: ({ chosen }) => {
        const { spent, worth } = worthOf(chosen);
        draft.curve.push({ budgetShare, spent, worth });
      },
    }),
  );
  const more = years
    .filter((year) => limits.some(({ limit }) => isGroupMoney(limit, year)))
    .map(
      (year): Question => ({
        limits: withMost(limits, ({ limit, most }) => (isGroupMoney(limit, year) ? most + MORE_MONEY : most)),
        take: ({ value }) =>
          draft.moreMoney.push({ year, amount: MORE_MONEY, worth: Math.max(0, value - plan.value) }),
      }),
    );
  const decided = limits.flatMap((row): Question[] => {
    const { limit } = row;
    if (limit.kind !== "pin" && limit.kind !== "ban") return [];
    const { kind, lineId, optionId, slotId } = limit;
    const decision: PlanDecision = { lineId, optionId, slotId };
    return [
      {
        limits: limits.filter((other) => other !== row),
        take: ({ value }) =>
          draft.decisions.push({ kind, decision, worthLost: Math.max(0, value - plan.value) }),
      },
    ];
  });
  return [...curve, ...more, ...decided];
}

const isGroupMoney = (limit: LimitRow["limit"], year: number): boolean =>
  limit.kind === "budget" && limit.siteId === null && limit.year === year;

/** Lines without work in the plan, each with the option and slot that would add most, and what it would need. */
function belowOf(
  { evaluator }: Prepared,
  limits: readonly LimitRow[],
  chosen: readonly number[],
): BelowLine[] {
  const funded = new Set(chosen.map((index) => (evaluator.candidates[index] as Candidate).line.lineId));
  const now = evaluator.objective(chosen);
  const alone = brokenAlone(limits);
  const best = new Map<string, BelowLine>();
  for (const candidate of evaluator.candidates) {
    const { index, line, option } = candidate;
    if (funded.has(line.lineId) || alone.has(index) || option.after.length > 0) continue;
    const addedWorth = evaluator.objective(after(chosen, { out: [], in: [index] })) - now;
    if (addedWorth <= (best.get(line.lineId)?.addedWorth ?? 0)) continue;
    const needs = brokenBy(limits, after(chosen, { out: [], in: [index] }));
    best.set(line.lineId, { choice: choiceOf(candidate), cost: option.cost.typical, addedWorth, needs });
  }
  return [...best.values()].sort((a, b) => b.addedWorth - a.addedWorth).slice(0, MOST_BELOW);
}

/** Candidates no money and no time of others could make room for. */
function brokenAlone(limits: readonly LimitRow[]): Set<number> {
  const out = new Set<number>();
  for (const { limit, takes, most } of limits)
    if (limit.kind === "window" || limit.kind === "lead-time" || limit.kind === "ban")
      for (const [index, amount] of takes) if (amount > most) out.add(index);
  return out;
}

/** What stands beside a plan: the baseline, worth against money, what decisions cost, what it would take. */
export async function planCompanions(
  prepared: Prepared,
  plan: Searched,
  terms: CompanionTerms,
): Promise<PlanCompanions> {
  const { evaluator } = prepared;
  const draft: Draft = { curve: [], moreMoney: [], decisions: [] };
  const questions = questionsOf(evaluator, terms.limits, { plan, draft });
  for (const [i, { limits, take }] of questions.entries()) {
    const left = terms.stopAt - terms.watch.seconds();
    if (isLate(terms.watch, terms.stopAt)) break;
    const stopAt = terms.watch.seconds() + left / (questions.length - i);
    const answer = await searchNear(prepared, { ...terms, limits, stopAt }, plan.chosen);
    if (answer) take(answer);
    terms.report((i + 1) / (questions.length + 1));
  }
  const { spent, worth } = evaluator.worth(plan.chosen);
  const down = (limits: readonly LimitRow[]) => {
    const chosen = rankAndCut(evaluator, limits);
    const choices = chosen.map((index) => choiceOf(evaluator.candidates[index] as Candidate));
    return { choices, worth: evaluator.worth(chosen) };
  };
  const curve = [...draft.curve, { budgetShare: 1, spent, worth }];
  return {
    rankAndCut: down(terms.limits),
    rankSameMoney: down(withinMoney(evaluator, terms.limits, spent)),
    curve: curve.sort((a, b) => a.budgetShare - b.budgetShare),
    ...{ moreMoney: draft.moreMoney, decisions: draft.decisions },
    breakEven: breakEvenOf(evaluator, plan.chosen),
    below: belowOf(prepared, terms.limits, plan.chosen),
  };
}
