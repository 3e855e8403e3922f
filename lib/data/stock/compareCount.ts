import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ComparedLine, CountBook } from "@/lib/view/count";
import type { CountLine, StockLot } from "@/prisma/generated/client";

const dayOf = (date: Date | null): IsoDate | null => date?.toISOString().slice(0, 10) ?? null;

/** The order of a sheet: along the bins. */
export const alongTheBins = [
  { bin: "asc" },
  { part: { number: "asc" } },
  { revision: "asc" },
  { id: "asc" },
] as const;

/** What the books said of a line; null for a find. */
export function bookOf({ bookState, bookQuantity, bookPoweredOn }: CountLine): CountBook | null {
  if (bookState === null) return null;
  return { state: bookState, quantity: bookQuantity, lastPoweredOn: dayOf(bookPoweredOn) };
}

/** The lines of a count beside the book and the price of each part in EUR. */
export async function compareCount(tx: Transaction, countId: string): Promise<ComparedLine[]> {
  const lines = await tx.countLine.findMany({
    where: { countId },
    include: { part: true, lot: true, count: { select: { postedOn: true } } },
    orderBy: [...alongTheBins],
  });
  const rates = await tx.currencyRate.findMany({ select: { currency: true, perEuro: true } });
  const perEuro = new Map(rates.map(({ currency, perEuro: rate }) => [currency, rate.toNumber()]));
  return lines.map(({ part, lot, count, ...line }) => {
    const { id, bin, revision, partId, plate, found, state, tested, originUnknown } = line;
    const rate = perEuro.get(part?.priceCurrency ?? "");
    const price = part?.price?.toNumber() ?? null;
    return {
      ...{ id, bin, revision, partId, plate, found, state, tested, originUnknown },
      ...{ holdReason: line.holdReason, note: line.note, countedBy: line.countedBy },
      part: part?.number ?? null,
      isFind: line.bookState === null,
      book: bookOf(line),
      price: price === null || rate === undefined ? null : price / rate,
      pricedOn: dayOf(part?.pricedOn ?? null),
      moved: count.postedOn === null && hasMoved(line, lot),
    };
  });
}

/** Whether the lot no longer stands as it did when the line was last written. */
export function hasMoved(line: CountLine, lot: StockLot | null): boolean {
  if (line.bookState === null) return false;
  return (
    lot === null ||
    lot.state !== line.bookState ||
    lot.quantity !== line.bookQuantity ||
    dayOf(lot.lastPoweredOn) !== dayOf(line.bookPoweredOn)
  );
}
