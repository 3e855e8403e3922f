import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, holdData, type Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { freezeReview } from "@/lib/data/group/freezeReview";
import { holdReview } from "@/lib/data/group/holdReview";
import { readReviewNotes } from "@/lib/data/review";
import { readReviewActions } from "@/lib/data/reviewActions";
import { readReviewBuys } from "@/lib/data/reviewBuys";
import { readReviewFigures } from "@/lib/data/reviewFigures";
import { atSites, sites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { CloseReview, DropReview, OpenReview, SetReviewNote } from "@/lib/schema/review";
import { plainly } from "@/lib/words/reading";

const noSite: Refusal = { code: "missing", reason: "There is no such site where you may hold a review." };
const isOpen: Refusal = {
  code: "conflict",
  reason: "Somebody else opened this site's review already; the page now shows theirs.",
};
const missing: Refusal = { code: "missing", reason: "There is no such open review that you may change." };
const written: Refusal = {
  code: "impossible",
  reason: "Something is written in this review already, so it stays. Close it when the meeting ends.",
};
const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else wrote on this topic meanwhile. What you typed is kept on this device: choose which is to stand.",
};
const moved: Refusal = {
  code: "conflict",
  reason:
    "The data changed since this page was shown, so the figures are not those you talked about. They are read again now: look once more, then close.",
};

/** Opens the review of a site; one of a site is open at most. */
export async function openReview(
  actor: Actor,
  { siteId }: OpenReview,
): Promise<Result<{ reviewId: string }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const there = await tx.site.count({ where: { AND: [{ id: siteId }, sites(actor, "stock:write")] } });
    if (there === 0) return err(noSite);
    const [made] = await tx.review.createManyAndReturn({
      data: [{ siteId, heldOn: new Date(`${today}T00:00:00Z`), openedBy: actor.name }],
      skipDuplicates: true,
      select: { id: true },
    });
    if (!made) return err(isOpen);
    record({ deed: "review:open", entity: "Review", entityId: made.id, siteId, after: { heldOn: today } });
    return ok({ reviewId: made.id });
  });
}

/** Takes back the opening of a review in which nothing is written yet. */
export async function dropReview(actor: Actor, { reviewId }: DropReview): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const review = await findOpen(tx, actor, reviewId);
    if (!review) return err(missing);
    const { count } = await tx.review.deleteMany({
      where: { id: reviewId, notes: { none: {} }, buys: { none: {} }, raised: { none: {} } },
    });
    if (count === 0) return err(written);
    record({ deed: "review:drop", entity: "Review", entityId: reviewId, siteId: review.siteId });
    return ok(null);
  });
}

/** Writes what was said on a topic, if nobody else did since the person saw it. */
export async function setReviewNote(
  actor: Actor,
  { reviewId, topic, version, text }: SetReviewNote,
): Promise<Result<{ version: number }, Refusal>> {
  return change(actor, async (tx, record) => {
    const review = await findOpen(tx, actor, reviewId);
    if (!review) return err(missing);
    const at = { reviewId, topic };
    const before = await tx.reviewNote.findUnique({ where: { reviewId_topic: at } });
    if ((before?.version ?? 0) !== version) return err(conflict);
    const after = await tx.reviewNote.upsert({
      where: { reviewId_topic: at },
      create: { ...at, text },
      update: { text, version: { increment: 1 } },
    });
    record({
      ...{ deed: "review:note", entity: "Review", entityId: reviewId, siteId: review.siteId },
      ...{ before: { topic, text: before?.text ?? "" }, after: { topic, text } },
    });
    return ok({ version: after.version });
  });
}

/**
 * Closes a review: all that is shown is kept with its day, and what the evaluation read, for the next one to compare
 * with. Refused when the data moved on since the page that the meeting looked at was shown.
 */
export async function closeReview(
  actor: Actor,
  { reviewId, dataVersion }: CloseReview,
): Promise<Result<{ reviewId: string }, Refusal>> {
  const asOf = await readAsOf(actor, undefined);
  const found = await database().review.findFirst({
    where: { id: reviewId, closedAt: null, ...atSites(actor, "stock:write") },
    select: { site: { select: { id: true, code: true, name: true } } },
  });
  if (!found) return err(missing);
  const now = await plainly(() => readReviewFigures(actor, { site: found.site, asOf }));
  if (now.dataVersion !== dataVersion) return err(moved);
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const review = await findOpen(tx, actor, reviewId);
    if (!review) return err(missing);
    const { version } = await tx.dataVersion.findUniqueOrThrow({ where: { id: 1 } });
    if (Number(version) !== dataVersion) return err(moved);
    const [notes, buys, actions] = await Promise.all([
      readReviewNotes(actor, reviewId),
      readReviewBuys(actor, { reviewId, asOf }),
      readReviewActions(actor, { siteId: review.siteId, since: await lastDay(tx, review.siteId) }),
    ]);
    const frozen = { figures: now.figures, notes, actions, buys };
    await freezeReview(tx, { reviewId, asOf, by: actor.name, at: new Date() }, frozen);
    record({
      ...{ deed: "review:close", entity: "Review", entityId: reviewId, siteId: review.siteId },
      after: { heldOn: asOf, dataVersion },
    });
    return ok({ reviewId });
  });
}

/** The open review, held. */
async function findOpen(tx: Transaction, actor: Actor, id: string) {
  await holdReview(tx, id);
  return tx.review.findFirst({
    where: { id, closedAt: null, ...atSites(actor, "stock:write") },
    select: { siteId: true },
  });
}

async function lastDay(tx: Transaction, siteId: string): Promise<string | null> {
  const last = await tx.review.findFirst({
    where: { siteId, closedAt: { not: null } },
    orderBy: [{ heldOn: "desc" }, { closedAt: "desc" }],
    select: { heldOn: true },
  });
  return last?.heldOn.toISOString().slice(0, 10) ?? null;
}
