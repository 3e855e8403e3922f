import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import { type Lognormal, lognormalExceeds, meanBeyond } from "@/lib/reliability/lognormal";
import { type Drawing, drawVector, once, type Vector, valueAt } from "@/lib/risk/draws/drawing";
import type { PoolInput } from "@/lib/risk/evaluation";
import type { CostCurve } from "@/lib/risk/expectedStopCost";
import { restorationTimes } from "@/lib/risk/restorationTimes";

/** The mean of something over long and short stops: as the evaluation has it, and draw by draw. */
interface MeanDraws {
  readonly mean: number;
  readonly drawn: Vector;
}

/** What one stop costs, at the stated cost. */
export interface StopDraws {
  readonly curve: CostCurve;
  /** Hours beyond where the curve begins to rise. */
  readonly hours: Vector;
  /** Chance to pass each step of the curve. */
  readonly passed: readonly Vector[];
  /** Mean cost as the evaluation has it, EUR. */
  readonly mean: number;
}

export interface StopCostDraws {
  withSpare(pool: PoolInput, stage: SupplyStage, curve: CostCurve): StopDraws;
  withoutSpare(pool: PoolInput, stage: SupplyStage, curve: CostCurve): StopDraws;
}

/** Cost of one stop in one draw, EUR. */
export function costAt({ curve, hours, passed }: StopDraws, draw: number): number {
  let cost = curve.fixed + curve.perHour * valueAt(hours, draw);
  for (let i = 0; i < curve.steps.length; i += 1)
    cost += (curve.steps[i] as CostCurve["steps"][number]).cost * valueAt(passed[i] as Vector, draw);
  return cost;
}

/** Share of the variance that is not chance but not knowing the median: 1 / (weight + stops + 1). */
function openShares({ input, assumptions }: Drawing) {
  return (pool: PoolInput, spareAtHand: boolean): number => {
    const { withSpare, withoutSpare } = assumptions.classes[pool.itemClass];
    const stops = input.restorations
      .filter((seen) => seen.itemClass === pool.itemClass && seen.spareAtHand === spareAtHand)
      .reduce((sum, seen) => sum + seen.stops, 0);
    return 1 / ((spareAtHand ? withSpare : withoutSpare).weight + stops + 1);
  };
}

/**
 * Draws how long stops really last, and so what they cost.
 *
 * The evaluation's lognormal is taken as what is believed of one stop. Of its variance sigma^2 the share s is not
 * knowing the median, so each draw has mu + sqrt(s) sigma z and the rest as its spread; over the draws the evaluation's
 * own lognormal comes back, and with it its mean hours beyond any buffer and its chance to pass any step. One z a class,
 * with and without a spare apart.
 */
export function drawStopCosts(drawing: Drawing): StopCostDraws {
  const timesOf = restorationTimes(drawing.input, drawing.assumptions);
  const openShare = openShares(drawing);
  const normals = once<Vector>();
  const means = once<MeanDraws>();
  const drawTimes = (pool: PoolInput, spareAtHand: boolean, time: Lognormal) => {
    const name = `hours ${spareAtHand ? "with" : "without"} a spare/${pool.itemClass}`;
    return (what: string, of: (time: Lognormal) => number) =>
      means(`${name}/${time.mu}/${what}`, () => {
        const z = normals(name, () => drawVector(drawing, name, (stream) => stream.normal()));
        const share = openShare(pool, spareAtHand);
        const sigma = time.sigma * Math.sqrt(1 - share);
        const step = time.sigma * Math.sqrt(share);
        return { mean: of(time), drawn: z.map((value) => of({ mu: time.mu + step * value, sigma })) };
      });
  };
  const draw = (meanOf: ReturnType<typeof drawTimes>, curve: CostCurve): StopDraws => {
    const hours = meanOf(`beyond ${curve.beyond}`, (time) => meanBeyond(time, curve.beyond));
    const passed = curve.steps.map(({ after }) =>
      meanOf(`over ${after}`, (time) => lognormalExceeds(time, after)),
    );
    const steps = curve.steps.reduce((sum, { cost }, i) => sum + cost * (passed[i] as MeanDraws).mean, 0);
    return {
      ...{ curve, hours: hours.drawn, passed: passed.map(({ drawn }) => drawn) },
      mean: curve.fixed + curve.perHour * hours.mean + steps,
    };
  };
  return {
    withSpare: (pool, stage, curve) => draw(drawTimes(pool, true, timesOf(pool, { stage }).withSpare), curve),
    withoutSpare: (pool, stage, curve) =>
      draw(drawTimes(pool, false, timesOf(pool, { stage }).withoutSpare), curve),
  };
}

interface Ways {
  readonly near: StopDraws;
  /** By the spare at hand, or by one that has to come from another site. */
  readonly via: StopDraws;
  readonly around: StopDraws;
}

/**
 * The way that is cheaper on average is taken, as in the evaluation: round a spare that is too far, and never worse
 * without one than with one. How long it takes this time nobody knows beforehand.
 */
export function takeWays({ near, via, around }: Ways) {
  const withoutSpare = near.mean > around.mean ? near : around;
  return { withSpare: via.mean <= withoutSpare.mean ? via : withoutSpare, withoutSpare };
}
