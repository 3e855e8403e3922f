import "server-only";
import { randomUUID } from "node:crypto";
import { noteTrouble } from "@/lib/access/securityLog";
import { database } from "@/lib/data/client";
import type { Around, StoredBatch } from "@/lib/data/intake/batch";
import type { Prepared } from "@/lib/data/intake/prepared";
import { type Hear, type ReadOutcome, readBatch } from "@/lib/data/intake/readBatch";
import type { DialectAnswers } from "@/lib/intake/settleDialect";
import type { Result } from "@/lib/kernel/result";
import type { StagedSummary } from "@/lib/view/importView";
import type { Prisma } from "@/prisma/generated/client";

const BEAT_MS = 1_000;
/** Work without a sign of life for so long is done nowhere any more. */
const SILENT_MS = 20_000;

/** What a batch keeps of its reading, beside what has tables of its own. */
export interface KeptReading {
  /** What a person said of numbers and dates. */
  readonly answers: DialectAnswers;
  /** Null until it was read to the end. */
  readonly staged: StagedSummary | null;
  /** What the reading made ready to be written; null when loading reads the file again. */
  readonly prepared?: Prepared | null;
}

/** JSON has no undefined; what is kept needs none. */
export const asJson = (value: unknown) => JSON.parse(JSON.stringify(value)) as Prisma.InputJsonObject;

export const keptReading = (batch: Pick<StoredBatch, "summary">) => batch.summary as KeptReading | null;

/** What a person asks of a reading: rows left out, and the sites she may load for. */
export function choiceOf({ allowedSites, leftOut }: Around): string {
  const sites = allowedSites === null ? "all" : [...allowedSites].sort().join();
  return `${sites} ${leftOut.join()}`;
}

/** Readings of this process by batch; kept over hot reloads. */
const kept = globalThis as typeof globalThis & { ebblineReadings?: Map<string, Promise<void>> };

function readings(): Map<string, Promise<void>> {
  kept.ebblineReadings ??= new Map();
  return kept.ebblineReadings;
}

/** The reading of a batch that goes on in this process. */
export const readingHere = (batchId: string): Promise<void> | null => readings().get(batchId) ?? null;

/** Whether whoever worked on a batch is gone. */
export function isSilent({ beatAt }: Pick<StoredBatch, "beatAt">): boolean {
  return beatAt === null || beatAt.getTime() < Date.now() - SILENT_MS;
}

/** The same, as one of these holds of a batch. */
export const silentAt = (now: Date): Prisma.ImportBatchWhereInput[] => [
  { beatAt: null },
  { beatAt: { lt: new Date(now.getTime() - SILENT_MS) } },
];

/** Somebody stopped the work, or took it over. */
export class Stopped extends Error {}

/** Tells the batch how far the work is, once a second; throws Stopped when its number no longer stands there. */
export function beatOf(batchId: string, workId: string): Hear {
  let next = 0;
  return async ({ rows, bytes }) => {
    if (performance.now() < next) return;
    next = performance.now() + BEAT_MS;
    const { count } = await database().importBatch.updateMany({
      where: { id: batchId, workId },
      data: { rowsRead: rows, bytesRead: bytes, beatAt: new Date() },
    });
    if (count === 0) throw new Stopped();
  };
}

/** Reads a batch in this process, beside whatever else it does; the batch tells how far it is and what it came to. */
export function startReading(batch: StoredBatch, around: Around, readFor: string): Promise<void> {
  const running = readings().get(batch.id);
  if (running) return running;
  const reading = read(batch, around, readFor).finally(() => readings().delete(batch.id));
  readings().set(batch.id, reading);
  return reading;
}

async function read(batch: StoredBatch, around: Around, readFor: string): Promise<void> {
  const workId = randomUUID();
  if (!(await claim(batch.id, workId))) return;
  const end = (data: Prisma.ImportBatchUpdateManyMutationInput) =>
    database().importBatch.updateMany({
      where: { id: batch.id, workId },
      data: { ...data, readFor, beatAt: new Date() },
    });
  try {
    const answers = keptReading(batch)?.answers ?? null;
    const outcome = await readTwice(batch, { ...around, answers }, beatOf(batch.id, workId));
    if (!outcome.ok) await end({ work: "failed", workNote: outcome.error });
    else if (outcome.value.kind === "summary")
      await end({
        ...{ work: "read", rowsRead: outcome.value.summary.totals.rows, bytesRead: batch.file.size },
        summary: asJson({
          ...{ answers: answers ?? {}, staged: outcome.value.summary, prepared: outcome.value.prepared },
        }),
      });
  } catch (error) {
    if (error instanceof Stopped) return;
    noteTrouble(`import ${batch.id}`, error);
    const workNote = "The reading broke off by a fault of Ebbline, not of the file. Nothing was taken over.";
    await end({ work: "failed", workNote });
  }
}

/** Only one at a time works on a batch, in whatever process; one that has fallen silent is no obstacle. */
async function claim(batchId: string, workId: string): Promise<boolean> {
  const now = new Date();
  const { count } = await database().importBatch.updateMany({
    where: {
      ...{ id: batchId, state: "staged" },
      OR: [{ work: { notIn: ["reading", "loading"] } }, ...silentAt(now)],
    },
    data: {
      ...{ work: "reading", workId, workNote: null, workStartedAt: now, beatAt: now },
      ...{ rowsRead: 0, bytesRead: 0 },
    },
  });
  return count > 0;
}

/** The first rows of a long file may not tell how the rest is written; then it is read once more. */
async function readTwice(
  batch: StoredBatch,
  around: Around & { readonly answers: DialectAnswers | null },
  hear: Hear,
): Promise<Result<ReadOutcome, string>> {
  const first = await readBatch(batch, around, hear);
  if (!first.ok || first.value.kind === "summary") return first;
  const dialect = asJson(first.value.dialect);
  await database().importBatch.update({ where: { id: batch.id }, data: { dialect }, select: { id: true } });
  return readBatch(
    { ...batch, dialect: dialect as StoredBatch["dialect"] },
    { ...around, answers: null },
    hear,
  );
}
