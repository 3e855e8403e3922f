import { requireCount, requireNumber, requireShare } from "@/lib/kernel/requireNumber";
import type { StandbyInput, StandInResult } from "@/lib/risk/evaluation";

const HOURS_PER_YEAR = 8760;

/** Units of a pool on a machine that others can stand in for. */
export interface MachineUnits {
  readonly standby: StandbyInput;
  readonly units: number;
}

/** What a pool does to the machines of a line. */
export interface PoolOnMachines {
  /** All units on the line, those of the machines below among them. */
  readonly units: number;
  readonly machines: readonly MachineUnits[];
  /** Failures per unit-year. */
  readonly failureRate: number;
  /** Mean hours a failure keeps its machine down. */
  readonly hoursDown: number;
}

/**
 * Chance that at least so many of independent things happen, each with its own chance (Poisson binomial).
 *
 * By adding one thing after the other: P(j of i + 1) = P(j of i) (1 - p) + P(j - 1 of i) p. None needed is certain.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function chanceAtLeast(chances: readonly number[], least: number): number {
  for (const chance of chances) requireShare(chance, "chance");
  if (least <= 0) return 1;
  let counts = [1];
  for (const chance of chances)
    counts = Array.from(
      { length: counts.length + 1 },
      (_, j) => (counts[j] ?? 0) * (1 - chance) + (counts[j - 1] ?? 0) * chance,
    );
  const tail = counts.slice(least).reduce((sum, chance) => sum + chance, 0);
  return Math.min(1, tail);
}

interface Group {
  needed: number;
  /** Share of the time each machine is down, by its id. */
  readonly down: Map<string, number>;
}

function groupsOf(pools: readonly PoolOnMachines[]): Map<string, Group> {
  const groups = new Map<string, Group>();
  for (const { machines, failureRate, hoursDown } of pools)
    for (const { standby, units } of machines) {
      const { machineId, group: name } = standby;
      const needed = requireNumber(requireCount(standby.needed, "needed"), "needed", { least: 1 });
      const group = groups.get(name) ?? { needed, down: new Map<string, number>() };
      group.needed = Math.max(group.needed, needed);
      const more = (units * failureRate * hoursDown) / HOURS_PER_YEAR;
      group.down.set(machineId, Math.min(1, (group.down.get(machineId) ?? 0) + more));
      groups.set(name, group);
    }
  return groups;
}

/** Chance that the failure of a machine leaves fewer than the line needs: n - needed of the others are down already. */
function shareOf({ needed, down }: Group, machineId: string): number {
  const others = [...down].filter(([id]) => id !== machineId).map(([, share]) => share);
  return chanceAtLeast(others, down.size - needed);
}

/** The shares of a line: by pool in their order, and by machine where a failure does not always stop the line. */
export interface StopShares {
  readonly byPool: readonly number[];
  readonly machines: readonly StandInResult[];
}

function machinesOf(groups: ReadonlyMap<string, Group>): StandInResult[] {
  return [...groups].flatMap(([group, { needed, down }]) =>
    [...down].map(([machineId, share]) => {
      const stopShare = shareOf({ needed, down }, machineId);
      return { machineId, group, needed, of: down.size, down: share, stopShare };
    }),
  );
}

/**
 * Share of each pool's failures on a line that stop the line, in [0, 1]; 1 for machines in series with the rest.
 *
 * Of the n machines of a group the line needs k. A failure on one stops the line when at least n - k of the other
 * n - 1 are down. A machine is down for the share u of the time: the sum over its pools of failures a year * mean
 * hours / 8760, at most 1; the machines fail apart from each other. k >= n is a series. Where the machines of one
 * group name different k the largest counts; a machine is in one group only.
 *
 * @throws {RangeError} naming the argument and its value.
 * @see k-out-of-n structures with independent repair, e.g. IEC 61078 (from memory).
 */
export function stopShares(pools: readonly PoolOnMachines[]): StopShares {
  const machines = machinesOf(groupsOf(pools));
  const shares = new Map(machines.map(({ machineId, stopShare }) => [machineId, stopShare]));
  const byPool = pools.map(({ units, machines: own }) => {
    const spared = own.reduce(
      (sum, one) => sum + one.units * (1 - (shares.get(one.standby.machineId) ?? 1)),
      0,
    );
    return units === 0 ? 1 : 1 - spared / units;
  });
  return { byPool, machines: machines.filter(({ stopShare }) => stopShare < 1) };
}
