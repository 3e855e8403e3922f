import { requireNumber, requireShare } from "@/lib/kernel/requireNumber";

/** Units in service over a span of years from now; `to` null never ends. */
export interface InstalledSpan {
  readonly from: number;
  readonly to: number | null;
  readonly units: number;
}

/** What replenishes a pool, in years from now; negative is past, null never ends. */
export interface PoolSupply {
  readonly installed: readonly InstalledSpan[];
  /** Order to receipt, years. */
  readonly leadTime: number;
  readonly lastOrderAt: number | null;
  readonly repair: {
    readonly turnaround: number;
    /** Share of removed units that come back usable. */
    readonly yield: number;
    readonly untilAt: number | null;
  } | null;
}

/** Unit-years in service between two times; nothing when the span is empty. */
function unitYears(installed: readonly InstalledSpan[], from: number, to: number): number {
  let sum = 0;
  for (const span of installed) {
    const overlap = Math.min(to, span.to ?? Number.POSITIVE_INFINITY) - Math.max(from, span.from);
    if (overlap > 0) sum += span.units * overlap;
  }
  return sum;
}

function requireSupply(pool: PoolSupply): void {
  requireNumber(pool.leadTime, "leadTime", { least: 0 });
  for (const { units } of pool.installed) requireNumber(units, "units", { least: 0 });
  if (!pool.repair) return;
  requireNumber(pool.repair.turnaround, "turnaround", { least: 0 });
  requireShare(pool.repair.yield, "yield");
}

/**
 * Unit-years whose removals no supply has made good by time t: g(t) = integral of n(s) * w(s, t) over s in [0, t].
 *
 * w = 1 while the replacement ordered at s is still under way (t - s < lead time), then 0, if s <= last order;
 * else 1 while the unit is in repair (t - s < turnaround), then 1 - yield, if repair is open at s; else 1.
 * Removals by t not yet replenished are then Poisson with mean rate * g(t) (thinning of a Poisson stream).
 *
 * @param t Years from now, >= 0.
 * @returns Unit-years, >= 0.
 * @throws {RangeError} naming the argument and its value.
 */
export function unreplenishedExposure(pool: PoolSupply, t: number): number {
  requireNumber(t, "t", { least: 0 });
  requireSupply(pool);
  const ordersEnd = Math.min(t, Math.max(0, pool.lastOrderAt ?? Number.POSITIVE_INFINITY));
  const onOrder = unitYears(pool.installed, Math.max(0, t - pool.leadTime), ordersEnd);
  if (!pool.repair) return onOrder + unitYears(pool.installed, ordersEnd, t);
  const { turnaround, yield: returned, untilAt } = pool.repair;
  const repairEnd = Math.min(t, Math.max(ordersEnd, untilAt ?? Number.POSITIVE_INFINITY));
  const lost = (1 - returned) * unitYears(pool.installed, ordersEnd, repairEnd);
  const inRepair = returned * unitYears(pool.installed, Math.max(ordersEnd, t - turnaround), repairEnd);
  return onOrder + lost + inRepair + unitYears(pool.installed, repairEnd, t);
}

/**
 * Unit-years whose removals no supply will ever make good: the integral of n(s) * w(s, infinity) over s in [0, t].
 *
 * w is 0 if the part can be ordered at s, 1 - yield if repair is open at s, else 1. Never more than
 * `unreplenishedExposure`, which also counts what is still on its way back.
 *
 * @param t Years from now, >= 0.
 * @returns Unit-years, >= 0.
 * @throws {RangeError} naming the argument and its value.
 */
export function lostExposure(pool: PoolSupply, t: number): number {
  const { repair } = pool;
  return unreplenishedExposure({ ...pool, leadTime: 0, repair: repair && { ...repair, turnaround: 0 } }, t);
}
