import "server-only";
import { isDeepStrictEqual } from "node:util";
import { database } from "@/lib/data/client";
import {
  type Around,
  type ExaminedPiece,
  examinePieces,
  MappedColumns,
  type OpenedBatch,
  openBatch,
  type StoredBatch,
} from "@/lib/data/intake/batch";
import { copyAlone } from "@/lib/data/intake/bulk";
import { findVanished, mentionsOf } from "@/lib/data/intake/mentions";
import { type Prepared, Preparing } from "@/lib/data/intake/prepared";
import { problemRows } from "@/lib/data/intake/problemRows";
import { readNames } from "@/lib/data/intake/readNames";
import type { Resolved } from "@/lib/data/intake/resolve";
import { keepUnmatched } from "@/lib/data/intake/unmatched";
import type { Dialect, DialectFinding } from "@/lib/intake/dialect";
import { UnreadableFile } from "@/lib/intake/limits";
import type { ReadingChoice } from "@/lib/intake/openRegister";
import { type DialectAnswers, openQuestions, settleDialect } from "@/lib/intake/settleDialect";
import type { SkippedRow } from "@/lib/intake/splitBody";
import { err, ok, type Result } from "@/lib/kernel/result";
import { countThings, listChanges, sumThings, type ThingCount } from "@/lib/view/importChanges";
import { viewOpening } from "@/lib/view/importOpening";
import { listColumns, listCustoms, type PreviewRow, previewRows, ROWS_SHOWN } from "@/lib/view/importPreview";
import type { StagedSummary } from "@/lib/view/importView";

/** How far a reading is. */
export interface ReadingProgress {
  readonly rows: number;
  readonly bytes: number;
}

/** Told after each piece; throws when nobody wants the rest. */
export type Hear = (progress: ReadingProgress) => Promise<void>;

/** What a reading came to: the page's words on the file as a whole, and the dialect when it must be read by another. */
export type ReadOutcome =
  | {
      readonly kind: "summary";
      readonly summary: StagedSummary;
      readonly prepared: Prepared | null;
    }
  | { readonly kind: "otherwise"; readonly dialect: Dialect };

/**
 * Reads a staged file against what is stored. Problems, changes and what it speaks of go into their tables as they are
 * found, so that a file of any length takes no more memory than a short one; the rest is told.
 */
export async function readBatch(
  batch: StoredBatch,
  around: Around & { readonly answers: DialectAnswers | null },
  hear: Hear,
): Promise<Result<ReadOutcome, string>> {
  const open = await openBatch(batch);
  if (!open.ok) return open;
  const columns = new MappedColumns(open.value);
  const staging = new Staging(batch.id, open.value, around);
  const preparing = new Preparing(batch.id, open.value.register.key);
  try {
    await clear(batch.id);
    await preparing.begin();
    const pieces = examinePieces(database(), open.value, { ...around, columns });
    await eachBeside(pieces, async (piece) => {
      await Promise.all([staging.take(piece), preparing.take(piece.examination.resolved)]);
      await hear({ rows: staging.rows, bytes: piece.bytesRead });
    });
  } catch (error) {
    if (error instanceof UnreadableFile) return err(`${batch.fileName}: ${error.message}`);
    throw error;
  }
  const finding = columns.finding();
  const dialect = otherDialect(open.value, finding, around.answers);
  if (dialect) return ok({ kind: "otherwise", dialect });
  const summary = await staging.summary(batch, finding);
  const isSettled = summary.missing.length === 0 && openQuestions(finding, open.value.dialect).length === 0;
  return ok({ kind: "summary", summary, prepared: isSettled ? preparing.done() : null });
}

/** Hands on one piece after the other, the next one being made meanwhile. */
async function eachBeside<Piece>(
  pieces: AsyncIterable<Piece>,
  take: (piece: Piece) => Promise<void>,
): Promise<void> {
  let taking: Promise<void> = Promise.resolve();
  try {
    for await (const piece of pieces) {
      await taking;
      taking = take(piece);
      // Whoever waits for it hears of a failure; the making of the next piece must not be broken by it.
      taking.catch(() => undefined);
    }
  } finally {
    await taking;
  }
}

/** How the whole file writes, where that is not how its first rows do; null when it was read rightly. */
export function otherDialect(
  { dialect }: Pick<OpenedBatch, "dialect">,
  finding: DialectFinding,
  answers: DialectAnswers | null,
): Dialect | null {
  if (answers === null) return null;
  const settled = settleDialect(finding, answers);
  return isDeepStrictEqual(JSON.parse(JSON.stringify(settled)), dialect) ? null : settled;
}

async function clear(batchId: string): Promise<void> {
  await database().$transaction([
    database().importProblem.deleteMany({ where: { batchId } }),
    database().importDifference.deleteMany({ where: { batchId } }),
    database().importMention.deleteMany({ where: { batchId } }),
  ]);
}

