import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { holdReview } from "@/lib/data/group/holdReview";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddBuy, ChangeBuy, RemoveBuy } from "@/lib/schema/review";

const noReview: Refusal = {
  code: "missing",
  reason: "There is no open review where you may list purchases.",
};
const noPart: Refusal = { code: "missing", reason: "There is no such part. Nothing was changed." };
const listed: Refusal = {
  code: "conflict",
  reason: "This part is on the purchase list already: change its row there. Nothing was changed.",
};
const missing: Refusal = { code: "missing", reason: "There is no such row of an open purchase list." };
const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else changed this row since you saw it; it now stands as they left it. Nothing of yours was written.",
};

/** Which row was written, and its version, to take it back with. */
export interface BuyMark {
  readonly buyId: string;
  readonly version: number;
}

/** Puts a part on the purchase list of an open review. */
export async function addReviewBuy(
  actor: Actor,
  { reviewId, partId, quantity, reason }: AddBuy,
): Promise<Result<BuyMark, Refusal>> {
  return change(actor, async (tx, record) => {
    await holdReview(tx, reviewId);
    const review = await tx.review.findFirst({
      where: { id: reviewId, closedAt: null, ...atSites(actor, "stock:write") },
      select: { siteId: true },
    });
    if (!review) return err(noReview);
    if ((await tx.part.count({ where: { id: partId } })) === 0) return err(noPart);
    const { count } = await tx.reviewBuy.createMany({
      data: [{ reviewId, partId, quantity, reason }],
      skipDuplicates: true,
    });
    if (count === 0) return err(listed);
    const { id, version } = await tx.reviewBuy.findUniqueOrThrow({
      where: { reviewId_partId: { reviewId, partId } },
    });
    record({
      ...{ deed: "review:buy", entity: "ReviewBuy", entityId: id, siteId: review.siteId },
      after: { reviewId, partId, quantity, reason },
    });
    return ok({ buyId: id, version });
  });
}

/** Writes how many are bought and why, if nobody else did meanwhile. */
export async function changeReviewBuy(
  actor: Actor,
  { buyId, version, quantity, reason }: ChangeBuy,
): Promise<Result<BuyMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const stored = await findBuy(tx, actor, buyId);
    if (!stored) return err(missing);
    const { count } = await tx.reviewBuy.updateMany({
      where: { id: buyId, version },
      data: { quantity, reason, version: { increment: 1 } },
    });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "review:buy", entity: "ReviewBuy", entityId: buyId, siteId: stored.review.siteId },
      ...{ before: { quantity: stored.quantity, reason: stored.reason }, after: { quantity, reason } },
    });
    return ok({ buyId, version: version + 1 });
  });
}

/** Takes a part off the purchase list, if nobody else changed its row meanwhile. */
export async function removeReviewBuy(
  actor: Actor,
  { buyId, version }: RemoveBuy,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const stored = await findBuy(tx, actor, buyId);
    if (!stored) return err(missing);
    const { count } = await tx.reviewBuy.deleteMany({ where: { id: buyId, version } });
    if (count === 0) return err(conflict);
    const { partId, quantity, reason } = stored;
    record({
      ...{ deed: "review:unbuy", entity: "ReviewBuy", entityId: buyId, siteId: stored.review.siteId },
      before: { partId, quantity, reason },
    });
    return ok(null);
  });
}

/** A row of an open purchase list, its review held. */
async function findBuy(tx: Transaction, actor: Actor, id: string) {
  const row = await tx.reviewBuy.findUnique({ where: { id }, select: { reviewId: true } });
  if (!row) return null;
  await holdReview(tx, row.reviewId);
  return tx.reviewBuy.findFirst({
    where: { id, review: { closedAt: null, ...atSites(actor, "stock:write") } },
    include: { review: { select: { siteId: true } } },
  });
}
