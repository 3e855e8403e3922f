import { type DoneOption, type LineLossAhead, lineAhead, sideLosses } from "@/lib/portfolio/lineAhead";
import { doneIn, effectsOf } from "@/lib/portfolio/planEffects";
import { type CandidateEffects, type PoolState, planPools } from "@/lib/portfolio/planPools";
import type { PlanProblem } from "@/lib/portfolio/planProblem";
import type { PlanWorth } from "@/lib/portfolio/planResult";
import { type Candidate, candidatesOf } from "@/lib/portfolio/planSlots";
import { spentOn } from "@/lib/portfolio/planSpend";
import type { Assumptions } from "@/lib/risk/assumptions";
import { evaluateStaged, type StagedEvaluation } from "@/lib/risk/evaluate";
import type { GroupInput, LineInput, PoolResult } from "@/lib/risk/evaluation";
import type { EvaluatedPool } from "@/lib/risk/stages";

/** What a plan is evaluated on. */
export interface PlanGroup {
  readonly problem: PlanProblem;
  readonly input: GroupInput;
  readonly assumptions: Assumptions;
}

/** Evaluates plans of one group; what two plans have in common is computed once. */
export interface PlanEvaluator extends CandidateEffects {
  readonly problem: PlanProblem;
  /** The group without a plan, over the horizon of the plan. */
  readonly staged: StagedEvaluation;
  /** Worth less what is asked of each EUR spent: what is to be made as large as can be. */
  objective(chosen: readonly number[]): number;
  worth(chosen: readonly number[]): PlanWorth;
  /** What a candidate brings with it, EUR: stops of what is put in, hours of the work, yearly costs; pools as they are. */
  side(index: number): number;
  /** What a candidate costs, EUR of its quarters and of the as-of day. */
  readonly money: readonly { readonly spent: number; readonly spentDiscounted: number }[];
  /** Loss of one line under a plan at another cost per hour, EUR. */
  lineAt(lineId: string, chosen: readonly number[], costPerHour: number): number;
  /** A pool as the plan leaves it. */
  pool(poolId: string, chosen: readonly number[]): PoolResult;
}

function requireProblem({ problem, input, assumptions }: PlanGroup): void {
  const { horizonMonths, asOf } = problem;
  if (!(Number.isSafeInteger(horizonMonths) && horizonMonths >= 1 && horizonMonths <= assumptions.months))
    throw new RangeError(`horizonMonths must be 1 to ${assumptions.months}, got ${horizonMonths}`);
  if (asOf !== input.asOf)
    throw new RangeError(`asOf must be the day of the input ${input.asOf}, got ${asOf}`);
  const ids = problem.lines.flatMap(({ options }) => options.map(({ id }) => id));
  if (new Set(ids).size !== ids.length)
    throw new RangeError(`options must each have an own id, got ${ids.length}`);
  const lines = new Set(input.lines.map(({ id }) => id));
  for (const { lineId } of problem.lines)
    if (!lines.has(lineId)) throw new RangeError(`lineId must be a line of the group, got ${lineId}`);
}

/** The group's losses over the horizon of the plan, at its discount. */
function withoutPlan({ problem, input, assumptions }: PlanGroup): StagedEvaluation {
  const { horizonMonths: months, discountRate } = problem;
  const horizonMonths = Math.min(assumptions.horizonMonths, months);
  return evaluateStaged(input, { ...assumptions, months, horizonMonths, discountRate });
}

type About = CandidateEffects & { readonly staged: StagedEvaluation };

function doneOf(index: number, { candidates, effects, staged }: About): DoneOption {
  const candidate = candidates[index] as Candidate;
  const gone = (effects[index] ?? []).flatMap(({ poolId, leaves }) =>
    leaves.map(({ units }) => ({ poolId, units })),
  );
  return { candidate, at: doneIn(candidate, staged.input.asOf), gone };
}

/** What a candidate brings with it, every pool as it is. */
function sideOf(about: About): (index: number) => number {
  const { staged } = about;
  const lines = new Map(staged.input.lines.map((line) => [line.id, line]));
  return (index) => {
    const done = doneOf(index, about);
    const { residual, work, yearly } = sideLosses({
      ...{ line: lines.get(done.candidate.line.lineId) as LineInput, done: [done] },
      ...{ evaluated: staged.pools, ground: staged.ground },
      poolOf: (poolId) => (staged.pools.get(poolId) as EvaluatedPool).result,
    });
    return residual + work + yearly;
  };
}

