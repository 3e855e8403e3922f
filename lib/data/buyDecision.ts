import "server-only";
import { createHash } from "node:crypto";
import { z } from "zod";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { mayAt, maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readBuySheet } from "@/lib/data/buySheet";
import { change, holdData, type Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import { canonicalJson } from "@/lib/risk/moved/canonicalJson";
import type { KeepDecision } from "@/lib/schema/buyDecision";
import { type DecisionSheet, decisionSheet } from "@/lib/view/buyDecision";
import { buyDocument } from "@/lib/view/buyDocument";
import { plainly } from "@/lib/words/reading";
import type { Prisma } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such family to decide on." };
const moved: Refusal = {
  code: "conflict",
  reason:
    "The figures changed since you opened the sheet. It shows the newest now: look at it, then keep the decision again.",
};
const overtaken: Refusal = {
  code: "conflict",
  reason:
    "Somebody else kept a decision since you opened the sheet; it stands above now. Yours was not kept: look, then keep it again to take its place.",
};
const notThere: Refusal = {
  code: "forbidden",
  reason: "You may not decide on stock at one of these sites. Nothing was kept.",
};

/** Decisions whose every site the actor may read. */
function visible(actor: Actor): Prisma.BuyDecisionWhereInput {
  const ids = siteIds(actor, "read");
  return ids ? { NOT: { siteIds: { isEmpty: true } }, siteIds: { hasSome: ids.in } } : {};
}

const isWithin = (actor: Actor, ids: readonly string[]) => ids.every((id) => mayAt(actor.grants, "read", id));

/** The decision on a family that stands, of those the actor may see. */
async function standing(tx: Transaction, actor: Actor, familyId: string) {
  const rows = await tx.buyDecision.findMany({
    where: { familyId, supersededById: null, ...visible(actor) },
    select: { id: true, siteIds: true },
    orderBy: { id: "desc" },
  });
  return rows.find((row) => isWithin(actor, row.siteIds)) ?? null;
}

/** Freezes a decision with the sheet it rests on; a former one stays on record and no longer stands. */
export async function keepBuyDecision(
  actor: Actor,
  wanted: KeepDecision,
): Promise<Result<{ decisionId: string }, Refusal>> {
  const { familyId, choice, quantities, orderBy, names, reason, supersedes } = wanted;
  const asOf = await readAsOf(actor, undefined);
  const read = await readBuySheet(actor, { familyId, asOf });
  if (!read) return err(missing);
  const document = plainly(() => buyDocument(read.basis, choice, read.lastBatch));
  if (document.basis.dataVersion !== wanted.dataVersion) return err(moved);
  if (quantities.some(({ quantity, siteId }) => quantity > 0 && !mayAt(actor.grants, "stock:write", siteId)))
    return err(notThere);
  const said = { orderBy, names, reason, keptBy: actor.name, keptOn: asOf, supersedes };
  const decided = plainly(() => decisionSheet(document, quantities, said));
  if (!decided) return err(moved);
  const sheet = canonicalJson(decided);
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const before = await standing(tx, actor, familyId);
    if ((before?.id ?? null) !== supersedes) return err(overtaken);
    const { id } = await tx.buyDecision.create({
      data: {
        ...{ familyId, noticeId: await openNotice(tx, familyId), sheet, sheetHash: hashOf(sheet) },
        ...{ decidedOn: new Date(`${asOf}T00:00:00Z`), decidedBy: actor.name },
        siteIds: Object.keys(read.basis.sites),
      },
      select: { id: true },
    });
    if (before) await tx.buyDecision.update({ where: { id: before.id }, data: { supersededById: id } });
    record({
      ...{ deed: "decision:keep", entity: "BuyDecision", entityId: id },
      after: { familyId, names, reason, quantity: decided.quantity, sheetHash: hashOf(sheet), supersedes },
    });
    return ok({ decisionId: id });
  });
}

const hashOf = (sheet: string) => createHash("sha256").update(sheet).digest("hex");

/** The newest notice on record that speaks of the family. */
async function openNotice(tx: Transaction, familyId: string): Promise<string | null> {
  const notice = await tx.notice.findFirst({
    where: { takenBackAt: null, parts: { some: { part: { familyId } } } },
    orderBy: [{ recordedOn: "desc" }, { id: "desc" }],
    select: { id: true },
  });
  return notice?.id ?? null;
}

/** A kept decision: its sheet as it was frozen, and whether it still stands. */
export interface KeptDecision {
  readonly id: string;
  readonly sheet: DecisionSheet;
  readonly sheetHash: string;
  /** Whether the text still has the hash it was kept with. */
  readonly intact: boolean;
  readonly noticeId: string | null;
  readonly supersededById: string | null;
}

/** One decision as it was kept; null when there is none the actor may see whole. */
export async function readBuyDecision(actor: Actor, decisionId: string): Promise<KeptDecision | null> {
  if (!z.uuid().safeParse(decisionId).success || !maySomewhere(actor.grants, "read")) return null;
  const row = await database().buyDecision.findFirst({ where: { id: decisionId, ...visible(actor) } });
  if (!row || !isWithin(actor, row.siteIds)) return null;
  const { id, sheet, sheetHash, noticeId, supersededById } = row;
  return {
    ...{ id, sheetHash, noticeId, supersededById, intact: hashOf(sheet) === sheetHash },
    sheet: JSON.parse(sheet) as DecisionSheet,
  };
}

/** A line of the list of a family's decisions. */
export interface ListedDecision {
  readonly id: string;
  readonly keptOn: string;
  readonly names: string;
  readonly quantity: number;
  readonly stands: boolean;
}

/** The decisions on a family that the actor may see whole, newest first. */
export async function readBuyDecisions(actor: Actor, familyId: string): Promise<ListedDecision[]> {
  if (!z.uuid().safeParse(familyId).success || !maySomewhere(actor.grants, "read")) return [];
  const rows = await database().buyDecision.findMany({
    where: { familyId, ...visible(actor) },
    orderBy: { id: "desc" },
  });
  return rows
    .filter((row) => isWithin(actor, row.siteIds))
    .map(({ id, sheet, supersededById }) => {
      const { keptOn, names, quantity } = JSON.parse(sheet) as DecisionSheet;
      return { id, keptOn, names, quantity, stands: supersededById === null };
    });
}
