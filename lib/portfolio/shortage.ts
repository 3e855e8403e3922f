import { doneIn } from "@/lib/portfolio/planEffects";
import type { Candidate } from "@/lib/portfolio/planSlots";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";
import { poolAhead } from "@/lib/portfolio/poolAhead";
import type { LinePoolResult, LineResult, PoolResult } from "@/lib/risk/evaluation";
import type { EvaluatedPool } from "@/lib/risk/stages";
import { supplyOutlook } from "@/lib/risk/supplyOutlook";
import { lostExposure } from "@/lib/spares/exposure";

/** Quarters for so many months, then half years. */
const QUARTERS_UNTIL = 36;
const [QUARTER, HALF_YEAR] = [3, 6];
const MONTHS_PER_YEAR = 12;

/** A straight line under a chance: chance >= at + slope * pieces. */
export interface Edge {
  readonly at: number;
  readonly slope: number;
}

/** Some months of a pool. */
export interface PoolStep {
  readonly from: number;
  readonly until: number;
  /** Months, each weighted by what a loss in it weighs today. */
  readonly weight: number;
  /** What a shortage all the time would lose on top of stops with a spare, EUR of today, without a plan. */
  readonly whole: number;
  /** No-spare chance without a plan. */
  readonly chance: number;
  /** Pieces a unit in service takes off the shelf for good in these months. */
  readonly wear: number;
  /** The no-spare chance by pieces more on the shelf, from below. */
  readonly edges: readonly Edge[];
}

/** What one candidate does to one pool. */
export interface Touch {
  readonly index: number;
  /** Months from the as-of day to the end of its work. */
  readonly month: number;
  /** Working pieces it brings. */
  readonly pieces: number;
  /** Units it takes out, less those it puts in. */
  readonly units: number;
  /** EUR a month a shortage all the time would lose on the units it takes out, and what they lose with a spare. */
  readonly short: number;
  readonly base: number;
}

/** A pool as the linear model sees it. */
export interface PoolShortage {
  readonly poolId: string;
  readonly steps: readonly PoolStep[];
  readonly touches: readonly Touch[];
}

/** EUR a unit and month: stops with a spare, and what more a stop without one costs. */
function unitLosses({ units, failuresPerYear, stopShare, costWithSpare, costWithoutSpare }: LinePoolResult) {
  const perMonth = units === 0 ? 0 : (failuresPerYear / units / MONTHS_PER_YEAR) * stopShare;
  const near = costWithSpare ?? 0;
  return { base: perMonth * near, short: perMonth * ((costWithoutSpare ?? 0) - near) };
}

/** What a loss in a month weighs today. */
export const monthWeight = (month: number, rate: number): number =>
  (1 + rate) ** (-(month + 0.5) / MONTHS_PER_YEAR);

/** Numbers of pieces at which the chance is looked at, up to the most a plan can bring. */
function samples(most: number): number[] {
  const out = [0, 1, 2, 3, 4, 6, 8];
  for (let next = 12; next < 2 * most; next = Math.ceil(next * 1.5)) out.push(next);
  return out.filter((_, i) => i === 0 || (out[i - 1] as number) < most);
}

/** The lower hull of points in order of x, as straight lines: the steepest first. */
export function lowerHull(points: readonly (readonly [number, number])[]): Edge[] {
  const hull: (readonly [number, number])[] = [];
  const slope = (a: readonly [number, number], b: readonly [number, number]) => (b[1] - a[1]) / (b[0] - a[0]);
  for (const point of points) {
    while (hull.length >= 2) {
      const [before, last] = hull.slice(-2) as [readonly [number, number], readonly [number, number]];
      if (slope(before, last) <= slope(last, point)) break;
      hull.pop();
    }
    hull.push(point);
  }
  return hull.slice(1).map((point, i) => {
    const start = hull[i] as readonly [number, number];
    return { slope: slope(start, point), at: start[1] - slope(start, point) * start[0] };
  });
}

/** Starts of the steps, and the end of the last. */
export function stepBounds(months: number): number[] {
  const out = [0];
  for (let at = 0; at < months; ) {
    at = Math.min(months, at + (at < QUARTERS_UNTIL ? QUARTER : HALF_YEAR));
    out.push(at);
  }
  return out;
}

/**
 * Leaves out edges that hardly lift the highest of the others at any of the points: what stays is still below.
 *
 * @param least Chance below which a lift does not count.
 */
export function fewerEdges(edges: readonly Edge[], points: readonly number[], least: number): Edge[] {
  const top = (list: readonly Edge[], x: number) =>
    Math.max(0, ...list.map(({ at, slope }) => at + slope * x));
  let kept = [...edges];
  for (const edge of edges) {
    const others = kept.filter((one) => one !== edge);
    if (points.every((x) => top(kept, x) - top(others, x) <= least)) kept = others;
  }
  return kept;
}

/** The no-spare chance of a pool in some months. */
export function chanceIn(
  { noSpareByMonth }: PoolResult,
  { from, until }: Pick<PoolStep, "from" | "until">,
): number {
  const at = (month: number) => (noSpareByMonth[month] as { readonly mean: number }).mean;
  let sum = 0;
  for (let m = from; m < until; m += 1) sum += (at(m) + at(m + 1)) / 2;
  return sum / (until - from);
}

