import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { visibleBatches } from "@/lib/data/intake/batch";
import { latestReading, visibleSources } from "@/lib/data/intake/sourceReading";
import { foldText } from "@/lib/intake/foldText";
import { findField, isRegisterKey, REGISTERS } from "@/lib/intake/registers";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { ChooseSource, ForgetWord, SetNullWords, TeachWord } from "@/lib/schema/importSource";
import type { Prisma } from "@/prisma/generated/client";

const noSource: Refusal = { code: "missing", reason: "There is no such system that you may change." };
const noBatch: Refusal = {
  code: "missing",
  reason: "There is no such file waiting. It may have been loaded or dropped meanwhile; look at the list.",
};
const noWord: Refusal = { code: "missing", reason: "There is no such word; somebody took it out meanwhile." };
const moved: Refusal = {
  code: "conflict",
  reason:
    "Somebody changed how these files are read since you looked. Nothing was changed; load the page again.",
};

/** Says which system a staged file comes from. What is known of that system's files is used for it at once. */
export async function chooseImportSource(
  actor: Actor,
  { batchId, source }: ChooseSource,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const batch = await tx.importBatch.findFirst({
      where: { id: batchId, state: "staged", work: { not: "loading" }, ...visibleBatches(actor) },
      select: { id: true, register: true, mapping: true, summary: true },
    });
    if (!batch) return err(noBatch);
    const found = await findOrMake(tx, actor, source);
    if (!found.ok) return found;
    const { sourceId, made } = found.value;
    const last = sourceId === null ? null : await latestReading(tx, sourceId, batch.register);
    await tx.importBatch.update({
      where: { id: batchId },
      data: { sourceId, ...readAnew(batch, last) },
      select: { id: true },
    });
    if (made)
      record({
        deed: "source:add",
        entity: "ImportSource",
        entityId: made.id,
        siteId: made.siteId,
        after: { name: made.name },
      });
    return ok(null);
  });
}

type Found = Result<
  { sourceId: string | null; made: { id: string; siteId: string | null; name: string } | null },
  Refusal
>;

async function findOrMake(tx: Transaction, actor: Actor, source: ChooseSource["source"]): Promise<Found> {
  if (source.kind === "none") return ok({ sourceId: null, made: null });
  if (source.kind === "known") {
    const { sourceId } = source;
    const known = await tx.importSource.count({ where: { id: sourceId, ...visibleSources(actor) } });
    return known > 0 ? ok({ sourceId, made: null }) : err(noSource);
  }
  const { name, siteId } = source;
  const scope = scopeOf(actor.grants, "register:import");
  if (scope !== "all" && (siteId === null || !scope.includes(siteId))) return err(noSource);
  // Null is no value to the database's own unique key, so systems of the group are looked up here.
  const same = await tx.importSource.findFirst({ where: { name, siteId }, select: { id: true } });
  if (same) return ok({ sourceId: same.id, made: null });
  const made = await tx.importSource.create({ data: { name, siteId } });
  return ok({ sourceId: made.id, made });
}

/** The columns of the file that the source's last mapping knows, by header; the file is read again. */
function readAnew(
  batch: { readonly mapping: Prisma.JsonValue; readonly summary: Prisma.JsonValue },
  last: Awaited<ReturnType<typeof latestReading>>,
) {
  const summary = (batch.summary ?? {}) as { answers?: object };
  const answers = { ...summary.answers, ...last?.answers };
  const known = new Map(
    Object.entries(last?.mapping ?? {}).map(([header, field]) => [foldText(header), field]),
  );
  const own = Object.entries(batch.mapping as Record<string, string | null>);
  const taken = new Set(own.map(([header]) => known.get(foldText(header))).filter((field) => field));
  const mapping = Object.fromEntries(
    own.map(([header, field]): [string, string | null] => {
      if (known.has(foldText(header))) return [header, known.get(foldText(header)) ?? null];
      return [header, taken.has(field) ? null : field];
    }),
  );
  return {
    mapping,
    summary: JSON.parse(JSON.stringify({ answers, staged: null })) as Prisma.InputJsonObject,
    ...{ work: "idle" as const, workId: null, readFor: null },
  };
}

