import "server-only";
import { isDeepStrictEqual } from "node:util";
import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import type { DialectAnswers } from "@/lib/intake/settleDialect";
import type { Mapping } from "@/lib/intake/suggestMapping";
import type { Prisma } from "@/prisma/generated/client";

/** How files with these column names were read before. */
export interface KnownReading {
  /** The source they came from; null is none, or more than one. */
  readonly sourceId: string | null;
  readonly mapping: Mapping;
  readonly answers: DialectAnswers;
}

interface Asked {
  readonly register: string;
  /** Folded and sorted, so that shuffled columns are the same. */
  readonly headers: string;
}

/** Sources the actor may bring files of: those of the sites, and the group's own. */
export function visibleSources(actor: Actor): Prisma.ImportSourceWhereInput {
  const ids = siteIds(actor, "register:import");
  return ids ? { OR: [{ siteId: null }, { siteId: ids }] } : {};
}

/** The last word on files with these column names: of the one source that writes them, else of anybody. */
export async function recallReading(
  tx: Transaction,
  actor: Actor,
  { register, headers }: Asked,
): Promise<KnownReading | null> {
  const readings = await tx.sourceReading.findMany({
    where: { register, headers, source: visibleSources(actor) },
    orderBy: { changedAt: "desc" },
    select: { sourceId: true, mapping: true, answers: true },
  });
  const [latest] = readings;
  if (latest && new Set(readings.map(({ sourceId }) => sourceId)).size === 1) return asKnown(latest);
  const known = await tx.importMapping.findUnique({
    where: { register_headers: { register, headers } },
    select: { mapping: true },
  });
  return known ? { sourceId: null, mapping: known.mapping as Mapping, answers: {} } : null;
}

/** The latest way files of a source are read into a register, whatever their column names; null is none yet. */
export async function latestReading(
  tx: Transaction,
  sourceId: string,
  register: string,
): Promise<(KnownReading & { readonly version: number; readonly headers: string }) | null> {
  const latest = await tx.sourceReading.findFirst({
    where: { sourceId, register },
    orderBy: { version: "desc" },
    select: { sourceId: true, mapping: true, answers: true, version: true, headers: true },
  });
  return latest && { ...asKnown(latest), version: latest.version, headers: latest.headers };
}

/** What a person said of a file, with the source's own words for nothing. */
export async function withNullWords(
  sourceId: string | null,
  register: string,
  answers: DialectAnswers,
): Promise<DialectAnswers> {
  const last = sourceId === null ? null : await latestReading(database(), sourceId, register);
  const nullWords = last?.answers.nullWords;
  return nullWords === undefined ? answers : { nullWords, ...answers };
}

function asKnown({
  sourceId,
  mapping,
  answers,
}: {
  sourceId: string;
  mapping: Prisma.JsonValue;
  answers: Prisma.JsonValue;
}): KnownReading {
  return { sourceId, mapping: mapping as Mapping, answers: answers as DialectAnswers };
}

/**
 * Keeps how a file was read: for any file with these column names, and as the next version of its source's reading
 * where it differs from the last.
 */
export async function rememberReading(
  tx: Transaction,
  actor: Actor,
  {
    register,
    headers,
    sourceId,
    mapping,
    answers,
  }: Asked & {
    readonly sourceId: string | null;
    readonly mapping: Mapping;
    readonly answers: DialectAnswers;
  },
): Promise<void> {
  await tx.importMapping.upsert({
    where: { register_headers: { register, headers } },
    create: { register, headers, mapping },
    update: { mapping, changedAt: new Date() },
    select: { id: true },
  });
  // Of two people who say something of one source at once, the second finds the number taken and comes next.
  for (let kept = sourceId === null; !kept; )
    kept = await keepVersion(tx, actor, { register, headers, sourceId: sourceId ?? "", mapping, answers });
}

/** Keeps a version; false when somebody kept one with its number meanwhile. */
async function keepVersion(
  tx: Transaction,
  actor: Actor,
  {
    register,
    headers,
    sourceId,
    mapping,
    answers,
  }: Asked & { readonly sourceId: string; readonly mapping: Mapping; readonly answers: DialectAnswers },
): Promise<boolean> {
  const last = await latestReading(tx, sourceId, register);
  const said = JSON.parse(
    JSON.stringify({ nullWords: last?.answers.nullWords, ...answers }),
  ) as DialectAnswers;
  const isSame =
    last?.headers === headers &&
    isDeepStrictEqual(last.mapping, mapping) &&
    isDeepStrictEqual(last.answers, said);
  if (isSame) return true;
  const version = (last?.version ?? 0) + 1;
  const { count } = await tx.sourceReading.createMany({
    data: {
      ...{ sourceId, register, headers, mapping, version, changedBy: actor.name },
      answers: said as Prisma.InputJsonObject,
    },
    skipDuplicates: true,
  });
  return count > 0;
}
