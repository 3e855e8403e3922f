import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites, siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { byDue, type ReviewAction } from "@/lib/view/reviewRecord";
import type { Prisma } from "@/prisma/generated/client";

const fields = {
  ...{ id: true, text: true, raisedOn: true, dueOn: true, state: true, settledOn: true, reason: true },
  version: true,
  part: { select: { id: true, number: true } },
  line: { select: { id: true, code: true } },
  owner: { select: { id: true, name: true } },
} satisfies Prisma.ReviewActionSelect;

/** Somebody who can own an action. */
export interface Owner {
  readonly id: string;
  readonly name: string;
}

/** Open actions of a site, and those settled since a day (all of them without one), by how pressing they are. */
export async function readReviewActions(
  actor: Actor,
  { siteId, since }: { readonly siteId: string; readonly since: IsoDate | null },
): Promise<ReviewAction[]> {
  const settled = { settledOn: since === null ? { not: null } : { gte: new Date(`${since}T00:00:00Z`) } };
  const rows = await database().reviewAction.findMany({
    where: { AND: [{ siteId }, atSites(actor, "read"), { OR: [{ state: "open" }, settled] }] },
    select: fields,
  });
  return rows.map(actionOf).sort(byDue);
}

/** The actor's own open actions due before a day, at one site. */
export async function readMyLateActions(
  actor: Actor,
  { siteId, asOf }: { readonly siteId: string; readonly asOf: IsoDate },
): Promise<ReviewAction[]> {
  const rows = await database().reviewAction.findMany({
    where: {
      AND: [{ siteId }, atSites(actor, "read")],
      ...{ ownerId: actor.userId, state: "open", dueOn: { lt: new Date(`${asOf}T00:00:00Z`) } },
    },
    select: fields,
  });
  return rows.map(actionOf).sort(byDue);
}

interface LateAsked {
  readonly siteIds: readonly string[];
  readonly asOf: IsoDate;
}

/** Everybody's open actions due before a day at those of the sites the actor may read, the longest due first. */
export async function readLateActions(
  actor: Actor,
  { siteIds: asked, asOf }: LateAsked,
): Promise<(ReviewAction & { readonly siteCode: string })[]> {
  const rows = await database().reviewAction.findMany({
    where: {
      AND: [{ siteId: { in: [...asked] } }, atSites(actor, "read")],
      ...{ state: "open", dueOn: { lt: new Date(`${asOf}T00:00:00Z`) } },
    },
    select: { ...fields, site: { select: { code: true } } },
  });
  return rows.map(({ site, ...row }) => ({ ...actionOf(row), siteCode: site.code })).sort(byDue);
}

/** People who read at a site of the actor, and so can own an action there, by name. */
export async function readOwners(actor: Actor, siteId: string): Promise<Owner[]> {
  const seen = siteIds(actor, "read")?.in;
  if (seen && !seen.includes(siteId)) return [];
  return database().user.findMany({
    where: {
      NOT: { banned: true },
      grants: { some: { role: { not: "contractor" }, OR: [{ siteId: null }, { siteId }] } },
    },
    select: { id: true, name: true },
    orderBy: [{ name: "asc" }, { id: "asc" }],
  });
}

function actionOf(row: Prisma.ReviewActionGetPayload<{ select: typeof fields }>): ReviewAction {
  const { raisedOn, dueOn, settledOn, ...rest } = row;
  const dayOf = (date: Date) => date.toISOString().slice(0, 10);
  return {
    ...rest,
    raisedOn: dayOf(raisedOn),
    dueOn: dayOf(dueOn),
    settledOn: settledOn === null ? null : dayOf(settledOn),
  };
}
