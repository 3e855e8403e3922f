import type {
  Experience,
  LineInput,
  LinePoolResult,
  PoolResult,
  Span,
  StandInResult,
} from "@/lib/risk/evaluation";
import { type ExpectedStop, expectedStop, type StopCostTerms } from "@/lib/risk/expectedStopCost";
import type { InstalledHere } from "@/lib/risk/installedByLine";
import type { RestorationTimes } from "@/lib/risk/restorationTimes";
import { stopShares } from "@/lib/risk/stopShares";

/** One pool as the line meets it. */
export interface PoolOnLine extends Pick<InstalledHere, "units"> {
  readonly result: PoolResult;
  /** Counted at the line's site. */
  readonly atSite: Experience;
  /** Failures per unit-year at the line's site. */
  readonly failure: Span;
  readonly times: RestorationTimes;
  /** Units on machines others can stand in for; none when absent. */
  readonly machines?: InstalledHere["machines"];
  /** Units that leave; none when absent. */
  readonly leaves?: InstalledHere["leaves"];
}

/** The stops of a pool on a line and what they cost. */
export type PoolStops = Pick<
  LinePoolResult,
  | "poolId"
  | "units"
  | "atSite"
  | "failuresPerYear"
  | "stopShare"
  | "noSpare"
  | "hoursWithSpare"
  | "hoursWithoutSpare"
  | "costWithSpare"
  | "costWithoutSpare"
  | "stopWithSpare"
  | "stopWithoutSpare"
  | "baseLoss"
  | "shortageLoss"
>;

/** A spare that lies only at other sites has to travel before it helps. */
function transferOf({ result }: PoolOnLine, line: LineInput, hours: number): number {
  const here = result.usableBySite[line.siteId]?.usable ?? 0;
  return here === 0 && result.usable > 0 ? hours : 0;
}

/** The quicker of two ways is taken: round a spare that is too far, and never worse without one than with one. */
function ways<T>(all: { near: T; viaOtherSite: T; around: T }, size: (one: T) => number) {
  const { near, viaOtherSite, around } = all;
  const without = size(near) > size(around) ? near : around;
  return { withSpare: size(viaOtherSite) <= size(without) ? viaOtherSite : without, withoutSpare: without };
}

/** Terms of a stop's cost on a line; null without a cost per hour. */
export function costTerms(line: LineInput): StopCostTerms | null {
  if (line.costPerHour === null) return null;
  return {
    costPerHour: line.costPerHour,
    bufferHours: line.bufferHours ?? 0,
    unrecoveredShare: line.unrecoveredShare,
    fixed: line.fixedCost ?? 0,
    steps: line.costSteps ?? [],
  };
}

interface Visit {
  readonly hours: { readonly withSpare: number; readonly withoutSpare: number };
  readonly costs: { readonly withSpare: ExpectedStop; readonly withoutSpare: ExpectedStop } | null;
  /** Mean hours a failure keeps its machine down. */
  readonly hoursDown: number;
}

function visitOf(line: LineInput, pool: PoolOnLine, transferHours: number): Visit {
  const delay = transferOf(pool, line, transferHours);
  const { withSpare, withoutSpare, hoursWithSpare: near, hoursWithoutSpare: around } = pool.times;
  const hours = ways({ near, viaOtherSite: near + delay, around }, (one) => one);
  const terms = costTerms(line);
  const stop = (restoration: typeof withSpare, delayHours: number) =>
    expectedStop({ restoration, delayHours }, terms as StopCostTerms);
  const costs =
    terms &&
    ways(
      { near: stop(withSpare, 0), viaOtherSite: stop(withSpare, delay), around: stop(withoutSpare, 0) },
      ({ cost }) => cost,
    );
  const none = pool.result.noSpare.mean;
  return { hours, costs, hoursDown: (1 - none) * hours.withSpare + none * hours.withoutSpare };
}

function stopsOf(
  { result, units, atSite, failure }: PoolOnLine,
  { hours, costs }: Visit,
  stopShare: number,
): PoolStops {
  const failuresPerYear = units * failure.mean;
  const noSpare = result.noSpare.mean;
  const stops = failuresPerYear * stopShare;
  const parts = ({ hoursBeyond, stepChances }: ExpectedStop) => ({ hoursBeyond, stepChances });
  return {
    ...{ poolId: result.poolId, units, atSite, failuresPerYear, stopShare, noSpare },
    hoursWithSpare: hours.withSpare,
    hoursWithoutSpare: hours.withoutSpare,
    costWithSpare: costs?.withSpare.cost ?? null,
    costWithoutSpare: costs?.withoutSpare.cost ?? null,
    stopWithSpare: costs && parts(costs.withSpare),
    stopWithoutSpare: costs && parts(costs.withoutSpare),
    baseLoss: costs && stops * (1 - noSpare) * costs.withSpare.cost,
    shortageLoss: costs && stops * noSpare * costs.withoutSpare.cost,
  };
}

/** The stops of a line by pool, in their order, and the machines that can stand in for each other. */
export interface LineStops {
  readonly stops: readonly PoolStops[];
  readonly standIns: readonly StandInResult[];
}

/**
 * The stops of each pool on a line.
 *
 * stops a year = units * failure rate * stop share; base part = stops * (1 - noSpare) * cost with a spare, shortage part
 * = stops * noSpare * cost without.
 */
export function lineStops(line: LineInput, pools: readonly PoolOnLine[], transferHours: number): LineStops {
  const visits = pools.map((pool) => visitOf(line, pool, transferHours));
  const { byPool, machines } = stopShares(
    pools.map(({ units, machines, failure }, i) => ({
      ...{ units, machines: machines ?? [], failureRate: failure.mean },
      hoursDown: (visits[i] as Visit).hoursDown,
    })),
  );
  return {
    stops: pools.map((pool, i) => stopsOf(pool, visits[i] as Visit, byPool[i] as number)),
    standIns: machines,
  };
}
