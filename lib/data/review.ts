import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { type Owner, readOwners, readReviewActions } from "@/lib/data/reviewActions";
import { readReviewBuys } from "@/lib/data/reviewBuys";
import { readReviewFigures, type SitePart } from "@/lib/data/reviewFigures";
import { atSites } from "@/lib/data/scope";
import { readSiteNames, type SiteName } from "@/lib/data/siteNames";
import type { IsoDate } from "@/lib/kernel/isoDate";
import {
  REVIEW_TOPICS,
  type ReviewBuy,
  type ReviewMark,
  type ReviewNotes,
  type ReviewRecord,
} from "@/lib/view/reviewRecord";
import { reviewWithoutAmounts } from "@/lib/view/reviewWithoutAmounts";

const MOST_LISTED = 60;
const UUID = /^[0-9a-f-]{36}$/;

/** The review of a site as it stands on a day: figures of now, the open record if there is one, and those before. */
export interface ReviewBoard extends ReviewRecord {
  readonly site: SiteName;
  readonly sites: readonly SiteName[];
  readonly dataVersion: number;
  /** What an action can be about, and who can own it. */
  readonly parts: readonly SitePart[];
  readonly lines: readonly { readonly id: string; readonly code: string }[];
  readonly owners: readonly Owner[];
  readonly open: ReviewMark | null;
  readonly past: readonly ReviewMark[];
  readonly mayReview: boolean;
  readonly mayAct: boolean;
  /** Whether amounts of the site are shown to the actor; where not, the board has none. */
  readonly showsAmounts: boolean;
}

/** A closed review, as it was shown. */
export interface ClosedReview {
  readonly mark: ReviewMark;
  readonly record: ReviewRecord;
  readonly showsAmounts: boolean;
}

export interface PurchaseList {
  readonly siteCode: string;
  readonly heldOn: IsoDate;
  readonly buys: readonly ReviewBuy[];
  /** Whether prices may be told to the actor. */
  readonly showsAmounts: boolean;
}

interface BoardQuestion {
  /** Null is the first site of the actor. */
  readonly siteCode: string | null;
  readonly asOf: IsoDate;
}

/** The review of one site; null where the actor sees no such site. */
export async function readReviewBoard(
  actor: Actor,
  { siteCode, asOf }: BoardQuestion,
): Promise<ReviewBoard | null> {
  const sites = await readSiteNames(actor);
  const site = siteCode === null ? sites[0] : sites.find(({ code }) => code === siteCode);
  if (!site) return null;
  const marks = await readMarks(actor, site.id);
  const open = marks.find(({ closedAt }) => closedAt === null) ?? null;
  const past = marks.filter(({ closedAt }) => closedAt !== null);
  const [now, lines, owners, actions, buys, notes] = await Promise.all([
    readReviewFigures(actor, { site, asOf }),
    database().line.findMany({
      where: { AND: [{ siteId: site.id }, atSites(actor, "read")] },
      select: { id: true, code: true },
      orderBy: { code: "asc" },
    }),
    readOwners(actor, site.id),
    readReviewActions(actor, { siteId: site.id, since: past[0]?.heldOn ?? null }),
    open ? readReviewBuys(actor, { reviewId: open.id, asOf }) : [],
    readReviewNotes(actor, open?.id ?? null),
  ]);
  const { figures, dataVersion, parts } = now;
  const showsAmounts = mayAt(actor.grants, "money:read", site.id);
  const board = {
    ...{ site, sites, open, past, lines, owners, actions, buys, notes },
    ...{ figures, dataVersion, parts, showsAmounts },
    mayReview: mayAt(actor.grants, "stock:write", site.id),
    mayAct: mayAt(actor.grants, "event:write", site.id),
  };
  return showsAmounts ? board : reviewWithoutAmounts(board);
}

/** A closed review of a site the actor may read, as it was shown; null when there is none. */
export async function readClosedReview(actor: Actor, id: string): Promise<ClosedReview | null> {
  if (!UUID.test(id)) return null;
  const row = await database().review.findFirst({
    where: { id, closedAt: { not: null }, ...atSites(actor, "read") },
    select: { ...markFields, figures: true, siteId: true },
  });
  if (!row) return null;
  const { figures, siteId, ...mark } = row;
  const record = figures as unknown as ReviewRecord;
  const showsAmounts = mayAt(actor.grants, "money:read", siteId);
  return { mark: markOf(mark), record: showsAmounts ? record : reviewWithoutAmounts(record), showsAmounts };
}

/** The purchase list of a review at a site the actor may read; null when there is none. */
export async function readPurchaseList(
  actor: Actor,
  { reviewId, asOf }: { readonly reviewId: string; readonly asOf: IsoDate },
): Promise<PurchaseList | null> {
  if (!UUID.test(reviewId)) return null;
  const row = await database().review.findFirst({
    where: { id: reviewId, ...atSites(actor, "read") },
    select: { heldOn: true, figures: true, siteId: true, site: { select: { code: true } } },
  });
  if (!row) return null;
  const frozen = row.figures as unknown as ReviewRecord | null;
  return {
    siteCode: row.site.code,
    heldOn: row.heldOn.toISOString().slice(0, 10),
    showsAmounts: mayAt(actor.grants, "money:read", row.siteId),
    buys: frozen?.buys ?? (await readReviewBuys(actor, { reviewId, asOf })),
  };
}

const markFields = { id: true, heldOn: true, openedBy: true, closedAt: true, closedBy: true } as const;

async function readMarks(actor: Actor, siteId: string): Promise<ReviewMark[]> {
  const rows = await database().review.findMany({
    where: { AND: [{ siteId }, atSites(actor, "read")] },
    orderBy: [{ heldOn: "desc" }, { closedAt: { sort: "desc", nulls: "first" } }],
    take: MOST_LISTED,
    select: markFields,
  });
  return rows.map(markOf);
}

interface FoundMark extends Omit<ReviewMark, "heldOn" | "closedAt"> {
  readonly heldOn: Date;
  readonly closedAt: Date | null;
}

function markOf({ heldOn, closedAt, ...mark }: FoundMark): ReviewMark {
  return {
    ...mark,
    heldOn: heldOn.toISOString().slice(0, 10),
    closedAt: closedAt?.toISOString() ?? null,
  };
}

/** What was written on each topic of a review; nothing yet where it is null or not seen. */
export async function readReviewNotes(actor: Actor, reviewId: string | null): Promise<ReviewNotes> {
  const rows =
    reviewId === null
      ? []
      : await database().reviewNote.findMany({
          where: { reviewId, review: atSites(actor, "read") },
          select: { topic: true, text: true, version: true },
        });
  const byTopic = new Map(rows.map(({ topic, ...note }) => [topic, note]));
  const none = { text: "", version: 0 };
  return Object.fromEntries(
    REVIEW_TOPICS.map(({ topic }) => [topic, byTopic.get(topic) ?? none]),
  ) as unknown as ReviewNotes;
}
