import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { holdSeenLot } from "@/lib/data/stock/holdSeenLot";
import { movedLots, putPieces, takePieces } from "@/lib/data/stock/moveLots";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { LotStep } from "@/lib/schema/lotStep";
import type { HoldPieces, ReleasePieces } from "@/lib/schema/storageCare";
import type { StockState } from "@/lib/spares/usableCount";
import type { StockLot } from "@/prisma/generated/client";

const isHeld: Refusal = { code: "impossible", reason: "These pieces are on hold already." };
const notHeld: Refusal = { code: "impossible", reason: "These pieces are not on hold." };
const untested: Refusal = {
  code: "impossible",
  reason: "Nobody knows where these pieces come from. They are let go as unproven until a test is recorded.",
  fields: { releaseAs: "Of unknown origin and not tested." },
};

const dateOf = (day: IsoDate) => new Date(`${day}T00:00:00Z`);

/** What moved: the lot the pieces now lie in, so that the move can be made back. */
interface Moved {
  readonly lotId: string;
}

/** Puts pieces on hold, with the reason and the name of who did it. */
export async function putOnHold(actor: Actor, asked: HoldPieces): Promise<Result<Moved, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdSeenLot(tx, actor, asked);
    if (!held.ok) return held;
    const lot = held.value;
    if (lot.state === "on_hold") return err(isHeld);
    const { pieces, reason } = asked;
    if (pieces > lot.quantity) return err(tooMany(lot.quantity));
    const steps = await movePieces(tx, lot, { pieces, state: "on_hold" });
    const { lotId } = steps[1];
    const hold = await tx.stockHold.create({
      data: { lotId, pieces, reason, heldOn: dateOf(today), heldBy: actor.name },
    });
    record({
      ...{ deed: "hold:set", entity: "StockHold", entityId: hold.id, siteId: lot.siteId },
      after: { pieces, reason, heldBy: actor.name },
    });
    for (const deed of movedLots("stock:hold", lot.siteId, steps)) record(deed);
    return ok({ lotId });
  });
}

function tooMany(pieces: number): Refusal {
  return {
    code: "invalid",
    reason: "More than lie there. Nothing was changed.",
    fields: { pieces: `The lot holds ${pieces}.` },
  };
}

interface Move {
  readonly pieces: number;
  readonly state: StockState;
}

async function movePieces(
  tx: Transaction,
  lot: StockLot & { readonly quantity: number },
  { pieces, state }: Move,
): Promise<readonly [LotStep, LotStep]> {
  const { siteId, partId, bin, revision, originUnknown } = lot;
  const dayOf = (date: Date | null) => date?.toISOString().slice(0, 10) ?? null;
  return [
    await takePieces(tx, lot, pieces),
    await putPieces(
      tx,
      { siteId, partId, bin, revision, state },
      {
        ...{ quantity: pieces, originUnknown, lastPoweredOn: dayOf(lot.lastPoweredOn) },
        testedOn: dayOf(lot.testedOn),
      },
    ),
  ];
}

/** Lets pieces on hold go as what they are now known to be; the oldest holds of the lot end first. */
export async function releaseHold(actor: Actor, asked: ReleasePieces): Promise<Result<Moved, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdSeenLot(tx, actor, asked);
    if (!held.ok) return held;
    const lot = held.value;
    const refused = refusalOf(lot, asked);
    if (refused) return err(refused);
    const { pieces, releaseAs, reason } = asked;
    const steps = await movePieces(tx, lot, { pieces, state: releaseAs });
    const end = { releasedOn: dateOf(today), releasedBy: actor.name, releasedAs: releaseAs };
    await endHolds(tx, lot.id, { pieces, end: { ...end, releaseNote: reason } });
    record({
      ...{ deed: "hold:release", entity: "StockHold", entityId: lot.id, siteId: lot.siteId },
      after: { pieces, releaseAs, reason, releasedBy: actor.name },
    });
    for (const deed of movedLots("stock:release", lot.siteId, steps)) record(deed);
    return ok({ lotId: steps[1].lotId });
  });
}

function refusalOf(
  { state, quantity, originUnknown, testedOn }: StockLot & { readonly quantity: number },
  { pieces, releaseAs }: ReleasePieces,
): Refusal | null {
  if (state !== "on_hold") return notHeld;
  if (pieces > quantity) return tooMany(quantity);
  return releaseAs === "usable" && originUnknown && testedOn === null ? untested : null;
}

interface Ending {
  readonly pieces: number;
  readonly end: {
    readonly releasedOn: Date;
    readonly releasedBy: string;
    readonly releasedAs: StockState;
    readonly releaseNote: string;
  };
}

/** Ends holds of a lot until so many pieces are let go; one that is let go in part is split. */
async function endHolds(tx: Transaction, lotId: string, { pieces, end }: Ending): Promise<void> {
  let left = pieces;
  const open = await tx.stockHold.findMany({
    where: { lotId, releasedOn: null },
    orderBy: [{ heldOn: "asc" }, { id: "asc" }],
  });
  for (const { id, ...hold } of open) {
    if (left === 0) return;
    const going = Math.min(left, hold.pieces);
    left -= going;
    await tx.stockHold.update({ where: { id }, data: { ...end, pieces: going } });
    if (going < hold.pieces) await tx.stockHold.create({ data: { ...hold, pieces: hold.pieces - going } });
  }
}
