import "server-only";
import type { Transaction } from "@/lib/data/change";

/** A kind of row that names a part and follows it when two parts turn out to be one. */
export type PartTable = keyof typeof partRows;

interface Row {
  readonly id: string;
}

/** What a merge asks of a table: the rows of a part, and to give rows to another part. */
interface PartRows {
  readonly of: (tx: Transaction, partId: string) => PromiseLike<Row[]>;
  readonly give: (
    tx: Transaction,
    ids: readonly string[],
    to: { readonly from: string; readonly partId: string },
  ) => PromiseLike<{ count: number }>;
}

const id = { id: true } as const;
const which = (ids: readonly string[], from: string) => ({ id: { in: [...ids] }, partId: from });

/**
 * Tables whose rows follow the part. Rows that tell what was shown or said on a day (a closed review, a notice, a stored
 * evaluation) stay with the part they named.
 */
export const partRows = {
  PartAlias: {
    of: (tx, partId) => tx.partAlias.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) =>
      tx.partAlias.updateMany({ where: which(ids, from), data: { partId } }),
  },
  LifecycleFact: {
    of: (tx, partId) => tx.lifecycleFact.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) =>
      tx.lifecycleFact.updateMany({ where: which(ids, from), data: { partId } }),
  },
  Position: {
    of: (tx, partId) => tx.position.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) =>
      tx.position.updateMany({ where: which(ids, from), data: { partId } }),
  },
  Unit: {
    of: (tx, partId) => tx.unit.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) => tx.unit.updateMany({ where: which(ids, from), data: { partId } }),
  },
  StockLot: {
    of: (tx, partId) => tx.stockLot.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) =>
      tx.stockLot.updateMany({ where: which(ids, from), data: { partId } }),
  },
  Event: {
    of: (tx, partId) => tx.event.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) => tx.event.updateMany({ where: which(ids, from), data: { partId } }),
  },
  RepairOrder: {
    of: (tx, partId) => tx.repairOrder.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) =>
      tx.repairOrder.updateMany({ where: which(ids, from), data: { partId } }),
  },
  PlannedRemoval: {
    of: (tx, partId) => tx.plannedRemoval.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) =>
      tx.plannedRemoval.updateMany({ where: which(ids, from), data: { partId } }),
  },
  Transfer: {
    of: (tx, partId) => tx.transfer.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) =>
      tx.transfer.updateMany({ where: which(ids, from), data: { partId } }),
  },
  CountLine: {
    of: (tx, partId) => tx.countLine.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) =>
      tx.countLine.updateMany({ where: which(ids, from), data: { partId } }),
  },
  StorageCare: {
    of: (tx, partId) => tx.storageCare.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) =>
      tx.storageCare.updateMany({ where: which(ids, from), data: { partId } }),
  },
  RemovedUnit: {
    of: (tx, partId) => tx.removedUnit.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) =>
      tx.removedUnit.updateMany({ where: which(ids, from), data: { partId } }),
  },
  FittedUnit: {
    of: (tx, partId) => tx.fittedUnit.findMany({ where: { partId }, select: id }),
    give: (tx, ids, { from, partId }) =>
      tx.fittedUnit.updateMany({ where: which(ids, from), data: { partId } }),
  },
} as const satisfies Readonly<Record<string, PartRows>>;

export const PART_TABLES = Object.keys(partRows) as PartTable[];

/** Ids a statement may name; the protocol counts its bound values in 16 bits. */
const IDS_A_STATEMENT = 10_000;

/** Gives rows of a table to another part. @returns how many still belonged to the part they are taken from. */
export async function giveRows(
  tx: Transaction,
  table: PartTable,
  { ids, from, partId }: { readonly ids: readonly string[]; readonly from: string; readonly partId: string },
): Promise<number> {
  let given = 0;
  for (let at = 0; at < ids.length; at += IDS_A_STATEMENT)
    given += (await partRows[table].give(tx, ids.slice(at, at + IDS_A_STATEMENT), { from, partId })).count;
  return given;
}
