import "server-only";
import type { Transaction } from "@/lib/data/change";
import { loadExperience, loadRestorations } from "@/lib/data/group/loadExperience";
import { loadInstalled } from "@/lib/data/group/loadInstalled";
import { loadLeaving } from "@/lib/data/group/loadLeaving";
import { loadLines } from "@/lib/data/group/loadLines";
import { loadPools } from "@/lib/data/group/loadPools";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { GroupInput } from "@/lib/risk/evaluation";
import { withLeaves } from "@/lib/risk/withLeaves";

/**
 * Everything the evaluation of the group reads, as known on a day.
 *
 * Dates and events after the day are left out. Stock is what is on the shelf now, or what was on it at the instant a
 * request looks back to.
 */
export async function loadGroupInput(tx: Transaction, asOf: IsoDate): Promise<GroupInput> {
  const lines = await loadLines(tx, asOf);
  const installed = withLeaves(await loadInstalled(tx, asOf), await loadLeaving(tx, asOf));
  const pools = await loadPools(tx, asOf, installed);
  const experience = await loadExperience(tx, asOf);
  const restorations = await loadRestorations(tx, asOf);
  return { asOf, lines, pools, installed, experience, restorations };
}
