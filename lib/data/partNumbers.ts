import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere, scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import type { MergeSteps } from "@/lib/data/identity/mergeSteps";
import { findOpen, type LoadedPart, loadParts, nameOf } from "@/lib/data/identity/openNumbers";
import { siteIds } from "@/lib/data/scope";
import { findLookAlikes } from "@/lib/intake/findLookAlikes";
import { partKey } from "@/lib/intake/readPartNumber";
import { mergeCounts, movedWords } from "@/lib/view/partMerge";
import type { LikePair, MadeMerge, NamedPart, PartNumbers, SaidNumber } from "@/lib/view/partNumbers";
import type { NumberVerdict } from "@/prisma/generated/client";

/** Numbers shown at once; the rest comes up as these are settled. */
const MOST_NUMBERS = 100;
const MOST_SAID = 200;
const dayOf = (date: Date | null) => date?.toISOString().slice(0, 10) ?? "";

/** Numbers of files to settle, parts that look alike, and what people said of both. */
export async function readPartNumbers(actor: Actor): Promise<PartNumbers> {
  const [parts, verdicts] = await Promise.all([loadParts(actor), database().numberVerdict.findMany()]);
  const open = await findOpen(actor, parts, verdicts);
  const names = new Map(parts.map((part) => [part.id, nameOf(part)]));
  return {
    open: open.slice(0, MOST_NUMBERS),
    openCount: open.length,
    pairs: likePairs(parts, verdicts),
    said: await findSaid(actor, names, verdicts),
    merges: await findMerges(),
    everySite: scopeOf(actor.grants, "register:import") === "all",
  };
}

function likePairs(parts: readonly LoadedPart[], verdicts: readonly NumberVerdict[]): LikePair[] {
  const byId = new Map(parts.map((part) => [part.id, nameOf(part)]));
  const parted = new Set(verdicts.map(({ key, partId }) => `${key} ${partId}`));
  return findLookAlikes(parts).flatMap(({ firstId, secondId, score, why }) => {
    const [first, second] = [byId.get(firstId), byId.get(secondId)];
    if (!first || !second) return [];
    const isParted =
      parted.has(`${partKey(first.number)} ${secondId}`) ||
      parted.has(`${partKey(second.number)} ${firstId}`);
    return isParted ? [] : [{ first, second, score, why }];
  });
}

async function findSaid(
  actor: Actor,
  names: ReadonlyMap<string, NamedPart>,
  verdicts: readonly NumberVerdict[],
): Promise<SaidNumber[]> {
  const seen = siteIds(actor, "read");
  const aliases = await database().partAlias.findMany({
    where: { decidedOn: { not: null }, ...(seen ? { OR: [{ siteId: null }, { siteId: seen }] } : {}) },
    include: { site: { select: { code: true } } },
    orderBy: { id: "desc" },
    take: MOST_SAID,
  });
  const called = (partId: string | null) =>
    partId === null ? null : (names.get(partId)?.number ?? "a merged part");
  return [
    ...aliases.map((alias) => ({
      ...{ id: alias.id, kind: "alias" as const, written: alias.alias, reason: alias.reason ?? "" },
      ...{ by: alias.decidedBy ?? "", on: dayOf(alias.decidedOn) },
      said: `is ${called(alias.partId)} ${alias.site ? `at ${alias.site.code}` : "everywhere"}`,
    })),
    ...verdicts.map(({ id, written, partId, verdict, reason, decidedBy, decidedOn }) => ({
      ...{ id, kind: "verdict" as const, written, reason, by: decidedBy, on: dayOf(decidedOn) },
      said:
        verdict === "later" ? "to be looked at later" : `is not ${called(partId) ?? "any part on record"}`,
    })),
  ];
}

async function findMerges(): Promise<MadeMerge[]> {
  const name = { select: { id: true, maker: true, number: true, description: true } };
  const rows = await database().partMerge.findMany({
    include: { kept: name, other: name },
    orderBy: { id: "desc" },
    take: MOST_SAID,
  });
  return rows.map(({ id, kept, other, steps, reason, ...said }) => ({
    ...{ id, kept, other, reason, by: said.decidedBy, on: dayOf(said.decidedOn) },
    moved: movedWords(mergeCounts(steps as unknown as MergeSteps)),
    undone: said.undoneOn && { by: said.undoneBy ?? "", on: dayOf(said.undoneOn), stayed: said.stayed },
  }));
}

/** The part that another one was found to be; null counts itself. */
export async function readMergedInto(actor: Actor, id: string): Promise<NamedPart | null> {
  if (!maySomewhere(actor.grants, "read")) return null;
  const part = await database().part.findFirst({
    where: { id },
    select: { mergedInto: { select: { id: true, maker: true, number: true, description: true } } },
  });
  return part?.mergedInto ?? null;
}

/** Parts a number can be said to be, by maker and number. */
export async function readPartChoices(actor: Actor): Promise<NamedPart[]> {
  return (await loadParts(actor)).map(nameOf);
}
