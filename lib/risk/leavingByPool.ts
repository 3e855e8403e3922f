import type { GroupInput, InstalledInput, LeavingInput } from "@/lib/risk/evaluation";

function requireUnits(units: number): number {
  if (!(Number.isSafeInteger(units) && units >= 0))
    throw new RangeError(`units of leaves must be a whole number >= 0, got ${units}`);
  return units;
}

interface Place {
  units: number;
  readonly leaves: LeavingInput[];
}

/** Installed rows of one pool on one line belong together: a retrofit may span several machines. */
function placesOf(installed: readonly InstalledInput[]): Map<string, Map<string, Place>> {
  const pools = new Map<string, Map<string, Place>>();
  for (const { lineId, poolId, units, leaves = [] } of installed) {
    const lines = pools.get(poolId) ?? new Map<string, Place>();
    pools.set(poolId, lines);
    const place = lines.get(lineId) ?? { units: 0, leaves: [] };
    lines.set(lineId, place);
    place.units += units;
    place.leaves.push(...leaves);
  }
  return pools;
}

const byDay = (a: LeavingInput, b: LeavingInput) => (a.on < b.on ? -1 : Number(a.on > b.on));

/** The leaves still ahead, the earliest first, together no more than is there. */
function stillAhead({ units, leaves }: Place, asOf: GroupInput["asOf"]): LeavingInput[] {
  let left = Math.floor(units);
  return leaves
    .filter(({ on }) => on >= asOf)
    .sort(byDay)
    .map((leave) => {
      const going = Math.min(left, requireUnits(leave.units));
      left -= going;
      return { ...leave, units: going };
    })
    .filter((leave) => leave.units > 0);
}

/**
 * Units that leave each pool at retrofits, over all lines, the earliest first.
 *
 * A line gives up no more units than it has; a day before the as-of day is passed over, since what is still installed
 * then did not leave on it.
 *
 * @throws {RangeError} for units that are not whole and >= 0.
 */
export function leavingByPool({ asOf, installed }: GroupInput): ReadonlyMap<string, readonly LeavingInput[]> {
  return new Map(
    [...placesOf(installed)].map(([poolId, lines]) => [
      poolId,
      [...lines.values()].flatMap((place) => stillAhead(place, asOf)).sort(byDay),
    ]),
  );
}