/** Files of the source that wait are read again, so that they follow what was said. */
async function readWaitingAgain(tx: Transaction, sourceId: string): Promise<void> {
  await tx.importBatch.updateMany({
    where: { sourceId, state: "staged", work: { not: "loading" } },
    data: { work: "idle", workId: null, readFor: null },
  });
}

/** Keeps what a source means by a word; the last word counts. */
export async function teachSourceWord(
  actor: Actor,
  { sourceId, ...word }: TeachWord,
): Promise<Result<{ wordId: string }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const source = await tx.importSource.findFirst({ where: { id: sourceId, ...visibleSources(actor) } });
    if (!source) return err(noSource);
    const wrong = await refuseMeaning(tx, word);
    if (wrong) return err(wrong);
    const { kind, within, written, meaning } = word;
    const key = { sourceId, kind, within, folded: foldText(written) };
    const said = { meaning, written, decidedBy: actor.name, decidedOn: new Date(`${today}T00:00:00Z`) };
    const { id } = await tx.learnedWord.upsert({
      where: { sourceId_kind_within_folded: key },
      create: { ...key, ...said },
      update: said,
      select: { id: true },
    });
    await readWaitingAgain(tx, sourceId);
    const after = { source: source.name, kind, within, written, meaning };
    record({ deed: "source:learn", entity: "LearnedWord", entityId: id, siteId: source.siteId, after });
    return ok({ wordId: id });
  });
}

/** A word means something on record: a line, a machine of its line, a value the field has. */
async function refuseMeaning(
  tx: Transaction,
  { kind, within, meaning }: Omit<TeachWord, "sourceId">,
): Promise<Refusal | null> {
  const unknown = (reason: string): Refusal => ({ code: "invalid", reason, fields: { meaning: reason } });
  if (kind === "line")
    return (await tx.line.count({ where: { code: meaning } })) > 0 ? null : unknown("There is no such line.");
  if (kind === "machine") {
    const found = await tx.machine.count({ where: { code: meaning, line: { code: within } } });
    return found > 0 ? null : unknown(`There is no such machine on line ${within}.`);
  }
  const fields = Object.values(REGISTERS).flatMap((register) => findField(register, within) ?? []);
  const has = fields.some(({ choices }) => choices.some(({ value }) => value === meaning));
  return has ? null : unknown("This is none of the field's values.");
}

/** Forgets a word of a source. */
export async function forgetSourceWord(actor: Actor, { wordId }: ForgetWord): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const word = await tx.learnedWord.findFirst({
      where: { id: wordId, source: visibleSources(actor) },
      include: { source: true },
    });
    if (!word) return err(noWord);
    await tx.learnedWord.delete({ where: { id: wordId } });
    await readWaitingAgain(tx, word.sourceId);
    const { kind, within, written, meaning, source } = word;
    const before = { source: source.name, kind, within, written, meaning };
    record({ deed: "source:forget", entity: "LearnedWord", entityId: wordId, siteId: source.siteId, before });
    return ok(null);
  });
}

/** Sets the words a source writes for nothing, as the next version of how its files are read. */
export async function setSourceNulls(
  actor: Actor,
  { sourceId, register, version, nullWords }: SetNullWords,
): Promise<Result<null, Refusal>> {
  if (!isRegisterKey(register)) return err(noSource);
  return change(actor, async (tx, record) => {
    await tx.$queryRaw`SELECT "id" FROM "ImportSource" WHERE "id" = ${sourceId}::uuid FOR UPDATE`;
    const source = await tx.importSource.findFirst({ where: { id: sourceId, ...visibleSources(actor) } });
    const last = source && (await latestReading(tx, sourceId, register));
    if (!source || !last) return err(noSource);
    if (last.version !== version) return err(moved);
    const { nullWords: before, ...others } = last.answers;
    const answers = nullWords === null ? others : { ...others, nullWords };
    const { id } = await tx.sourceReading.create({
      data: {
        ...{ sourceId, register, headers: last.headers, version: version + 1, changedBy: actor.name },
        mapping: last.mapping as Prisma.InputJsonObject,
        answers: answers as Prisma.InputJsonObject,
      },
      select: { id: true },
    });
    record({
      ...{ deed: "source:nulls", entity: "SourceReading", entityId: id, siteId: source.siteId },
      ...{ before: { nullWords: before ? [...before] : null }, after: { nullWords } },
    });
    return ok(null);
  });
}
