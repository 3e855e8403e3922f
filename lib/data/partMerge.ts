import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { change } from "@/lib/data/change";
import { tryOut } from "@/lib/data/group/tryOut";
import { merge } from "@/lib/data/identity/merge";
import type { MergeSteps } from "@/lib/data/identity/mergeSteps";
import { unmerge } from "@/lib/data/identity/unmerge";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { MergeTwo, UnmergeOne } from "@/lib/schema/partIdentity";
import type { FigureEffect } from "@/lib/view/figureEffect";
import { type MergeCounts, mergeCounts, seenMark } from "@/lib/view/partMerge";
import type { Part, Prisma } from "@/prisma/generated/client";

const everySite: Refusal = {
  code: "forbidden",
  reason:
    "A merge moves records of every site, and your role covers some sites only. Ask somebody with a role for all sites.",
};
const moved: Refusal = {
  code: "conflict",
  reason:
    "The records of the two parts changed since you looked. Nothing was merged; look at the preview again.",
};
const gone: Refusal = {
  code: "missing",
  reason: "There is no such merge to take back. It may have been taken back meanwhile.",
};

/** What a merge would move and how the figures would change; nothing is changed. */
export interface MergePreview {
  readonly kept: Pick<Part, "id" | "maker" | "number" | "description">;
  readonly other: Pick<Part, "id" | "maker" | "number" | "description">;
  readonly counts: MergeCounts;
  readonly seen: string;
  readonly effect: FigureEffect;
}

type Pair = Pick<MergeTwo, "keptId" | "otherId">;

/** Shows what making two parts one would move, and how losses and places of the actor's lines would change. */
export async function previewMerge(actor: Actor, pair: Pair): Promise<Result<MergePreview, Refusal>> {
  if (scopeOf(actor.grants, "register:import") !== "all") return err(everySite);
  const today = await readAsOf(actor, undefined);
  const tried = await tryOut(actor, { asOf: today }, async (tx) => {
    const number = await tx.part.findUnique({ where: { id: pair.otherId }, select: { number: true } });
    return merge(tx, { ...pair, alias: aliasOf(actor, today, { ...pair, number: number?.number ?? "" }) });
  });
  if (!tried.ok) return tried;
  const { told, effect } = tried.value;
  const counts = mergeCounts(told.steps);
  return ok({ kept: nameOf(told.kept), other: nameOf(told.other), counts, seen: seenMark(counts), effect });
}

const nameOf = ({ id, maker, number, description }: Part) => ({ id, maker, number, description });

function aliasOf(
  actor: Actor,
  today: IsoDate,
  { keptId, number, reason }: { keptId: string; number: string; reason?: string },
): Prisma.PartAliasUncheckedCreateInput {
  const decided = { decidedBy: actor.name, decidedOn: new Date(`${today}T00:00:00Z`) };
  return { partId: keptId, alias: number, siteId: null, ...decided, reason: reason ?? "" };
}

/** Makes two parts one, unless their records moved since the preview. */
export async function mergeParts(
  actor: Actor,
  { reason, seen, ...pair }: MergeTwo,
): Promise<Result<{ mergeId: string }, Refusal>> {
  if (scopeOf(actor.grants, "register:import") !== "all") return err(everySite);
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const named = await tx.part.findUnique({ where: { id: pair.otherId }, select: { number: true } });
    const alias = aliasOf(actor, today, { ...pair, number: named?.number ?? "", reason });
    const merged = await merge(tx, { ...pair, alias });
    if (!merged.ok) return merged;
    const { kept, other, steps } = merged.value;
    const counts = mergeCounts(steps);
    if (seenMark(counts) !== seen) return err(moved);
    const { id } = await tx.partMerge.create({
      data: {
        ...{ ...pair, reason, decidedBy: actor.name, decidedOn: new Date(`${today}T00:00:00Z`) },
        steps: steps as unknown as Prisma.InputJsonObject,
      },
      select: { id: true },
    });
    const after = { into: kept.number, reason, ...counts } as Prisma.InputJsonObject;
    record({
      deed: "part:merge",
      entity: "Part",
      entityId: other.id,
      before: { number: other.number },
      after,
    });
    return ok({ mergeId: id });
  });
}

/** Takes a merge back; says what was touched since and stays. */
export async function unmergeParts(
  actor: Actor,
  { mergeId }: UnmergeOne,
): Promise<Result<{ stayed: string[] }, Refusal>> {
  if (scopeOf(actor.grants, "register:import") !== "all") return err(everySite);
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    await tx.$queryRaw`SELECT "id" FROM "PartMerge" WHERE "id" = ${mergeId}::uuid FOR UPDATE`;
    const kept = await tx.partMerge.findFirst({ where: { id: mergeId, undoneOn: null } });
    if (!kept) return err(gone);
    const stayed = await unmerge(tx, kept);
    if (!stayed.ok) return stayed;
    await tx.partMerge.update({
      where: { id: mergeId },
      data: { undoneBy: actor.name, undoneOn: new Date(`${today}T00:00:00Z`), stayed: stayed.value },
    });
    const counts = mergeCounts(kept.steps as unknown as MergeSteps) as unknown as Prisma.InputJsonObject;
    const after = { stayed: stayed.value };
    record({ deed: "part:unmerge", entity: "Part", entityId: kept.otherId, before: counts, after });
    return ok({ stayed: stayed.value });
  });
}
