import chiSquareCdf from "@stdlib/stats-base-dists-chisquare-cdf";
import { requireCount, requireNumber } from "@/lib/kernel/requireNumber";
import type { Counted } from "@/lib/reliability/borrow";

export interface Homogeneity {
  /** Rate of all groups together, events per unit-year. */
  readonly rate: number;
  /** Sum over groups of (events - expected)^2 / expected. */
  readonly statistic: number;
  /** Groups with time in service, less one. */
  readonly degrees: number;
  /** Chance of so large a statistic when all share one rate; small means unlike. */
  readonly p: number;
  /** Fewest events any group is expected to have; below about 0.1 the chance is rough. */
  readonly leastExpected: number;
}

function requireGroup({ events, unitYears }: Counted): void {
  requireCount(events, "events");
  requireNumber(unitYears, "unitYears", { least: 0, open: events > 0 });
}

/**
 * Asks whether groups (the sites of a part, the parts of a family) may share one rate, before they are pooled.
 *
 * expected_i = unitYears_i * sum of events / sum of unit-years; statistic = sum of (events_i - expected_i)^2 / expected_i,
 * chi-square with groups - 1 degrees when the rate is the same everywhere. Groups without time in service say nothing.
 *
 * @param groups Events whole and >= 0; unit-years >= 0, > 0 where there are events.
 * @returns Null when there is nothing to compare: no event, or fewer than two groups with time in service.
 * @throws {RangeError} naming the argument and its value.
 * @see Pearson's test; NUREG/CR-6823 on pooling of Poisson data (from memory).
 */
export function homogeneity(groups: readonly Counted[]): Homogeneity | null {
  for (const group of groups) requireGroup(group);
  const seen = groups.filter(({ unitYears }) => unitYears > 0);
  const events = seen.reduce((sum, group) => sum + group.events, 0);
  if (seen.length < 2 || events === 0) return null;
  const rate = events / seen.reduce((sum, group) => sum + group.unitYears, 0);
  let statistic = 0;
  for (const group of seen) {
    const expected = group.unitYears * rate;
    statistic += (group.events - expected) ** 2 / expected;
  }
  const degrees = seen.length - 1;
  return {
    rate,
    statistic,
    degrees,
    p: 1 - chiSquareCdf(statistic, degrees),
    leastExpected: Math.min(...seen.map(({ unitYears }) => unitYears * rate)),
  };
}
