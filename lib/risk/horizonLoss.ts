import { requireNumber } from "@/lib/kernel/requireNumber";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { LineResult, Span } from "@/lib/risk/evaluation";
import type { PoolOnLine, PoolStops } from "@/lib/risk/lineStops";

const MONTHS_PER_YEAR = 12;

/** Units in service over a month of the grid; one that leaves within it counts for the part it is there. */
function unitsIn(month: number, { units, leaves }: PoolOnLine): number {
  let left = 0;
  for (const { at, units: leaving } of leaves ?? [])
    left += leaving * Math.min(1, Math.max(0, month + 1 - at * MONTHS_PER_YEAR));
  return Math.max(0, units - left);
}

function lossIn(month: number, pool: PoolOnLine, stops: PoolStops): number {
  const byMonth = pool.result.noSpareByMonth;
  const noSpare = ((byMonth[month] as Span).mean + (byMonth[month + 1] as Span).mean) / 2;
  const perStop = (1 - noSpare) * (stops.costWithSpare ?? 0) + noSpare * (stops.costWithoutSpare ?? 0);
  return (unitsIn(month, pool) * pool.failure.mean * stops.stopShare * perStop) / MONTHS_PER_YEAR;
}

/**
 * Expected stop loss of a line over all months computed, discounted to the day of the evaluation.
 *
 * = sum over months m of (1 + r)^(-(m + 1/2) / 12) * sum over pools of units * rate * stop share / 12 *
 * [(1 - pi) C_s + pi C_ns], pi the mean of the no-spare chance at the month's two ends, units less those that have left.
 * Costs, rates and stop shares stay as they are today.
 *
 * @returns The years looked over, the sum, and its parts by year.
 * @throws {RangeError} naming the argument and its value.
 */
export function horizonLoss(
  pools: readonly PoolOnLine[],
  stops: readonly PoolStops[],
  { months, discountRate }: Assumptions,
): NonNullable<LineResult["horizonLoss"]> {
  requireNumber(discountRate, "discountRate", { least: 0 });
  const byYear = Array.from({ length: Math.ceil(months / MONTHS_PER_YEAR) }, () => 0);
  for (let month = 0; month < months; month += 1) {
    const worth = (1 + discountRate) ** (-(month + 0.5) / MONTHS_PER_YEAR);
    const loss = pools.reduce((sum, pool, i) => sum + lossIn(month, pool, stops[i] as PoolStops), 0);
    const year = Math.floor(month / MONTHS_PER_YEAR);
    byYear[year] = (byYear[year] as number) + worth * loss;
  }
  return { years: months / MONTHS_PER_YEAR, loss: byYear.reduce((sum, loss) => sum + loss, 0), byYear };
}
