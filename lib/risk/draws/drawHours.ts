import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import { type Lognormal, meanBeyond } from "@/lib/reliability/lognormal";
import { type Drawing, drawVector, once, type Vector } from "@/lib/risk/draws/drawing";
import type { PoolInput } from "@/lib/risk/evaluation";
import { restorationTimes } from "@/lib/risk/restorationTimes";

/** Mean hours of a stop beyond a buffer: as the evaluation has them, and draw by draw. */
export interface BeyondBuffer {
  readonly mean: number;
  readonly drawn: Vector;
}

export interface HoursDraws {
  withSpare(pool: PoolInput, stage: SupplyStage, buffer: number): BeyondBuffer;
  withoutSpare(pool: PoolInput, stage: SupplyStage, buffer: number): BeyondBuffer;
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
 * Draws how long stops really last.
 *
 * The evaluation's lognormal is taken as what is believed of one stop. Of its variance sigma^2 the share s is not
 * knowing the median, so each draw has mu + sqrt(s) sigma z and the rest as its spread; over the draws the evaluation's
 * own lognormal comes back. One z a class, with and without a spare apart.
 */
export function drawHours(drawing: Drawing): HoursDraws {
  const timesOf = restorationTimes(drawing.input, drawing.assumptions);
  const openShare = openShares(drawing);
  const normals = once<Vector>();
  const beyond = once<BeyondBuffer>();
  const draw = (name: string, time: Lognormal, { buffer, open }: { buffer: number; open: () => number }) =>
    beyond(`${name}/${time.mu}/${buffer}`, () => {
      const z = normals(name, () => drawVector(drawing, name, (stream) => stream.normal()));
      const share = open();
      const sigma = time.sigma * Math.sqrt(1 - share);
      const step = time.sigma * Math.sqrt(share);
      const drawn = z.map((value) => meanBeyond({ mu: time.mu + step * value, sigma }, buffer));
      return { mean: meanBeyond(time, buffer), drawn };
    });
  return {
    withSpare: (pool, stage, buffer) =>
      draw(`hours with a spare/${pool.itemClass}`, timesOf(pool, { stage }).withSpare, {
        ...{ buffer, open: () => openShare(pool, true) },
      }),
    withoutSpare: (pool, stage, buffer) =>
      draw(`hours without a spare/${pool.itemClass}`, timesOf(pool, { stage }).withoutSpare, {
        ...{ buffer, open: () => openShare(pool, false) },
      }),
  };
}

interface Ways {
  readonly near: BeyondBuffer;
  /** By the spare at hand, or by one that has to come from another site. */
  readonly via: BeyondBuffer;
  readonly around: BeyondBuffer;
}

/**
 * The way that is quicker on average is taken, as in the evaluation: round a spare that is too far, and never worse
 * without one than with one. How long it takes this time nobody knows beforehand.
 */
export function takeWays({ near, via, around }: Ways) {
  const withoutSpare = near.mean > around.mean ? near : around;
  return { withSpare: via.mean <= withoutSpare.mean ? via : withoutSpare, withoutSpare };
}