/** Gathers what a reading finds: much of it into tables, little of it to be told. */
class Staging {
  readonly #batchId: string;
  readonly #open: OpenedBatch;
  readonly #asked: ReadonlySet<number>;
  readonly #totals = { rows: 0, ok: 0, warning: 0, error: 0 };
  readonly #leftOut: number[] = [];
  readonly #missing = new Set<string>();
  readonly #sites = new Set<string>();
  readonly #skipped: SkippedRow[] = [];
  readonly #shown: PreviewRow[] = [];
  #labels: readonly string[] = [];
  #things: readonly ThingCount[] = [];
  #skippedCount = 0;
  #loadable = 0;
  #waiting = 0;
  #problems = 0;
  #changes = 0;
  #unmatched: ExaminedPiece["unmatched"] = () => [];

  constructor(batchId: string, open: OpenedBatch, { leftOut }: Around) {
    this.#batchId = batchId;
    this.#open = open;
    this.#asked = new Set(leftOut);
  }

  get rows(): number {
    return this.#totals.rows;
  }

  async take(piece: ExaminedPiece): Promise<void> {
    const { examination } = piece;
    this.#unmatched = piece.unmatched;
    this.#count(piece);
    for (const { problem } of examination.problems) this.#missing.add(problem);
    for (const site of examination.siteCodes) this.#sites.add(site);
    this.#things = sumThings(this.#things, countThings(examination.resolved));
    this.#show(piece);
    await this.#keepProblems(piece);
    await this.#keepChanges(examination.resolved);
    await copyAlone(
      "ImportMention",
      mentionsOf(this.#batchId, this.#open.register.key, examination.resolved),
    );
  }

  #count({ examination: { rows, waiting }, skipped, skippedCount }: ExaminedPiece): void {
    this.#totals.rows += rows.length;
    this.#waiting += waiting.size;
    for (const { rowNumber, state } of rows) {
      this.#totals[state] += 1;
      const isAsked = this.#asked.has(rowNumber);
      if (isAsked) this.#leftOut.push(rowNumber);
      if (state !== "error" && !isAsked) this.#loadable += 1;
    }
    this.#skipped.push(...skipped.slice(0, ROWS_SHOWN - this.#skipped.length));
    this.#skippedCount += skippedCount;
  }

  #show({ examination: { rows } }: ExaminedPiece): void {
    const { opened, mapping, register } = this.#open;
    const wanted = rows.slice(0, ROWS_SHOWN - this.#shown.length);
    const preview = previewRows(wanted, opened.body, { mapping, register });
    this.#labels = preview.labels;
    this.#shown.push(...preview.rows);
  }

  async #keepProblems({ examination }: ExaminedPiece): Promise<void> {
    const kept = problemRows(this.#batchId, examination, this.#problems);
    this.#problems += kept.length;
    await copyAlone("ImportProblem", kept);
  }

  async #keepChanges(resolved: readonly Resolved[]): Promise<void> {
    const changes = await inWords(resolved);
    const kept = changes.map((change, index) => ({
      ...{ batchId: this.#batchId, place: this.#changes + index },
      ...change,
    }));
    this.#changes += kept.length;
    await copyAlone("ImportDifference", kept);
  }

  async summary(batch: StoredBatch, finding: DialectFinding): Promise<StagedSummary> {
    const { opened, mapping, dialect, register } = this.#open;
    const siteCodes = [...this.#sites].sort();
    await keepUnmatched(database(), this.#batchId, this.#unmatched());
    return {
      opening: {
        ...viewOpening(opened, batch.reading as ReadingChoice),
        ...{ skipped: this.#skipped, skippedCount: this.#skippedCount },
      },
      columns: listColumns(opened.body, mapping, opened.suggestions),
      customs: listCustoms(finding, dialect, openQuestions(finding, dialect)),
      missing: [...this.#missing],
      totals: this.#totals,
      ...{ leftOut: this.#leftOut, loadable: this.#loadable, things: this.#things, waiting: this.#waiting },
      ...{ changeCount: this.#changes, problemCount: this.#problems },
      ...{ labels: this.#labels, rows: this.#shown, siteCodes },
      vanished: await findVanished(batch, register.key, siteCodes),
    };
  }
}

async function inWords(resolved: readonly Resolved[]) {
  const changed = resolved.filter((one) => one.kind === "change");
  if (changed.length === 0) return [];
  const ids = changed.flatMap(({ before, after }) => [...idsIn(before ?? {}), ...idsIn(after)]);
  const stored = await readNames(database(), ids);
  const inFile = new Map(resolved.map(({ id, key }) => [id, readable(key)]));
  return listChanges(
    changed.map((one) => ({ ...one, name: readable(one.key) })),
    (id) => stored.get(id) ?? inFile.get(id),
  );
}

function idsIn(values: Resolved["after"]): string[] {
  return Object.entries(values).flatMap(([field, value]) =>
    field.endsWith("Id") && typeof value === "string" ? [value] : [],
  );
}

/** A natural key as one reads it; the separator is the one `keyOf` puts between the parts of a key. */
function readable(key: string): string {
  return key.split("\u241F").join(" ");
}
