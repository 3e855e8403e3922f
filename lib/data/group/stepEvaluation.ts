import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { SetInUse } from "@/lib/data/group/assumptionsInUse";
import { dropStale, markStale } from "@/lib/data/group/dropStale";
import { loadPoolsOf } from "@/lib/data/group/loadPools";
import { storeStep } from "@/lib/data/group/storeEvaluation";
import { evaluator, type Held } from "@/lib/jobs/evaluator";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { PoolInput } from "@/lib/risk/evaluation";

/** An evaluation this process computed and still has in mind. */
export interface WarmGroup {
  readonly id: string;
  readonly rowsId: string;
  readonly asOf: IsoDate;
  readonly dataVersion: bigint;
  readonly set: SetInUse;
  readonly held: Held;
}

/** What is asked for: data of which version, with which assumptions. */
export interface Wanted {
  readonly asOf: IsoDate;
  readonly dataVersion: bigint;
  readonly set: SetInUse;
}

/**
 * The evaluation from the one in mind, when nothing but the stock of some parts has changed since; else null.
 *
 * Only what the change touches is loaded, computed and written; the rows are those a whole evaluation would give. They
 * may be those another process steps on from too.
 */
export async function stepEvaluation(
  tx: Transaction,
  warm: WarmGroup,
  wanted: Wanted,
): Promise<WarmGroup | null> {
  if (warm.asOf !== wanted.asOf || !isSameSet(warm.set, wanted.set)) return null;
  const changed = await loadChanged(tx, warm, wanted);
  if (changed === null || !(await isStored(tx, warm))) return null;
  const computed = await evaluator().step(warm.held, { changed, others: await writtenSince(tx, warm) });
  if (!computed) return null;
  await markStale(tx, wanted.dataVersion);
  const id = await storeStep(tx, wanted, { ...computed.rows, rowsId: warm.rowsId });
  await dropStale(tx, warm.rowsId);
  return { ...wanted, id, rowsId: warm.rowsId, held: computed.held };
}

function isSameSet(a: SetInUse, b: SetInUse): boolean {
  return a.kind === b.kind && a.version === b.version;
}

/** The pools of the parts whose stock changed since; null when anything else may have, or pools came or went. */
async function loadChanged(tx: Transaction, warm: WarmGroup, wanted: Wanted): Promise<PoolInput[] | null> {
  const narrow = await tx.narrowChange.findMany({
    where: { version: { gt: warm.dataVersion, lte: wanted.dataVersion } },
    select: { partIds: true },
  });
  if (BigInt(narrow.length) !== wanted.dataVersion - warm.dataVersion) return null;
  const partIds = [...new Set(narrow.flatMap((change) => change.partIds))];
  const pools = await loadPoolsOf(tx, wanted.asOf, partIds);
  return pools.length === partIds.length ? pools : null;
}

/** Whether the rows are still there, as this process left them or stepped on from there by others. */
async function isStored(tx: Transaction, { rowsId, dataVersion }: WarmGroup): Promise<boolean> {
  return (await tx.evaluation.count({ where: { rowsId, dataVersion: { gte: dataVersion } } })) > 0;
}

/** Lines other processes have written since: theirs stand in the store, not those this process has in mind. */
async function writtenSince(tx: Transaction, { rowsId, dataVersion }: WarmGroup): Promise<string[]> {
  const rows = await tx.lineRow.findMany({
    where: { rowsId, fromVersion: { gt: dataVersion } },
    distinct: ["lineId"],
    select: { lineId: true },
  });
  return rows.map(({ lineId }) => lineId);
}
