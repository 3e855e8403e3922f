import { requireCount, requireNumber } from "@/lib/kernel/requireNumber";
import { type Demand, demandChanceAtMost } from "@/lib/spares/demand";

export interface LastBuyInput extends Demand {
  /** Usable spares already held, whole. */
  readonly usable: number;
  /** Cost of one unit too few, > 0, and of one too many, > 0, in one currency. */
  readonly underCost: number;
  readonly overCost: number;
}

/** Beyond this the demand is a fault of the input, not a buy. */
const MOST_UNITS = 1_000_000;

function smallestStock(demand: Demand, fractile: number): number {
  let high = 1;
  while (demandChanceAtMost(demand, high) < fractile) {
    if (high > MOST_UNITS)
      throw new RangeError(`exposure must need at most ${MOST_UNITS} units, got ${demand.exposure}`);
    high *= 2;
  }
  let low = -1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (demandChanceAtMost(demand, middle) >= fractile) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * How many units to buy at the last chance, for the demand that follows.
 *
 * Smallest Q >= 0 with F(usable + Q) >= underCost / (underCost + overCost), F the demand's cumulative chance:
 * each further unit is bought while its chance of being needed, times the cost of lacking it, beats its own cost.
 *
 * @returns quantity in units; fractile the chance aimed at; level the chance reached that stock suffices.
 * @throws {RangeError} naming the argument and its value.
 * @see Newsvendor fractile, textbook result.
 */
export function lastBuy(input: LastBuyInput) {
  const { a, b, exposure, usable, underCost, overCost } = input;
  requireCount(usable, "usable");
  requireNumber(underCost, "underCost", { least: 0, open: true });
  requireNumber(overCost, "overCost", { least: 0, open: true });
  const demand = { a, b, exposure };
  const fractile = underCost / (underCost + overCost);
  const quantity = Math.max(0, smallestStock(demand, fractile) - usable);
  return { quantity, fractile, level: demandChanceAtMost(demand, usable + quantity) };
}
