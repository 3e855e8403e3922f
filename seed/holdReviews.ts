import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { freezeReview } from "@/lib/data/group/freezeReview";
import { readReviewNotes } from "@/lib/data/review";
import { readReviewActions } from "@/lib/data/reviewActions";
import { readReviewBuys } from "@/lib/data/reviewBuys";
import { readReviewFigures } from "@/lib/data/reviewFigures";
import type { SiteName } from "@/lib/data/siteNames";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { type HeldReview, REVIEW_HOST } from "@/seed/scenarios/showcase/heldReviews";
import { seedId } from "@/seed/seedId";

/** Hour at which a review of the demonstration company ends. */
const ENDS_AT = "T09:00:00.000Z";

const dateOf = (day: IsoDate) => new Date(`${day}T00:00:00Z`);

/**
 * Holds reviews in a database that was just filled, each with its figures as computed for its day.
 *
 * Stock has no past, so the shelf of each is the one the demonstration stands with.
 */
export async function holdReviews(reviews: readonly HeldReview[]): Promise<number> {
  const host = await findHost();
  let last: IsoDate | null = null;
  for (const review of reviews) {
    await hold(host, review, last);
    last = review.heldOn;
  }
  await database().$disconnect();
  return reviews.length;
}

async function findHost(): Promise<Actor> {
  const { id, ...user } = await database().user.findUniqueOrThrow({
    where: { email: REVIEW_HOST },
    select: { id: true, name: true, email: true, grants: { select: { role: true, siteId: true } } },
  });
  return { userId: id, ...user };
}

async function hold(host: Actor, told: HeldReview, last: IsoDate | null): Promise<void> {
  const db = database();
  const { heldOn: asOf, siteCode } = told;
  const site = await db.site.findUniqueOrThrow({
    where: { code: siteCode },
    select: { id: true, code: true, name: true },
  });
  const reviewId = await write(host, site, told);
  const { figures } = await readReviewFigures(host, { site, asOf });
  const record = {
    figures,
    notes: await readReviewNotes(host, reviewId),
    actions: await readReviewActions(host, { siteId: site.id, since: last }),
    buys: await readReviewBuys(host, { reviewId, asOf }),
  };
  const closing = { reviewId, asOf, by: host.name, at: new Date(`${asOf}${ENDS_AT}`) };
  await db.$transaction((tx) => freezeReview(tx, closing, record), { timeout: 60_000 });
}

/** The review as it was opened, with what was said and decided in it. */
async function write(host: Actor, site: SiteName, told: HeldReview): Promise<string> {
  const { heldOn, notes, settled, actions, buys } = told;
  const key = `${site.code}/${heldOn}`;
  const reviewId = seedId("Review", key);
  await database().$transaction(async (tx) => {
    await tx.review.create({
      data: { id: reviewId, siteId: site.id, heldOn: dateOf(heldOn), openedBy: host.name },
    });
    await tx.reviewNote.createMany({
      data: Object.entries(notes).map(([topic, text]) => ({ reviewId, topic, text })),
    });
    for (const { action, on, dropped } of settled)
      await tx.reviewAction.updateMany({
        where: { siteId: site.id, text: action },
        data: { state: dropped === null ? "done" : "dropped", settledOn: dateOf(on), reason: dropped },
      });
    const parts = await partIds(tx, [...actions, ...buys]);
    await tx.reviewAction.createMany({
      data: actions.map(({ text, part, owner, dueOn }) => ({
        ...{ id: seedId("ReviewAction", `${key}/${text}`), siteId: site.id, reviewId, text },
        ...{ partId: part === null ? null : (parts.get(part) ?? null), ownerId: seedId("User", owner) },
        ...{ raisedOn: dateOf(heldOn), dueOn: dateOf(dueOn) },
      })),
    });
    await tx.reviewBuy.createMany({
      data: buys.map(({ part, quantity, reason }) => ({
        ...{ id: seedId("ReviewBuy", `${key}/${part}`), reviewId, quantity, reason },
        partId: parts.get(part) ?? "",
      })),
    });
  });
  return reviewId;
}

async function partIds(
  tx: Transaction,
  told: readonly { readonly part: string | null }[],
): Promise<ReadonlyMap<string, string>> {
  const numbers = told.flatMap(({ part }) => part ?? []);
  const rows = await tx.part.findMany({
    where: { number: { in: numbers } },
    select: { id: true, number: true },
  });
  return new Map(rows.map(({ id, number }) => [number, id]));
}
