import { type IsoDate, yearsBetween } from "@/lib/kernel/isoDate";
import type { RemovedUnits } from "@/lib/portfolio/planProblem";
import type { Candidate } from "@/lib/portfolio/planSlots";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { ArrivalInput, GroupInput, InstalledInput, LeavingInput } from "@/lib/risk/evaluation";

/** What one chosen option does to one pool. */
export interface PoolEffect {
  readonly poolId: string;
  readonly leaves: readonly LeavingInput[];
  readonly arrivals: readonly ArrivalInput[];
  readonly added: number;
}

type Works = Pick<Assumptions, "unprovenWorks" | "releaseWorks">;

/** Units kept at the group's own chance are the evaluation's own; another chance comes as pieces that arrive. */
function removalOf({ units, fate, works }: RemovedUnits, on: IsoDate, group: Works): Partial<PoolEffect> {
  if (units === 0) return {};
  const chance = fate === "unproven" ? group.unprovenWorks : (works ?? group.releaseWorks);
  const kept = fate === "kept" && chance === group.releaseWorks;
  const arrives = fate !== "scrapped" && !kept && chance > 0;
  return {
    leaves: [{ on, units, kept }],
    arrivals: arrives ? [{ on, pieces: units, works: chance }] : [],
  };
}

/** What a candidate does to each pool: units leave, and spares come, on the day the work ends. */
export function effectsOf({ option, slot }: Candidate, group: Works): PoolEffect[] {
  const on = slot.endsOn;
  const parts: [string, Partial<PoolEffect>][] = [
    ...option.removes.map((one): [string, Partial<PoolEffect>] => [one.poolId, removalOf(one, on, group)]),
    ...option.buys.map(({ poolId, pieces, works }): [string, Partial<PoolEffect>] => [
      poolId,
      pieces > 0 ? { arrivals: [{ on, pieces, works }] } : {},
    ]),
    ...option.adds.map(({ poolId, units }): [string, Partial<PoolEffect>] => [poolId, { added: units }]),
  ];
  const out = new Map<string, PoolEffect>();
  for (const [poolId, { leaves = [], arrivals = [], added = 0 }] of parts) {
    const before = out.get(poolId) ?? { poolId, leaves: [], arrivals: [], added: 0 };
    out.set(poolId, {
      poolId,
      leaves: [...before.leaves, ...leaves],
      arrivals: [...before.arrivals, ...arrivals],
      added: before.added + added,
    });
  }
  return [...out.values()];
}

/** Years from the as-of day to the end of the work. */
export const doneIn = ({ slot }: Candidate, asOf: GroupInput["asOf"]): number =>
  yearsBetween(asOf, slot.endsOn);

/** The rows of one pool with the leaves of a plan, each with the first row of its line. */
export function rowsWithLeaves(
  rows: readonly InstalledInput[],
  leaving: readonly { readonly lineId: string; readonly leave: LeavingInput }[],
): InstalledInput[] {
  const open = [...leaving];
  return rows.map((row) => {
    const mine = open.filter(({ lineId }) => lineId === row.lineId).map(({ leave }) => leave);
    if (mine.length === 0) return row;
    open.splice(0, open.length, ...open.filter(({ lineId }) => lineId !== row.lineId));
    return { ...row, leaves: [...(row.leaves ?? []), ...mine] };
  });
}
