import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import { addMonths, type IsoDate } from "@/lib/kernel/isoDate";
import { COUNT_MONTHS, type OverdueRepair, type ReviewFigures, type ShelfLot } from "@/lib/view/review";
import type { Prisma } from "@/prisma/generated/client";

const MOST_UNCOUNTED = 10;

const lotFields = {
  ...{ id: true, partId: true, bin: true, state: true, quantity: true, countedOn: true, note: true },
  part: { select: { number: true } },
} satisfies Prisma.StockLotSelect;

/** Repairs overdue, lots on hold and counts overdue at the actor's sites on a day. Lots have no past. */
export async function readReviewShelf(
  actor: Actor,
  asOf: IsoDate,
): Promise<Pick<ReviewFigures, "repairs" | "holds" | "uncounted">> {
  const here = atSites(actor, "read");
  const stale: Prisma.StockLotWhereInput = {
    ...here,
    OR: [{ countedOn: null }, { countedOn: { lt: dateOf(addMonths(asOf, -COUNT_MONTHS)) } }],
  };
  const db = database();
  const [repairs, holds, first, lots, of] = await Promise.all([
    readOverdue(actor, asOf),
    db.stockLot.findMany({
      where: { ...here, state: "on_hold", NOT: { quantity: 0 } },
      select: lotFields,
      orderBy: [{ part: { number: "asc" } }, { bin: "asc" }, { id: "asc" }],
    }),
    db.stockLot.findMany({
      where: stale,
      select: lotFields,
      orderBy: [{ countedOn: { sort: "asc", nulls: "first" } }, { part: { number: "asc" } }, { id: "asc" }],
      take: MOST_UNCOUNTED,
    }),
    db.stockLot.count({ where: stale }),
    db.stockLot.count({ where: here }),
  ]);
  return { repairs, holds: holds.map(lotOf), uncounted: { lots, of, first: first.map(lotOf) } };
}

async function readOverdue(actor: Actor, asOf: IsoDate): Promise<OverdueRepair[]> {
  const day = dateOf(asOf);
  const rows = await database().repairOrder.findMany({
    where: {
      ...atSites(actor, "read"),
      sentOn: { lte: day },
      dueOn: { lt: day },
      OR: [{ returnedOn: null }, { returnedOn: { gt: day } }],
    },
    select: {
      ...{ reference: true, partId: true, serial: true, sentOn: true, dueOn: true },
      part: { select: { number: true } },
    },
    orderBy: [{ dueOn: "asc" }, { reference: "asc" }],
  });
  return rows.map(({ part, sentOn, dueOn, ...row }) => ({
    ...row,
    number: part.number,
    sentOn: dayOf(sentOn),
    dueOn: dayOf(dueOn ?? sentOn),
  }));
}

type FoundLot = Prisma.StockLotGetPayload<{ select: typeof lotFields }>;

function lotOf({ id: lotId, part, countedOn, ...lot }: FoundLot): ShelfLot {
  return { lotId, ...lot, number: part.number, countedOn: countedOn === null ? null : dayOf(countedOn) };
}

const dateOf = (day: IsoDate) => new Date(`${day}T00:00:00Z`);
const dayOf = (date: Date) => date.toISOString().slice(0, 10);
