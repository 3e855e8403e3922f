import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { readOwners } from "@/lib/data/reviewActions";
import { atSites, sites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddAction, ChangeAction, RemoveAction, SettleAction } from "@/lib/schema/review";
import type { ReviewAction } from "@/prisma/generated/client";

const noSite: Refusal = { code: "missing", reason: "There is no such site where you may add actions." };
const missing: Refusal = { code: "missing", reason: "There is no such action that you may change." };
const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else changed this action since you saw it; it now stands as they left it. Nothing of yours was written.",
};
const noOwner: Refusal = {
  code: "invalid",
  reason: "An action is owned by somebody who reads at its site. Nothing was changed.",
  fields: { ownerId: "Choose somebody of this site." },
};
const noSubject: Refusal = {
  code: "invalid",
  reason: "There is no such part, or no such line at this site. Nothing was changed.",
};

/** Which action was written, and its version, to take it back with. */
export interface ActionMark {
  readonly actionId: string;
  readonly version: number;
}

/** Adds something to be done at a site; it belongs to the review that is open there. */
export async function addReviewAction(
  actor: Actor,
  { siteId, ...wanted }: AddAction,
): Promise<Result<ActionMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const there = await tx.site.count({ where: { AND: [{ id: siteId }, sites(actor, "event:write")] } });
    if (there === 0) return err(noSite);
    const wrong = await refusedSubject(tx, actor, { siteId, ...wanted });
    if (wrong) return err(wrong);
    const open = await tx.review.findFirst({ where: { siteId, closedAt: null }, select: { id: true } });
    const { id, version } = await tx.reviewAction.create({
      data: {
        ...{ ...wanted, siteId, reviewId: open?.id ?? null },
        ...{ dueOn: dateOf(wanted.dueOn), raisedOn: dateOf(today) },
      },
    });
    record({
      ...{ deed: "review:action", entity: "ReviewAction", entityId: id, siteId },
      after: { ...wanted, raisedOn: today },
    });
    return ok({ actionId: id, version });
  });
}

/** Writes what is to be done, by whom and until when, if nobody else did meanwhile. */
export async function changeReviewAction(
  actor: Actor,
  { actionId, version, ...wanted }: ChangeAction,
): Promise<Result<ActionMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const stored = await findAction(tx, actor, actionId);
    if (!stored) return err(missing);
    const wrong = await refusedSubject(tx, actor, { siteId: stored.siteId, ...wanted });
    if (wrong) return err(wrong);
    const { count } = await tx.reviewAction.updateMany({
      where: { id: actionId, version },
      data: { ...wanted, dueOn: dateOf(wanted.dueOn), version: { increment: 1 } },
    });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "review:action", entity: "ReviewAction", entityId: actionId, siteId: stored.siteId },
      ...{ before: saidOf(stored), after: wanted },
    });
    return ok({ actionId, version: version + 1 });
  });
}

/** Marks an action done, drops it for a reason, or opens it again, if nobody else changed it meanwhile. */
export async function settleReviewAction(
  actor: Actor,
  { actionId, version, state, reason }: SettleAction,
): Promise<Result<ActionMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const stored = await findAction(tx, actor, actionId);
    if (!stored) return err(missing);
    const { count } = await tx.reviewAction.updateMany({
      where: { id: actionId, version },
      data: { state, reason, settledOn: state === "open" ? null : dateOf(today), version: { increment: 1 } },
    });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "review:settle", entity: "ReviewAction", entityId: actionId, siteId: stored.siteId },
      ...{ before: { state: stored.state, reason: stored.reason }, after: { state, reason } },
    });
    return ok({ actionId, version: version + 1 });
  });
}

/** Takes back an action that was just added; the audit keeps what it said. */
export async function removeReviewAction(
  actor: Actor,
  { actionId, version }: RemoveAction,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const stored = await findAction(tx, actor, actionId);
    if (!stored) return err(missing);
    const { count } = await tx.reviewAction.deleteMany({ where: { id: actionId, version } });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "review:unaction", entity: "ReviewAction", entityId: actionId, siteId: stored.siteId },
      before: saidOf(stored),
    });
    return ok(null);
  });
}

function findAction(tx: Transaction, actor: Actor, id: string) {
  return tx.reviewAction.findFirst({ where: { id, ...atSites(actor, "event:write") } });
}

type Subject = Pick<AddAction, "siteId" | "partId" | "lineId" | "ownerId">;

/** Why an action cannot be about this, or owned by this person; null when it can. */
async function refusedSubject(tx: Transaction, actor: Actor, subject: Subject): Promise<Refusal | null> {
  const { siteId, partId, lineId, ownerId } = subject;
  const owners = await readOwners(actor, siteId);
  if (!owners.some(({ id }) => id === ownerId)) return noOwner;
  const parts = partId === null ? 1 : await tx.part.count({ where: { id: partId } });
  const lines = lineId === null ? 1 : await tx.line.count({ where: { id: lineId, siteId } });
  return parts > 0 && lines > 0 ? null : noSubject;
}

function saidOf({ text, partId, lineId, ownerId, dueOn }: ReviewAction) {
  return { text, partId, lineId, ownerId, dueOn: dueOn.toISOString().slice(0, 10) };
}

const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);
