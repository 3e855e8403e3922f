import type { InstalledInput, LeavingInput } from "@/lib/risk/evaluation";

/** Units that leave one line. */
export interface LeavingPlace extends LeavingInput {
  readonly lineId: string;
  readonly poolId: string;
}

const placeOf = ({ lineId, poolId }: { readonly lineId: string; readonly poolId: string }) =>
  JSON.stringify([lineId, poolId]);

/**
 * Installed units with these leaves instead of their own, each with the first row of its line and part.
 *
 * Leaves of units that are not there are dropped.
 */
export function withLeaves(
  installed: readonly InstalledInput[],
  leaving: readonly LeavingPlace[],
): InstalledInput[] {
  const waiting = new Map<string, LeavingInput[]>();
  for (const { lineId, poolId, ...leave } of leaving) {
    const place = placeOf({ lineId, poolId });
    waiting.set(place, [...(waiting.get(place) ?? []), leave]);
  }
  return installed.map(({ leaves: _, ...row }) => {
    const leaves = waiting.get(placeOf(row)) ?? [];
    waiting.delete(placeOf(row));
    return leaves.length > 0 ? { ...row, leaves } : row;
  });
}
