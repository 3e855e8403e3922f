import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Deeded, Transaction } from "@/lib/data/change";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { StockLot, Transfer } from "@/prisma/generated/client";

/** What moving the pieces did: what the transfer keeps of it, and the lots that changed. */
export interface ShelfMove {
  readonly facts: Partial<
    Pick<Transfer, "bin" | "revision" | "lastPoweredOn" | "testedOn" | "originUnknown" | "toLotId">
  >;
  readonly deeds: readonly Deeded[];
}

const conflict = (reason: string, fields?: Refusal["fields"]): Result<never, Refusal> =>
  err({ code: "conflict", reason, ...(fields ? { fields } : {}) });

type Bin = Pick<StockLot, "id" | "siteId" | "partId" | "quantity">;

function deedOf(deed: string, { id, siteId, partId, quantity }: Bin, by: number): Deeded {
  const before = quantity ?? 0;
  return {
    ...{ deed, entity: "StockLot", entityId: id, siteId, stockOf: [partId] },
    before: { quantity: before },
    after: { quantity: before + by },
  };
}

/** Takes the pieces off the giver's lot; they go as the lot says they are now. */
export async function takeFromShelf(
  tx: Transaction,
  transfer: Transfer,
): Promise<Result<ShelfMove, Refusal>> {
  const { lotId, fromSiteId: siteId, partId, pieces } = transfer;
  const lot = lotId === null ? null : await tx.stockLot.findFirst({ where: { id: lotId, siteId, partId } });
  if (!lot) return conflict("The lot is no longer there. Withdraw the transfer and ask for another one.");
  const { count } = await tx.stockLot.updateMany({
    where: { id: lot.id, state: "usable", quantity: { gte: pieces } },
    data: { quantity: { decrement: pieces } },
  });
  if (count === 0)
    return conflict(
      `Bin ${lot.bin} holds ${lot.state === "usable" ? (lot.quantity ?? "an uncounted number of") : "no"} usable pieces, ${pieces} were to go. Nothing was changed.`,
    );
  const { bin, revision, lastPoweredOn, testedOn, originUnknown } = lot;
  return ok({
    facts: { bin, revision, lastPoweredOn, testedOn, originUnknown },
    deeds: [deedOf("transfer:off-shelf", lot, -pieces)],
  });
}

/** Puts pieces that were not sent after all back to the lot they came from. */
export async function putBack(tx: Transaction, transfer: Transfer): Promise<Result<ShelfMove, Refusal>> {
  const { lotId, pieces } = transfer;
  const lot = lotId === null ? null : await tx.stockLot.findFirst({ where: { id: lotId, state: "usable" } });
  if (!lot || lot.quantity === null)
    return conflict("The lot they came from was changed since: its pieces are no longer usable or counted.");
  await tx.stockLot.update({ where: { id: lot.id }, data: { quantity: { increment: pieces } } });
  return ok({ facts: {}, deeds: [deedOf("transfer:back-on-shelf", lot, pieces)] });
}

const sameDay = (a: Date | null, b: Date | null) => (a?.getTime() ?? null) === (b?.getTime() ?? null);

/** Pieces of one lot are alike, so only like pieces join it. */
function joins(lot: StockLot, { lastPoweredOn, testedOn, originUnknown }: Transfer): boolean {
  if (lot.quantity === 0) return true;
  const alike = sameDay(lot.lastPoweredOn, lastPoweredOn) && sameDay(lot.testedOn, testedOn);
  return alike && lot.originUnknown === originUnknown;
}

/** Puts the pieces on the taker's shelf: into a bin of their own, or to pieces that are alike. */
export async function putOnShelf(
  tx: Transaction,
  transfer: Transfer,
  bin: string,
): Promise<Result<ShelfMove, Refusal>> {
  const { partId, revision, pieces, toSiteId: siteId, lastPoweredOn, testedOn, originUnknown } = transfer;
  const place = { siteId, partId, bin, revision, state: "usable" as const };
  const known = await tx.stockLot.findUnique({ where: { siteId_partId_bin_revision_state: place } });
  if (known && known.quantity === null)
    return conflict(`Nobody counted bin ${bin}. Count it first, or write another bin.`, {
      bin: "Not counted.",
    });
  if (known && !joins(known, transfer))
    return conflict(
      `Bin ${bin} holds pieces of this revision that were last powered or tested on another day. Write another bin.`,
      { bin: "Holds pieces that are not alike." },
    );
  const facts = { lastPoweredOn, testedOn, originUnknown };
  const lot = known
    ? await tx.stockLot.update({
        where: { id: known.id },
        data: { ...facts, quantity: { increment: pieces } },
      })
    : await tx.stockLot.create({ data: { ...place, ...facts, quantity: pieces, evidence: "documented" } });
  const before = { ...lot, quantity: known?.quantity ?? 0 };
  return ok({ facts: { toLotId: lot.id }, deeds: [deedOf("transfer:on-shelf", before, pieces)] });
}

/** Takes pieces booked as received off the taker's shelf again. */
export async function takeOffAgain(tx: Transaction, transfer: Transfer): Promise<Result<ShelfMove, Refusal>> {
  const { toLotId, pieces } = transfer;
  const gone = conflict("Pieces of that bin were used or moved since. Nothing was taken back.");
  const lot = toLotId === null ? null : await tx.stockLot.findUnique({ where: { id: toLotId } });
  if (!lot) return gone;
  const { count } = await tx.stockLot.updateMany({
    where: { id: lot.id, state: "usable", quantity: { gte: pieces } },
    data: { quantity: { decrement: pieces } },
  });
  if (count === 0) return gone;
  return ok({ facts: { toLotId: null }, deeds: [deedOf("transfer:off-shelf-again", lot, -pieces)] });
}
