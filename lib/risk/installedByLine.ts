import { yearsBetween } from "@/lib/kernel/isoDate";
import type { GroupInput, InstalledInput } from "@/lib/risk/evaluation";
import type { MachineUnits } from "@/lib/risk/stopShares";

/** What a line has installed of one pool. */
export interface InstalledHere {
  readonly units: number;
  /** Those of the units that sit on machines others can stand in for. */
  readonly machines: readonly MachineUnits[];
  /** Units that leave, and in how many years from now. A day that has passed is left out: they are still there. */
  readonly leaves: readonly { readonly at: number; readonly units: number }[];
}

const nothing: InstalledHere = { units: 0, machines: [], leaves: [] };

function plus(sum: InstalledHere, { units, standby, leaves }: InstalledInput, asOf: string): InstalledHere {
  const leaving = (leaves ?? [])
    .filter(({ on }) => on >= asOf)
    .map((one) => ({ at: yearsBetween(asOf, one.on), units: one.units }));
  return {
    units: sum.units + units,
    machines: standby ? [...sum.machines, { standby, units }] : sum.machines,
    leaves: leaving.length === 0 ? sum.leaves : [...sum.leaves, ...leaving],
  };
}

/**
 * What each line has installed, by line and pool in the order first met; rows of one pool on one line are one.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function installedByLine(
  input: Pick<GroupInput, "asOf" | "lines" | "pools" | "installed">,
): Map<string, Map<string, InstalledHere>> {
  const pools = new Set(input.pools.map(({ id }) => id));
  const out = new Map(input.lines.map(({ id }) => [id, new Map<string, InstalledHere>()]));
  for (const row of input.installed) {
    const line = out.get(row.lineId);
    if (!line) throw new RangeError(`lineId of installed must be a line, got ${row.lineId}`);
    if (!pools.has(row.poolId)) throw new RangeError(`poolId of installed must be a pool, got ${row.poolId}`);
    if (!(Number.isFinite(row.units) && row.units >= 0))
      throw new RangeError(`units must be finite and >= 0, got ${row.units}`);
    line.set(row.poolId, plus(line.get(row.poolId) ?? nothing, row, input.asOf));
  }
  return out;
}
