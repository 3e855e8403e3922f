import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { change, type Deeded, type Transaction } from "@/lib/data/change";
import { atSites, siteIds, sites } from "@/lib/data/scope";
import {
  putBack,
  putOnShelf,
  type ShelfMove,
  takeFromShelf,
  takeOffAgain,
} from "@/lib/data/stock/transferLots";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AskTransfer, StepTransfer } from "@/lib/schema/transfer";
import { type TransferStepName, transferSteps } from "@/lib/schema/transferSteps";
import type { StockLot, Transfer } from "@/prisma/generated/client";

const missing: Refusal = {
  code: "missing",
  reason: "There is no such stock or site where you may ask for it.",
};
const missingTransfer: Refusal = { code: "missing", reason: "There is no such transfer that you may move." };
const notYours: Refusal = {
  code: "forbidden",
  reason: "This step belongs to the people of the other site. Nothing was changed.",
};

interface Ends {
  readonly lot: StockLot;
  readonly toSiteId: string;
}

/** The lot and the site it is asked for, when the actor sees both and may change stock at one of them. */
async function findEnds(tx: Transaction, actor: Actor, wish: AskTransfer): Promise<Ends | null> {
  // Held, so that two people do not ask for the same piece.
  await tx.$queryRaw`SELECT "id" FROM "StockLot" WHERE "id" = ${wish.lotId}::uuid FOR UPDATE`;
  const lot = await tx.stockLot.findFirst({ where: { id: wish.lotId, ...atSites(actor, "read") } });
  const to = await tx.site.findFirst({ where: { AND: [{ id: wish.toSiteId }, sites(actor, "read")] } });
  if (!lot || !to || to.id === lot.siteId) return null;
  const may = [lot.siteId, to.id].some((siteId) => mayAt(actor.grants, "stock:write", siteId));
  return may ? { lot, toSiteId: to.id } : null;
}

/** Usable pieces of a lot nobody has asked for yet. */
async function freeOf(tx: Transaction, { id, state, quantity }: StockLot): Promise<number> {
  const promised = await tx.transfer.aggregate({
    where: { lotId: id, state: { in: ["proposed", "agreed"] } },
    _sum: { pieces: true },
  });
  return state === "usable" ? Math.max(0, (quantity ?? 0) - (promised._sum.pieces ?? 0)) : 0;
}

function tooMany(bin: string, free: number, pieces: number): Refusal {
  return {
    code: "conflict",
    reason: `Bin ${bin} has ${free} usable pieces nobody else asked for, not ${pieces}. Load the page again.`,
    fields: { pieces: "More than is free." },
  };
}

/**
 * Asks a site for pieces of a lot on behalf of another: the start of a transfer.
 *
 * Whoever may change stock at either end may ask and must see both. The shelf does not change.
 */
export async function askForTransfer(
  actor: Actor,
  wish: AskTransfer,
): Promise<Result<{ id: string }, Refusal>> {
  return change(actor, async (tx, record) => {
    const ends = await findEnds(tx, actor, wish);
    if (!ends) return err(missing);
    const { id: lotId, partId, siteId: fromSiteId, bin, revision, ...lot } = ends.lot;
    const free = await freeOf(tx, ends.lot);
    if (wish.pieces > free) return err(tooMany(bin, free, wish.pieces));
    const { lastPoweredOn, testedOn, originUnknown } = lot;
    const asked = { partId, fromSiteId, toSiteId: ends.toSiteId, lotId, bin, revision, pieces: wish.pieces };
    const { id } = await tx.transfer.create({
      data: {
        ...{ ...asked, lastPoweredOn, testedOn, originUnknown },
        steps: { create: { state: "proposed", by: actor.name } },
      },
      select: { id: true },
    });
    record({ deed: "transfer:ask", entity: "Transfer", entityId: id, siteId: fromSiteId, after: asked });
    return ok({ id });
  });
}

/** The transfers with an end at the actor's sites. */
export function seenTransfers(actor: Actor) {
  const ids = siteIds(actor, "read");
  return ids ? { OR: [{ fromSiteId: ids }, { toSiteId: ids }] } : {};
}

/**
 * Moves a transfer one step on, or one back.
 *
 * The giving site's people agree, refuse and send, the taking site's receive; either end withdraws. Sending takes the
 * pieces off the giver's shelf, receiving puts them on the taker's: in between they are on neither.
 */
export async function moveTransfer(actor: Actor, asked: StepTransfer): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    await tx.$queryRaw`SELECT "id" FROM "Transfer" WHERE "id" = ${asked.transferId}::uuid FOR UPDATE`;
    const row = await tx.transfer.findFirst({
      where: { AND: [{ id: asked.transferId }, seenTransfers(actor)] },
    });
    if (!row) return err(missingTransfer);
    const doubt = doubtOf(actor, asked.step, row);
    if (doubt) return err(doubt);
    const moved = await moveShelf(tx, asked, row);
    if (!moved.ok) return moved;
    record(await writeStep(tx, actor, { asked, row, facts: moved.value.facts }));
    for (const deed of moved.value.deeds) record(deed);
    return ok(null);
  });
}

function doubtOf(
  actor: Actor,
  step: TransferStepName,
  { fromSiteId, toSiteId, state }: Transfer,
): Refusal | null {
  const { side, from } = transferSteps[step];
  const giver = mayAt(actor.grants, "stock:write", fromSiteId);
  const taker = mayAt(actor.grants, "stock:write", toSiteId);
  const may = { giver, taker, either: giver || taker }[side];
  if (!may) return notYours;
  if (state === from) return null;
  return {
    code: "conflict",
    reason: `Somebody else was quicker: the transfer is ${state} now. Nothing was changed; load the page again.`,
  };
}

interface Written {
  readonly asked: StepTransfer;
  readonly row: Transfer;
  readonly facts: ShelfMove["facts"];
}

async function writeStep(tx: Transaction, actor: Actor, { asked, row, facts }: Written): Promise<Deeded> {
  const { from, to, back, side } = transferSteps[asked.step];
  const refusal = asked.step === "refuse" ? asked.reason : "";
  const note = asked.step === "receive" ? asked.bin : refusal;
  await tx.transfer.update({ where: { id: row.id }, data: { state: to, refusal, ...facts } });
  await tx.transferStep.create({ data: { transferId: row.id, state: to, back, by: actor.name, note } });
  return {
    ...{ deed: `transfer:${asked.step}`, entity: "Transfer", entityId: row.id },
    siteId: side === "taker" ? row.toSiteId : row.fromSiteId,
    before: { state: from },
    after: { state: to, ...(note === "" ? {} : { note }) },
  };
}

function moveShelf(
  tx: Transaction,
  asked: StepTransfer,
  row: Transfer,
): Promise<Result<ShelfMove, Refusal>> | Result<ShelfMove, Refusal> {
  switch (asked.step) {
    case "send":
      return takeFromShelf(tx, row);
    case "send-back":
      return putBack(tx, row);
    case "receive":
      return putOnShelf(tx, row, asked.bin);
    case "receive-back":
      return takeOffAgain(tx, row);
    default:
      return ok({ facts: {}, deeds: [] });
  }
}
