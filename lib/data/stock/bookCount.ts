import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import { hasMoved } from "@/lib/data/stock/compareCount";
import { holdLot, putPieces, writeLot } from "@/lib/data/stock/moveLots";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { LotStep, ShelfSteps } from "@/lib/schema/lotStep";
import { stateAfterCount } from "@/lib/spares/countedLine";
import type { StockState } from "@/lib/spares/usableCount";
import type { CountLine, StockLot } from "@/prisma/generated/client";

interface Batch {
  readonly siteId: string;
  readonly lines: readonly CountLine[];
  readonly today: IsoDate;
  /** Who sets the holds. */
  readonly by: string;
}

/** A counted line of a known part, with its lot held. */
interface Booking {
  readonly line: CountLine;
  readonly partId: string;
  readonly found: number;
  readonly state: StockState;
  readonly lot: StockLot | null;
}

const dayOf = (date: Date | null): IsoDate | null => date?.toISOString().slice(0, 10) ?? null;

/**
 * Books a count: lots that keep their state get the pieces found, the other pieces are put where they belong.
 *
 * Refused when a lot no longer stands as it was counted, or when pieces would go into a lot the sheet knows nothing of.
 */
export async function bookCount(tx: Transaction, batch: Batch): Promise<Result<ShelfSteps, Refusal>> {
  const bookings = await holdLots(tx, batch.lines);
  const moved = bookings.filter(({ line, lot }) => hasMoved(line, lot));
  if (moved.length > 0) return err(countAgain(moved));
  const strange = await lotOffTheSheet(tx, batch, bookings);
  if (strange) return err(strange);
  const lots: LotStep[] = [];
  for (const booking of bookings) lots.push(...(await settleLot(tx, booking, batch.today)));
  const holds: string[] = [];
  for (const booking of bookings) {
    if (staysIn(booking) || booking.found === 0) continue;
    const step = await putAway(tx, batch, booking);
    lots.push(step);
    const hold = await holdOf(tx, batch, { booking, lotId: step.lotId });
    if (hold !== null) holds.push(hold);
  }
  return ok({ lots, holds });
}

/** Lots are held in the order of their ids, so that two batches never wait for each other. */
async function holdLots(tx: Transaction, lines: readonly CountLine[]): Promise<Booking[]> {
  const byId = new Map<string, StockLot | null>();
  for (const id of lines.flatMap(({ lotId }) => lotId ?? []).sort()) byId.set(id, await holdLot(tx, id));
  return lines.flatMap((line) => {
    const { partId, found, state, tested, originUnknown, holdReason } = line;
    if (partId === null || found === null || state === null) return [];
    const booked = stateAfterCount({ found, state, tested, originUnknown, holdReason });
    const lot = line.lotId === null ? null : (byId.get(line.lotId) ?? null);
    return [{ line, partId, found, state: booked, lot }];
  });
}

const staysIn = ({ lot, state }: Booking): boolean => lot?.state === state;

function countAgain(moved: readonly Booking[]): Refusal {
  const bins = [...new Set(moved.map(({ line }) => line.bin))].join(", ");
  return {
    code: "conflict",
    reason: `The shelf moved after it was counted: bin ${bins}. Count there again; the new book is taken when you write the line.`,
  };
}

/** A lot found pieces would go into though the sheet has no line for it: it would be counted twice or not at all. */
async function lotOffTheSheet(
  tx: Transaction,
  { siteId, lines }: Batch,
  bookings: readonly Booking[],
): Promise<Refusal | null> {
  const onSheet = lines.flatMap(({ lotId }) => lotId ?? []);
  const going = bookings.filter((booking) => !staysIn(booking) && booking.found > 0);
  const strange = await tx.stockLot.findFirst({
    where: {
      ...{ siteId, id: { notIn: onSheet }, quantity: { not: 0 } },
      OR: going.map(({ partId, state, line: { bin, revision } }) => ({ partId, state, bin, revision })),
    },
    select: { bin: true, part: { select: { number: true } } },
  });
  if (!strange) return null;
  return {
    code: "impossible",
    reason: `Bin ${strange.bin} has a record of ${strange.part.number} that is not on this sheet. Change it on the part's page, or count that bin too.`,
  };
}

/** The lot itself: what was found when the pieces stay in it, else none. */
async function settleLot(tx: Transaction, booking: Booking, today: IsoDate): Promise<LotStep[]> {
  const { line, lot, found } = booking;
  if (lot === null) return [];
  const stays = staysIn(booking);
  const { step } = await writeLot(tx, lot, {
    ...{ quantity: stays ? found : 0, countedOn: today },
    ...(stays ? saidOf(line, lot, today) : {}),
  });
  return [step];
}

/** What whoever had the pieces in hand said of them; what was left empty stays as it was. */
function saidOf(line: CountLine, lot: StockLot, today: IsoDate) {
  return {
    lastPoweredOn: dayOf(line.lastPoweredOn ?? lot.lastPoweredOn),
    originUnknown: line.originUnknown || lot.originUnknown,
    testedOn: line.tested === true ? today : dayOf(lot.testedOn),
    note: line.note === "" ? lot.note : line.note,
  };
}

function putAway(tx: Transaction, { siteId, today }: Batch, { line, partId, found, state, lot }: Booking) {
  const { bin, revision } = line;
  return putPieces(
    tx,
    { siteId, partId, bin, revision, state },
    {
      ...{ quantity: found, countedOn: today, originUnknown: line.originUnknown },
      lastPoweredOn: dayOf(line.lastPoweredOn ?? lot?.lastPoweredOn ?? null),
      testedOn: line.tested === true ? today : dayOf(lot?.testedOn ?? null),
      note: line.note === "" ? null : line.note,
    },
  );
}

async function holdOf(
  tx: Transaction,
  { by, today }: Batch,
  { booking, lotId }: { readonly booking: Booking; readonly lotId: string },
): Promise<string | null> {
  const { line, found } = booking;
  if (line.holdReason === "") return null;
  const heldOn = new Date(`${today}T00:00:00Z`);
  const hold = await tx.stockHold.create({
    data: { lotId, pieces: found, reason: line.holdReason, heldOn, heldBy: line.countedBy || by },
  });
  return hold.id;
}
