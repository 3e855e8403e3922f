import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Deeded, Transaction } from "@/lib/data/change";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { LotSide, LotStep, ShelfSteps } from "@/lib/schema/lotStep";
import { togetherInBin } from "@/lib/spares/togetherInBin";
import type { StockState } from "@/lib/spares/usableCount";
import type { StockLot } from "@/prisma/generated/client";

/** Where pieces lie: what one lot is told apart by. */
export interface LotPlace {
  readonly siteId: string;
  readonly partId: string;
  readonly bin: string;
  readonly revision: string;
  readonly state: StockState;
}

const dayOf = (date: Date | null): IsoDate | null => date?.toISOString().slice(0, 10) ?? null;
const dateOf = (day: IsoDate | null): Date | null => (day === null ? null : new Date(`${day}T00:00:00Z`));

/** A lot as a step keeps it. */
export function sideOf(lot: StockLot): LotSide {
  const { state, quantity, originUnknown, note } = lot;
  return {
    ...{ state, quantity, originUnknown, note },
    lastPoweredOn: dayOf(lot.lastPoweredOn),
    countedOn: dayOf(lot.countedOn),
    testedOn: dayOf(lot.testedOn),
  };
}

function columns({ lastPoweredOn, countedOn, testedOn, ...rest }: LotSide) {
  return {
    ...rest,
    lastPoweredOn: dateOf(lastPoweredOn),
    countedOn: dateOf(countedOn),
    testedOn: dateOf(testedOn),
  };
}

/** Writes what is wanted of a lot that is held by this transaction. */
export async function writeLot(
  tx: Transaction,
  lot: StockLot,
  wanted: Partial<LotSide>,
): Promise<{ readonly lot: StockLot; readonly step: LotStep }> {
  const before = sideOf(lot);
  const written = await tx.stockLot.update({
    where: { id: lot.id },
    data: columns({ ...before, ...wanted }),
  });
  return { lot: written, step: { lotId: lot.id, partId: lot.partId, before, after: sideOf(written) } };
}

/** Pieces that are put somewhere. */
export interface Put extends Pick<LotSide, "lastPoweredOn"> {
  readonly quantity: number;
  readonly originUnknown?: boolean;
  readonly testedOn?: IsoDate | null;
  readonly countedOn?: IsoDate | null;
  /** Kept with a lot that says nothing yet. */
  readonly note?: string | null;
}

/** Puts pieces into the lot of a place, which is made when there is none. */
export async function putPieces(tx: Transaction, place: LotPlace, put: Put): Promise<LotStep> {
  const { quantity, lastPoweredOn, originUnknown = false } = put;
  const there = await holdPlace(tx, place);
  if (!there) {
    const made = await tx.stockLot.create({
      data: {
        ...place,
        ...{ quantity, originUnknown, note: put.note ?? null, evidence: "measured" },
        lastPoweredOn: dateOf(lastPoweredOn),
        countedOn: dateOf(put.countedOn ?? null),
        testedOn: dateOf(put.testedOn ?? null),
      },
    });
    return { lotId: made.id, partId: made.partId, before: null, after: sideOf(made) };
  }
  const lying = { quantity: there.quantity, lastPoweredOn: dayOf(there.lastPoweredOn) };
  const mixed = originUnknown || (there.originUnknown && there.quantity !== 0);
  const { step } = await writeLot(tx, there, {
    ...togetherInBin(lying, { quantity, lastPoweredOn }),
    originUnknown: mixed,
    testedOn: there.quantity === 0 || mixed ? (put.testedOn ?? dayOf(there.testedOn)) : dayOf(there.testedOn),
    ...(put.countedOn ? { countedOn: put.countedOn } : {}),
    ...(there.note === null && put.note ? { note: put.note } : {}),
  });
  return step;
}

async function holdPlace(tx: Transaction, place: LotPlace): Promise<StockLot | null> {
  const found = await tx.stockLot.findUnique({
    where: { siteId_partId_bin_revision_state: place },
    select: { id: true },
  });
  return found ? holdLot(tx, found.id) : null;
}

/** A lot, held until the transaction ends; null when it is gone. */
export async function holdLot(tx: Transaction, id: string): Promise<StockLot | null> {
  await tx.$queryRaw`SELECT "id" FROM "StockLot" WHERE "id" = ${id}::uuid FOR UPDATE`;
  return tx.stockLot.findUnique({ where: { id } });
}

/** Puts lots back as they were before the steps, the last first, and ends the holds; refused once somebody built on it. */
export async function takeBackShelf(
  tx: Transaction,
  { lots, holds }: ShelfSteps,
): Promise<Result<null, Refusal>> {
  const ended = await tx.stockHold.deleteMany({ where: { id: { in: [...holds] }, releasedOn: null } });
  if (ended.count < holds.length) return err(letGo);
  for (const step of [...lots].reverse()) {
    const as = { id: step.lotId, ...columns(step.after) };
    const { count } =
      step.before === null
        ? await tx.stockLot.deleteMany({ where: as })
        : await tx.stockLot.updateMany({ where: as, data: columns(step.before) });
    if (count === 0) return err(await movedSince(tx, step.lotId));
  }
  return ok(null);
}

const letGo: Refusal = {
  code: "conflict",
  reason: "Pieces put on hold by it were let go since. Nothing was taken back.",
};

async function movedSince(tx: Transaction, lotId: string): Promise<Refusal> {
  const lot = await tx.stockLot.findUnique({
    where: { id: lotId },
    select: { bin: true, part: { select: { number: true } } },
  });
  const where = lot ? `Bin ${lot.bin} with ${lot.part.number}` : "A bin";
  return { code: "conflict", reason: `${where} was changed since. Nothing was taken back.` };
}

/** What the audit keeps of lots that were moved; their parts are the only figures touched. */
export function movedLots(deed: string, siteId: string, steps: readonly LotStep[]): Deeded[] {
  return steps.map(({ lotId, partId, before, after }) => ({
    ...{ deed, entity: "StockLot", entityId: lotId, siteId, after, stockOf: [partId] },
    ...(before === null ? {} : { before }),
  }));
}

/** Takes a number of pieces out of a lot that is held and has at least as many. */
export async function takePieces(tx: Transaction, lot: StockLot, pieces: number): Promise<LotStep> {
  if (lot.quantity === null || lot.quantity < pieces)
    throw new RangeError(`pieces must be at most the ${lot.quantity} of the lot, got ${pieces}`);
  return (await writeLot(tx, lot, { quantity: lot.quantity - pieces })).step;
}

/** The same of lots that were put back. */
export function movedLotsBack(deed: string, siteId: string, steps: readonly LotStep[]): Deeded[] {
  return steps.map(({ lotId, partId, before, after }) => ({
    ...{ deed, entity: "StockLot", entityId: lotId, siteId, before: after, stockOf: [partId] },
    ...(before === null ? {} : { after: before }),
  }));
}
