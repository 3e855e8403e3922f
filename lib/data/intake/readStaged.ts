import "server-only";
import { database } from "@/lib/data/client";
import type { Around, StoredBatch } from "@/lib/data/intake/batch";
import { readDifferences, readProblems } from "@/lib/data/intake/pages";
import { choiceOf, isSilent, keptReading, readingHere, startReading } from "@/lib/data/intake/runReading";
import type { ImportProgress, StagedImport } from "@/lib/view/importView";

/** A page waits so long for a reading before it shows how far it is; a short file is read by then. */
const PATIENCE_MS = 4_000;
/** A reading that took no longer is done again whenever the records have changed since. */
const QUICK_MS = 2_000;

interface ReadFor {
  /** What the person asks for: rows left out, and the sites she may load for. */
  readonly choice: string;
  /** The last change of any record. */
  readonly records: string;
}

async function readForOf(around: Around): Promise<ReadFor> {
  const [last] = await database().$queryRaw<{ at: string }[]>`
    SELECT "at"::text AS "at" FROM "AuditEntry" ORDER BY "at" DESC LIMIT 1`;
  return { choice: choiceOf(around), records: last?.at ?? "" };
}

function isReadFor(batch: StoredBatch, { choice, records }: ReadFor): "yes" | "stale" | "no" {
  const [kept, at] = (batch.readFor ?? "\n").split("\n");
  if (batch.readFor === null || kept !== choice) return "no";
  return at === records ? "yes" : "stale";
}

/** Starts the reading that is wanted, waits a moment for it, and tells how the batch stands then. */
export async function ensureRead(
  batch: StoredBatch,
  around: Around,
): Promise<{ readonly batch: StoredBatch; readonly isStale: boolean }> {
  const wanted = await readForOf(around);
  const found = isReadFor(batch, wanted);
  const isStale = found === "stale" && !isQuick(batch);
  if (isAtWork(batch) || (found === "yes" && batch.work !== "idle") || isStale || isHalted(batch)) {
    const here = readingHere(batch.id);
    return here === null ? { batch, isStale } : { batch: await after(here, batch), isStale: false };
  }
  const earlier = readingHere(batch.id);
  if (earlier) await earlier;
  const reading = startReading(batch, around, `${wanted.choice}\n${wanted.records}`);
  return { batch: await after(reading, batch), isStale: false };
}

/** Reading or loading, or left at it by a process that is gone: that is said, and a person has it read again. */
function isAtWork({ work }: StoredBatch): boolean {
  return work === "reading" || work === "loading";
}

/** What ended without a result is not tried again by merely looking at it. */
function isHalted({ work, readFor }: StoredBatch): boolean {
  return work === "stopped" || (work === "failed" && readFor !== null);
}

function isQuick({ workStartedAt, beatAt }: StoredBatch): boolean {
  return (beatAt?.getTime() ?? 0) - (workStartedAt?.getTime() ?? 0) < QUICK_MS;
}

async function after(reading: Promise<void>, batch: StoredBatch): Promise<StoredBatch> {
  let clock: NodeJS.Timeout | undefined;
  const patience = new Promise<void>((resolve) => {
    clock = setTimeout(resolve, PATIENCE_MS);
  });
  await Promise.race([reading, patience]);
  clearTimeout(clock);
  const now = await database().importBatch.findUnique({ where: { id: batch.id } });
  return now ? { ...now, file: batch.file } : batch;
}

/** How far the work on a batch is, or why it ended without a result; null when it was read. */
export function progressOf(batch: StoredBatch): ImportProgress | null {
  const { work, rowsRead, bytesRead, workStartedAt, beatAt, workNote, file } = batch;
  if (work === "read" || work === "idle") return null;
  const seconds = ((beatAt?.getTime() ?? 0) - (workStartedAt?.getTime() ?? 0)) / 1000;
  return {
    state: isAtWork(batch) && isSilent(batch) ? "interrupted" : work,
    rows: rowsRead,
    rowsPerSecond: seconds > 0 && rowsRead > 0 ? Math.round(rowsRead / seconds) : null,
    share: file.size === 0 ? 0 : Math.min(1, bytesRead / file.size),
    note: workNote,
  };
}

/** What a file that was read would do, as a page shows it; null when it was not read to the end. */
export async function readStaged(
  batch: StoredBatch,
): Promise<Omit<StagedImport, "loadedBefore" | "isStale"> | null> {
  const staged = keptReading(batch)?.staged;
  if (!staged) return null;
  const { changeCount, problemCount, siteCodes: _, ...rest } = staged;
  return {
    ...rest,
    problems: { ...(await readProblems(batch.id)), count: problemCount },
    changes: { ...(await readDifferences(batch.id)), count: changeCount },
  };
}
