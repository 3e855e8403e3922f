import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { GroupInput, GroupResult, LineResult, PoolInput } from "@/lib/risk/evaluation";
import { kendallTauB } from "@/lib/risk/rankAgreement";
import { type EvaluatedPool, evaluateLine, evaluatePool, type Ground, groundOf } from "@/lib/risk/stages";

/** Name of this way of computing; goes with every stored result and changes when a figure may. */
export const ENGINE = "ebbline-4";

function requireOwnIds(name: string, list: readonly { readonly id: string }[]): void {
  if (new Set(list.map(({ id }) => id)).size !== list.length)
    throw new RangeError(`${name} must each have an own id, got ${list.length}`);
}

function requireAssumptions({ horizonMonths, months }: Assumptions): void {
  const whole = Number.isSafeInteger(horizonMonths) && Number.isSafeInteger(months);
  if (!(whole && horizonMonths >= 1 && horizonMonths <= months))
    throw new RangeError(`horizonMonths must be 1 to ${months}, got ${horizonMonths}`);
}

/** Kendall's tau-b between loss and score; null when there are no two lines to tell apart. */
function agreementOf(lines: readonly LineResult[]): number | null {
  const known = lines.flatMap(({ stopLoss, score }) => (stopLoss ? [{ loss: stopLoss.mean, score }] : []));
  const losses = known.map(({ loss }) => loss);
  const scores = known.map(({ score }) => score);
  if (new Set(losses).size < 2 || new Set(scores).size < 2) return null;
  return kendallTauB(losses, scores);
}

function groupLoss(lines: readonly LineResult[]): GroupResult["stopLoss"] {
  const sum = { mean: 0, low: 0, high: 0 };
  for (const { stopLoss } of lines) {
    sum.mean += stopLoss?.mean ?? 0;
    sum.low += stopLoss?.low ?? 0;
    sum.high += stopLoss?.high ?? 0;
  }
  return sum;
}

/**
 * Evaluates the whole group at once: every pool's spares are shared by all lines and sites that use it.
 *
 * Same input and assumptions give the same result to the last bit. A line's base and shortage parts are the sums of
 * its pools' in their order, its loss the sum of the two, the group's loss the sum of the lines' in theirs. Spans put
 * all uncertain rates at their 5 % points, or all at their 95 % points, at once: wider than a simulation would give,
 * and without the spread of hours, cost and counts.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function evaluate(input: GroupInput, assumptions: Assumptions): GroupResult {
  return evaluateStaged(input, assumptions).result;
}

/** An evaluation with its stages, from which a change of some pools is evaluated without the rest. */
export interface StagedEvaluation {
  readonly input: GroupInput;
  readonly ground: Ground;
  /** In the order of the input. */
  readonly pools: ReadonlyMap<string, EvaluatedPool>;
  readonly result: GroupResult;
}

/** The same, with what `reevaluate` starts from. */
export function evaluateStaged(input: GroupInput, assumptions: Assumptions): StagedEvaluation {
  requireAssumptions(assumptions);
  requireOwnIds("lines", input.lines);
  requireOwnIds("pools", input.pools);
  const ground = groundOf(input, assumptions);
  const pools = new Map(input.pools.map((pool) => [pool.id, evaluatePool(pool, ground)]));
  const lines = input.lines.map((line) => evaluateLine(line, pools, ground));
  return { input, ground, pools, result: groupResult(input.asOf, pools, lines) };
}

/**
 * Evaluates again after a change of some pools, and no more of the rest than uses them: to the last bit what
 * `evaluate` gives for the whole changed input.
 *
 * @param changed Pools as they are now. Their class and family stay: rates are pooled by them.
 * @throws {RangeError} naming the argument and its value.
 */
export function reevaluate(previous: StagedEvaluation, changed: readonly PoolInput[]): StagedEvaluation {
  const { ground } = previous;
  const pools = new Map(previous.pools);
  for (const pool of changed) {
    const before = pools.get(pool.id)?.pool;
    if (!before || before.itemClass !== pool.itemClass || before.familyId !== pool.familyId)
      throw new RangeError(`changed must be pools of the evaluation in class and family, got ${pool.id}`);
    pools.set(pool.id, evaluatePool(pool, ground));
  }
  const lines = previous.input.lines.map((line, i) => {
    const installed = ground.installed.get(line.id);
    return changed.some(({ id }) => installed?.has(id))
      ? evaluateLine(line, pools, ground)
      : (previous.result.lines[i] as LineResult);
  });
  const input = { ...previous.input, pools: [...pools.values()].map(({ pool }) => pool) };
  return { input, ground, pools, result: groupResult(input.asOf, pools, lines) };
}

function groupResult(
  asOf: IsoDate,
  pools: StagedEvaluation["pools"],
  lines: readonly LineResult[],
): GroupResult {
  return {
    ...{ engine: ENGINE, asOf, lines, pools: [...pools.values()].map(({ result }) => result) },
    stopLoss: groupLoss(lines),
    unknownLoss: lines.reduce((sum, line) => sum + (line.unknownLoss ?? 0), 0),
    agreement: agreementOf(lines),
  };
}
