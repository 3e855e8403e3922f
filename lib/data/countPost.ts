import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { bookCount } from "@/lib/data/stock/bookCount";
import { alongTheBins, compareCount } from "@/lib/data/stock/compareCount";
import { movedLots, movedLotsBack, takeBackShelf } from "@/lib/data/stock/moveLots";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { OneCount, SettleCount } from "@/lib/schema/count";
import { shelfSteps } from "@/lib/schema/lotStep";
import { varianceSheet } from "@/lib/view/count";
import { Prisma } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such count that you may post." };
const changed: Refusal = {
  code: "conflict",
  reason: "Lines were written since you opened this page. Load it again and look at them first.",
};
const own: Refusal = {
  code: "impossible",
  reason: "You counted on this sheet. The differences are approved by somebody who did not.",
};
const unapproved: Refusal = {
  code: "impossible",
  reason:
    "The differences are worth more than the limit, or cannot be valued: a second person approves first.",
};
const over: Refusal = { code: "conflict", reason: "The count is posted already." };

const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);

/** Says for a second person that the differences are right; any later line takes it away again. */
export async function approveStockCount(actor: Actor, asked: SettleCount): Promise<Result<null, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdAsSeen(tx, actor, asked);
    if (!held.ok) return held;
    const { id, siteId, lines } = held.value;
    if (lines.some(({ countedById }) => countedById === actor.userId)) return err(own);
    const sign = { approvedOn: dateOf(today), approvedBy: actor.name };
    await tx.stockCount.update({ where: { id }, data: sign });
    record({
      ...{ deed: "count:approve", entity: "StockCount", entityId: id, siteId },
      after: { approvedBy: actor.name, approvedOn: today },
    });
    return ok(null);
  });
}

/** Books what was counted as one batch, if nothing stands in the way. */
export async function postStockCount(actor: Actor, asked: SettleCount): Promise<Result<null, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdAsSeen(tx, actor, asked);
    if (!held.ok) return held;
    const { id, siteId, lines, approvedBy, limitEuro } = held.value;
    const { needsSecond, notCounted } = varianceSheet(await compareCount(tx, id), limitEuro.toNumber());
    if (notCounted > 0) return err(unfinished(notCounted));
    if (needsSecond && approvedBy === null) return err(unapproved);
    const booked = await bookCount(tx, { siteId, lines, today, by: actor.name });
    if (!booked.ok) return booked;
    const steps = booked.value;
    await tx.stockCount.update({
      where: { id },
      data: { postedOn: dateOf(today), postedBy: actor.name, steps },
    });
    record({
      ...{ deed: "count:post", entity: "StockCount", entityId: id, siteId },
      after: { lots: steps.lots.length, approvedBy },
    });
    for (const deed of movedLots("stock:count", siteId, steps.lots)) record(deed);
    return ok(null);
  });
}

function unfinished(lines: number): Refusal {
  return {
    code: "impossible",
    reason: `${lines === 1 ? "1 line is" : `${lines} lines are`} not counted. Write 0 where nothing is there.`,
  };
}

/** Puts every lot back as it was before the count was posted; the sheet is open again. */
export async function takeBackStockCount(
  actor: Actor,
  { countId }: OneCount,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    await tx.$queryRaw`SELECT "id" FROM "StockCount" WHERE "id" = ${countId}::uuid FOR UPDATE`;
    const count = await tx.stockCount.findFirst({
      where: { id: countId, postedOn: { not: null }, ...atSites(actor, "stock:write") },
    });
    if (!count) return err(missing);
    const { siteId, postedBy } = count;
    const steps = shelfSteps.parse(count.steps);
    const back = await takeBackShelf(tx, steps);
    if (!back.ok) return back;
    await tx.stockCount.update({
      where: { id: countId },
      data: { postedOn: null, postedBy: null, steps: Prisma.DbNull, approvedOn: null, approvedBy: null },
    });
    record({
      ...{ deed: "count:undo", entity: "StockCount", entityId: countId, siteId },
      before: { postedBy, lots: steps.lots.length },
    });
    for (const deed of movedLotsBack("stock:count-undo", siteId, steps.lots)) record(deed);
    return ok(null);
  });
}

/** An open count with its lines, held; refused when lines were written since the person saw them. */
async function holdAsSeen(tx: Transaction, actor: Actor, { countId, seen }: SettleCount) {
  await tx.$queryRaw`SELECT "id" FROM "StockCount" WHERE "id" = ${countId}::uuid FOR UPDATE`;
  const count = await tx.stockCount.findFirst({
    where: { id: countId, ...atSites(actor, "stock:write") },
    include: { lines: { include: { lot: true }, orderBy: [...alongTheBins] } },
  });
  if (!count) return err(missing);
  if (count.postedOn !== null) return err(over);
  return count.lines.reduce((sum, { version }) => sum + version, 0) === seen ? ok(count) : err(changed);
}
