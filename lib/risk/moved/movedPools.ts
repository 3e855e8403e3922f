import type { GroupResult, LinePoolResult, PoolResult } from "@/lib/risk/evaluation";
import { MOVED_STEPS, type MovedStep } from "@/lib/risk/moved/snapshotInput";

/** A figure at both ends of the way and what each step made of it, in whole units so that all of it adds up. */
export interface MovedValue {
  /** Null is not known, or not there. */
  readonly before: number | null;
  readonly after: number | null;
  readonly steps: Readonly<Record<MovedStep, number>>;
  /** Sum of the steps. */
  readonly change: number;
}

/** A pool as one site has it. */
export interface MovedPool {
  readonly poolId: string;
  /** Units installed at the site, at the later end. */
  readonly units: number;
  /** Chance that a failure finds the group's shelf empty, mean over the horizon of the score, per mille. */
  readonly noSpare: MovedValue;
  /** Loss the pool brings to the site's lines, EUR a year. */
  readonly loss: MovedValue;
  /** Pieces expected to work on the site's shelf, tenths. */
  readonly usable: MovedValue;
}

interface Site {
  readonly id: string;
  readonly lineIds: ReadonlySet<string>;
}

type Picture = ReadonlyMap<string, Readonly<Record<Measure, number | null>> & { readonly units: number }>;
type Measure = "noSpare" | "loss" | "usable";

const PER_MILLE = 1_000;
const TENTHS = 10;

/**
 * What moved the figures of each pool installed at a site, along the way of `evaluateWay`.
 *
 * value after step k − value after step k − 1, each rounded to its whole unit before the difference is taken, so the
 * steps add up to the change as printed. A value that is not known counts as nothing in the steps, as in the sums over
 * lines. The loss of a pool is the sum over the site's lines of its base and shortage part; the chance is the group's,
 * for the shelf is.
 */
export function movedPools(way: readonly GroupResult[], site: Site): MovedPool[] {
  const pictures = way.map((result) => picture(result, site));
  const ids = [...new Set([pictures[0], pictures.at(-1)].flatMap((one) => [...(one?.keys() ?? [])]))];
  return ids.map((poolId) => {
    const at = (measure: Measure) => moved(pictures.map((one) => one.get(poolId)?.[measure] ?? null));
    const units = pictures.at(-1)?.get(poolId)?.units ?? 0;
    return { poolId, units, noSpare: at("noSpare"), loss: at("loss"), usable: at("usable") };
  });
}

function picture({ lines, pools }: GroupResult, site: Site): Picture {
  const installed = new Map<string, { units: number; loss: number | null }>();
  for (const line of lines) {
    if (!site.lineIds.has(line.lineId)) continue;
    for (const pool of line.pools) {
      const seen = installed.get(pool.poolId) ?? { units: 0, loss: null };
      installed.set(pool.poolId, {
        units: seen.units + pool.units,
        loss: added(seen.loss, lossOf(pool)),
      });
    }
  }
  return new Map(
    pools.flatMap((pool) => {
      const here = installed.get(pool.poolId);
      return here ? [[pool.poolId, { ...here, ...wholeFigures(pool, here.loss, site.id) }] as const] : [];
    }),
  );
}

function wholeFigures(pool: PoolResult, loss: number | null, siteId: string) {
  return {
    noSpare: Math.round(pool.noSpare.mean * PER_MILLE),
    loss: loss === null ? null : Math.round(loss),
    usable: Math.round((pool.usableBySite[siteId]?.usable ?? 0) * TENTHS),
  };
}

function lossOf({ baseLoss, shortageLoss }: LinePoolResult): number | null {
  return added(baseLoss, shortageLoss);
}

function added(a: number | null, b: number | null): number | null {
  return a === null && b === null ? null : (a ?? 0) + (b ?? 0);
}

function moved(values: readonly (number | null)[]): MovedValue {
  const at = (place: number) => values[place] ?? 0;
  const steps = Object.fromEntries(
    MOVED_STEPS.map((step, place) => [step, at(place + 1) - at(place)]),
  ) as Record<MovedStep, number>;
  return {
    before: values[0] ?? null,
    after: values.at(-1) ?? null,
    steps,
    change: at(MOVED_STEPS.length) - at(0),
  };
}