function touchesOf(poolId: string, evaluator: PlanEvaluator, losses: Losses): Touch[] {
  const { candidates, effects, staged } = evaluator;
  const { assumptions, asOf } = staged.ground;
  return candidates.flatMap((candidate): Touch[] => {
    const effect = (effects[candidate.index] ?? []).find((one) => one.poolId === poolId);
    if (!effect) return [];
    const gone = effect.leaves.reduce((sum, { units }) => sum + units, 0);
    const kept = effect.leaves.reduce((sum, { units, kept: own }) => sum + (own ? units : 0), 0);
    const come = effect.arrivals.reduce((sum, { pieces, works }) => sum + pieces * (works ?? 0), 0);
    const { base, short } = losses(candidate.line.lineId, poolId);
    return [
      {
        ...{ index: candidate.index, month: doneIn(candidate, asOf) * MONTHS_PER_YEAR },
        ...{ pieces: kept * assumptions.releaseWorks + come, units: gone - effect.added },
        ...{ short: gone * short, base: gone * base },
      },
    ];
  });
}

type Losses = (lineId: string, poolId: string) => { base: number; short: number };

function lossesOf(lines: readonly LineResult[]): Losses {
  const known = new Map(
    lines.flatMap((line) =>
      line.horizonLoss === null
        ? []
        : line.pools.map((pool): [string, ReturnType<typeof unitLosses>] => [
            `${line.lineId}|${pool.poolId}`,
            unitLosses(pool),
          ]),
    ),
  );
  return (lineId, poolId) => known.get(`${lineId}|${poolId}`) ?? { base: 0, short: 0 };
}

/** Units in service over a month, those of projects under way leaving on their day. */
function unitsIn(month: number, units: number, leaves: readonly { at: number; units: number }[]): number {
  const gone = leaves.reduce(
    (sum, one) => sum + one.units * Math.min(1, Math.max(0, month + 1 - one.at * MONTHS_PER_YEAR)),
    0,
  );
  return Math.max(0, units - gone);
}

/** What one unit in service takes off the shelf for good between two months. */
function wearOf({ pool, result }: EvaluatedPool, { ground }: PlanEvaluator["staged"]) {
  const about = { pool, stage: result.stage, units: 1, leaving: [], asOf: ground.asOf };
  const cases = supplyOutlook(about, ground.assumptions);
  const until = (month: number) =>
    cases.reduce(
      (sum, { chance, supply }) => sum + chance * lostExposure(supply, month / MONTHS_PER_YEAR),
      0,
    );
  return (from: number, to: number) => result.removal.mean * (until(to) - until(from));
}

function stepsOf(
  poolId: string,
  evaluator: PlanEvaluator,
  { touches, least }: { readonly touches: readonly Touch[]; readonly least: number },
): PoolStep[] {
  const { staged } = evaluator;
  const { ground } = staged;
  const { months, discountRate } = ground.assumptions;
  const evaluated = staged.pools.get(poolId) as EvaluatedPool;
  const leaving = ground.leaving.get(poolId) ?? [];
  const most = mostRelief(evaluator, touches, evaluated.result.removal.mean * (months / MONTHS_PER_YEAR));
  const looks = samples(most).map((extraSpares) => ({
    extraSpares,
    result: poolAhead(evaluated, { leaving, arrivals: [], added: [], extraSpares }, ground),
  }));
  const losses = lossesOf(staged.result.lines);
  const wear = wearOf(evaluated, staged);
  const shortIn = (month: number) =>
    [...ground.installed].reduce((sum, [lineId, pools]) => {
      const here = pools.get(poolId);
      return here ? sum + unitsIn(month, here.units, [...here.leaves]) * losses(lineId, poolId).short : sum;
    }, 0);
  const points = looks.map(({ extraSpares }) => extraSpares);
  const bounds = stepBounds(months);
  return bounds.slice(1).flatMap((until, i) => {
    const from = bounds[i] as number;
    let [weight, whole] = [0, 0];
    for (let month = from; month < until; month += 1) {
      const worth = monthWeight(month, discountRate);
      weight += worth;
      whole += worth * shortIn(month);
    }
    const chances = looks.map(({ extraSpares, result }): [number, number] => [
      extraSpares,
      chanceIn(result, { from, until }),
    ]);
    const edges = fewerEdges(lowerHull(chances), points, whole > 0 ? least / whole : 1);
    const chance = chanceIn(evaluated.result, { from, until });
    return [{ from, until, weight, whole, chance, wear: wear(from, until), edges }];
  });
}

/** The most pieces a plan could bring or spare: of each line the option with the most. */
function mostRelief({ candidates }: PlanEvaluator, touches: readonly Touch[], wearPerUnit: number): number {
  const byLine = new Map<string, number>();
  for (const { index, pieces, units } of touches) {
    const { lineId } = (candidates[index] as Candidate).line;
    byLine.set(lineId, Math.max(byLine.get(lineId) ?? 0, pieces + Math.max(0, units) * wearPerUnit));
  }
  return [...byLine.values()].reduce((sum, relief) => sum + relief, 0);
}

/** Loss that a step may be told too low by, as a share of the group's. */
const NEGLIGIBLE = 1e-5;

/** The pools some candidate touches, with what a shortage of each may lose step by step. */
export function shortagesOf(evaluator: PlanEvaluator): PoolShortage[] {
  const { staged, effects } = evaluator;
  const losses = lossesOf(staged.result.lines);
  const total = staged.result.lines.reduce((sum, { horizonLoss }) => sum + (horizonLoss?.loss ?? 0), 0);
  const touched = [...new Set(effects.flatMap((list) => list.map(({ poolId }) => poolId)))].sort();
  return touched.map((poolId) => {
    const touches = touchesOf(poolId, evaluator, losses);
    return { poolId, touches, steps: stepsOf(poolId, evaluator, { touches, least: NEGLIGIBLE * total }) };
  });
}