/** Lines under any choices; each state of a line is computed once. */
function planLines(about: About, poolAt: (poolId: string, chosen: readonly number[]) => PoolState) {
  const { staged, candidates } = about;
  const own = new Map<string, Set<number>>();
  for (const { index, line } of candidates)
    own.set(line.lineId, (own.get(line.lineId) ?? new Set<number>()).add(index));
  const known = new Map<string, LineLossAhead>();
  const addedBy = (mine: readonly number[]) =>
    mine.flatMap((index) => (candidates[index] as Candidate).option.adds.map(({ poolId }) => poolId));
  const meet = (line: LineInput, chosen: readonly number[]) => {
    const mine = chosen.filter((index) => own.get(line.id)?.has(index));
    const used = [...(staged.ground.installed.get(line.id)?.keys() ?? []), ...addedBy(mine)];
    const states = new Map(used.map((poolId) => [poolId, poolAt(poolId, chosen)]));
    const ahead = (): LineLossAhead =>
      lineAhead({
        ...{ line, evaluated: staged.pools, ground: staged.ground },
        done: mine.map((index) => doneOf(index, about)),
        poolOf: (poolId) => (states.get(poolId) as PoolState).result,
      });
    return { ahead, key: `${line.id}|${mine}|${[...states.values()].map(({ name }) => name)}` };
  };
  return {
    at: (line: LineInput, chosen: readonly number[]): LineLossAhead => {
      const { ahead, key } = meet(line, chosen);
      const value = known.get(key) ?? ahead();
      known.set(key, value);
      return value;
    },
    /** The same for a line that is not as the group has it; nothing of it is kept. */
    changed: (line: LineInput, chosen: readonly number[]): LineLossAhead => meet(line, chosen).ahead(),
  };
}

const wholeLoss = ({ loss, residual, work }: LineLossAhead): number | null =>
  loss === null ? null : loss + residual + work;

/**
 * Makes what evaluates plans: the horizon loss of the whole group without a plan less that with it, both by the
 * evaluation itself, the base declining and parts released as the plan says; never a sum of line figures.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function planEvaluator(group: PlanGroup): PlanEvaluator {
  requireProblem(group);
  const { problem, input } = group;
  const candidates = candidatesOf(problem);
  const effects = candidates.map((candidate) => effectsOf(candidate, group.assumptions));
  const staged = withoutPlan(group);
  const poolAt = planPools({ candidates, effects }, staged);
  const lines = planLines({ candidates, effects, staged }, poolAt);
  const spent = candidates.map((candidate) => spentOn(candidate, problem));
  const without = input.lines.map((line) => lines.at(line, []).loss);
  const lossWithout = without.reduce<number>((sum, loss) => sum + (loss ?? 0), 0);
  const worth = (chosen: readonly number[]): PlanWorth => {
    const ahead = input.lines.map((line) => lines.at(line, chosen));
    const add = (part: (line: LineLossAhead) => number) => ahead.reduce((sum, line) => sum + part(line), 0);
    const [residual, workLoss, yearlyCosts] = [
      add((line) => line.residual),
      add((line) => line.work),
      add((line) => line.yearly),
    ];
    const lossWith = add(({ loss }) => loss ?? 0) + residual + workLoss + yearlyCosts;
    const money = chosen.map((index) => spent[index] as (typeof spent)[number]);
    return {
      ...{ lossWithout, lossWith, worth: lossWithout - lossWith, residual, workLoss, yearlyCosts },
      spent: money.reduce((sum, one) => sum + one.spent, 0),
      spentDiscounted: money.reduce((sum, one) => sum + one.spentDiscounted, 0),
      lines: input.lines.map(({ id }, i) => ({
        lineId: id,
        without: without[i] ?? null,
        with: wholeLoss(ahead[i] as LineLossAhead),
      })),
    };
  };
  return {
    ...{ problem, candidates, effects, staged, worth, money: spent },
    side: sideOf({ candidates, effects, staged }),
    objective: (chosen) => {
      const plan = worth(chosen);
      return plan.worth - problem.worthPerEuro * plan.spentDiscounted;
    },
    lineAt: (lineId, chosen, costPerHour) => {
      const line = input.lines.find(({ id }) => id === lineId);
      if (!line) throw new RangeError(`lineId must be a line of the group, got ${lineId}`);
      return wholeLoss(lines.changed({ ...line, costPerHour }, chosen)) ?? 0;
    },
    pool: (poolId, chosen) => poolAt(poolId, chosen).result,
  };
}
