import type { Candidate } from "@/lib/portfolio/planSlots";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { LineInput, PoolResult } from "@/lib/risk/evaluation";
import { horizonLoss } from "@/lib/risk/horizonLoss";
import { lineStops, type PoolOnLine } from "@/lib/risk/lineStops";
import type { EvaluatedPool, Ground } from "@/lib/risk/stages";

const MONTHS_PER_YEAR = 12;

/** A chosen option of the line: when its work is done, and what it takes out. */
export interface DoneOption {
  readonly candidate: Candidate;
  /** Years from the as-of day to the end of the work. */
  readonly at: number;
  readonly gone: readonly { readonly poolId: string; readonly units: number }[];
}

/** What a line meets under a plan. */
export interface LineAhead {
  readonly line: LineInput;
  readonly done: readonly DoneOption[];
  /** Pools as the plan leaves them. */
  readonly poolOf: (poolId: string) => PoolResult;
  readonly evaluated: ReadonlyMap<string, EvaluatedPool>;
  readonly ground: Ground;
}

/** Parts of a line's horizon loss under a plan, EUR of the as-of day. */
export interface LineLossAhead {
  /** Stops of what is there today until it leaves; null without a cost per hour. */
  readonly loss: number | null;
  /** Stops of what is put in. */
  readonly residual: number;
  /** Hours lost by the work itself and while the line is run up. */
  readonly work: number;
  readonly yearly: number;
}

function onLine({ line, evaluated, ground }: LineAhead, result: PoolResult): Omit<PoolOnLine, "units"> {
  const { pool } = evaluated.get(result.poolId) as EvaluatedPool;
  const { rates } = ground;
  const here = { atSite: rates.seenAt(pool, line.siteId), failure: rates.failureAt(pool, line.siteId) };
  return { ...here, result, times: ground.timesOf(pool, result) };
}

function lossOf(line: LineInput, pools: readonly PoolOnLine[], assumptions: Assumptions): number {
  return horizonLoss(pools, lineStops(line, pools, assumptions.transferHours).stops, assumptions).loss;
}

/** Loss from a day on of units that are put in on it, failing more often at first. */
function lossFrom(
  { line, ground: { assumptions } }: LineAhead,
  units: PoolOnLine,
  { at, candidate }: DoneOption,
): number {
  const { stops } = lineStops(line, [units], assumptions.transferHours);
  const until = (years: number) =>
    horizonLoss([{ ...units, leaves: [{ at: years, units: units.units }] }], stops, assumptions).loss;
  const always = horizonLoss([units], stops, assumptions).loss;
  const { months, extraShare } = candidate.option.earlyFailures;
  const early = extraShare > 0 && months > 0 ? until(at + months / MONTHS_PER_YEAR) - until(at) : 0;
  return always - until(at) + extraShare * early;
}

const never = (result: PoolResult): PoolResult => {
  const none = { mean: 0, low: 0, high: 0 };
  return { ...result, noSpareByMonth: result.noSpareByMonth.map(() => none), noSpare: none };
};

/** What is put in goes on stopping the line: units of pools by their own rates, the rest as a share of what was there. */
function residualOf(ahead: LineAhead, one: DoneOption): number {
  const { adds, residualShare } = one.candidate.option;
  const named = adds
    .filter(({ units }) => units > 0)
    .map(({ poolId, units }) => lossFrom(ahead, { ...onLine(ahead, ahead.poolOf(poolId)), units }, one));
  const shared =
    residualShare === 0
      ? []
      : one.gone.map(
          ({ poolId, units }) =>
            residualShare * lossFrom(ahead, { ...onLine(ahead, never(ahead.poolOf(poolId))), units }, one),
        );
  return [...named, ...shared].reduce((sum, loss) => sum + loss, 0);
}

/** EUR of the as-of day of one EUR at a time ahead. */
export const weightAt = (years: number, rate: number): number => (1 + rate) ** -years;

function workOf({ line, ground: { assumptions } }: LineAhead, { at, candidate }: DoneOption): number {
  const { extraStopHours, rampUpHours } = candidate.option;
  const perHour = (line.costPerHour ?? 0) * line.unrecoveredShare;
  return (extraStopHours + rampUpHours) * perHour * weightAt(at, assumptions.discountRate);
}

/** A yearly payment from a time on to the end of the months computed. */
function yearlyOf({ ground: { assumptions } }: LineAhead, { at, candidate }: DoneOption): number {
  const { months, discountRate } = assumptions;
  let sum = 0;
  for (let month = 0; month < months && candidate.option.yearlyCost !== 0; month += 1) {
    const part = Math.min(1, Math.max(0, month + 1 - at * MONTHS_PER_YEAR));
    sum += part * weightAt((month + 0.5) / MONTHS_PER_YEAR, discountRate);
  }
  return (candidate.option.yearlyCost / MONTHS_PER_YEAR) * sum;
}

/** What the plan brings to a line with it, without what is there today. */
export function sideLosses(ahead: LineAhead): Omit<LineLossAhead, "loss"> {
  const add = (part: (ahead: LineAhead, one: DoneOption) => number) =>
    ahead.done.reduce((sum, one) => sum + part(ahead, one), 0);
  const yearly = add(yearlyOf);
  if (ahead.line.costPerHour === null) return { residual: 0, work: 0, yearly };
  return { residual: add(residualOf), work: add(workOf), yearly };
}

/**
 * The horizon loss of a line under a plan: what is there today by the evaluation itself, with the shelves as the plan
 * leaves them and its own units gone on their day; and what the plan brings with it.
 *
 * Units put in on machines others could stand in for are taken to stop the line: slightly high.
 */
export function lineAhead(ahead: LineAhead): LineLossAhead {
  const { line, done, ground, poolOf } = ahead;
  if (line.costPerHour === null) return { loss: null, ...sideLosses(ahead) };
  const pools = [...(ground.installed.get(line.id) ?? [])].map(([poolId, here]): PoolOnLine => {
    const leaves = done.flatMap(({ at, gone }) =>
      gone.filter((one) => one.poolId === poolId).map(({ units }) => ({ at, units })),
    );
    return { ...here, ...onLine(ahead, poolOf(poolId)), leaves: [...here.leaves, ...leaves] };
  });
  return { loss: lossOf(line, pools, ground.assumptions), ...sideLosses(ahead) };
}
