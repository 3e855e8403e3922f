import "server-only";
import { DatabaseError } from "pg";
import type { Refusal } from "@/lib/access/action";
import type { Deeded, Transaction } from "@/lib/data/change";
import {
  type Around,
  type ExaminedPiece,
  examinePieces,
  MappedColumns,
  openBatch,
  type StoredBatch,
} from "@/lib/data/intake/batch";
import { copyInTransaction } from "@/lib/data/intake/bulk";
import { mentionsOf } from "@/lib/data/intake/mentions";
import { isStillReady, type Prepared, writePrepared } from "@/lib/data/intake/prepared";
import { problemRows } from "@/lib/data/intake/problemRows";
import { type Hear, otherDialect } from "@/lib/data/intake/readBatch";
import { choiceOf, keptReading } from "@/lib/data/intake/runReading";
import { stockAlone } from "@/lib/data/intake/stockAlone";
import { keepUnmatched } from "@/lib/data/intake/unmatched";
import { write } from "@/lib/data/intake/write";
import { UnreadableFile } from "@/lib/intake/limits";
import type { RegisterKey } from "@/lib/intake/registers";
import { openQuestions } from "@/lib/intake/settleDialect";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { StagedSummary } from "@/lib/view/importView";
import { Prisma } from "@/prisma/generated/client";

const unanswered: Refusal = {
  code: "invalid",
  reason:
    "The file can be read in two ways. Say first how it writes its numbers and dates; nothing was loaded.",
};

/** What a load did, in things. */
export interface Loaded {
  readonly added: number;
  readonly changed: number;
  readonly unchanged: number;
  readonly refused: number;
}

export interface Applied {
  readonly loaded: Loaded;
  readonly siteCodes: readonly string[];
  /** What the audit is told of the stock, when nothing else was touched. */
  readonly stock: Pick<Deeded, "stockOf" | "beside">;
}

/**
 * Writes what a staged file says into the transaction of the bulk client: what its reading made ready, else what reading
 * it again says.
 */
export async function applyBatch(
  tx: Transaction,
  batch: StoredBatch,
  around: Around & { readonly hear: Hear },
): Promise<Result<Applied, Refusal>> {
  const ready = await preparedFor(batch, around);
  return ready ? ok(await applyPrepared(batch, ready, around.hear)) : readAndApply(tx, batch, around);
}

/** Reads a file and writes it piece by piece; rows with an error and rows left out stay outside, with the reason kept. */
async function readAndApply(
  tx: Transaction,
  batch: StoredBatch,
  { hear, ...around }: Around & { readonly hear: Hear },
): Promise<Result<Applied, Refusal>> {
  const open = await openBatch(batch);
  if (!open.ok) return err({ code: "invalid", reason: open.error });
  await clear(tx, batch.id);
  await byIndexes(tx, true);
  const columns = new MappedColumns(open.value);
  const applying = new Applying(tx, {
    batchId: batch.id,
    register: open.value.register.key,
    day: around.day,
  });
  let unmatched: ExaminedPiece["unmatched"] = () => [];
  try {
    for await (const piece of examinePieces(tx, open.value, { ...around, columns })) {
      unmatched = piece.unmatched;
      const missing = piece.examination.problems.map((one) => one.problem);
      if (missing.length > 0) return err({ code: "invalid", reason: missing.join(" ") });
      await applying.take(piece);
      await hear({ rows: applying.rows, bytes: piece.bytesRead });
    }
  } catch (error) {
    const why = error instanceof UnreadableFile ? error.message : refusedByDatabase(error, applying.range);
    if (why === null) throw error;
    return err({ code: "invalid", reason: `${batch.fileName}: ${why}` });
  }
  await byIndexes(tx, false);
  const finding = columns.finding();
  const answers = keptReading(batch)?.answers ?? null;
  const isOtherwise = otherDialect(open.value, finding, answers) !== null;
  if (isOtherwise || openQuestions(finding, open.value.dialect).length > 0) return err(unanswered);
  await keepUnmatched(tx, batch.id, unmatched());
  return ok(await applying.applied());
}

/** What the reading made ready, when nothing has changed since and nothing else is asked for. */
async function preparedFor(batch: StoredBatch, around: Around): Promise<ReadySummary | null> {
  const kept = keptReading(batch);
  const isAsked = batch.readFor?.split("\n")[0] === choiceOf(around) && around.leftOut.length === 0;
  if (!kept?.staged || !kept.prepared || !isAsked) return null;
  return (await isStillReady(batch.id, kept.prepared))
    ? { ...kept, staged: kept.staged, prepared: kept.prepared }
    : null;
}

interface ReadySummary {
  readonly staged: StagedSummary;
  readonly prepared: Prepared;
}

async function applyPrepared(
  batch: StoredBatch,
  { staged, prepared }: ReadySummary,
  hear: Hear,
): Promise<Applied> {
  await writePrepared(batch.id, (rows) =>
    hear({ rows, bytes: Math.round((batch.file.size * rows) / Math.max(1, prepared.rows)) }),
  );
  return {
    loaded: {
      ...{ added: prepared.rows, changed: 0, unchanged: prepared.unchanged, refused: staged.totals.error },
    },
    siteCodes: staged.siteCodes,
    stock: {},
  };
}

/** What no check of the file foresaw and a rule of the database keeps out; null when it is no such thing. */
function refusedByDatabase(error: unknown, [from, to]: readonly [number, number]): string | null {
  const isRule =
    (error instanceof DatabaseError && /^2[23]/.test(error.code ?? "")) ||
    error instanceof Prisma.PrismaClientKnownRequestError;
  if (!isRule) return null;
  const rule = error instanceof DatabaseError && error.constraint ? ` (${error.constraint})` : "";
  return `Among rows ${from} to ${to} one says what the records cannot hold${rule}. Nothing was loaded. Correct that row, or leave rows out to find it, and load the file again`;
}

/**
 * Has rows looked up by index whatever the database believes: it counts a table's rows now and then and not within a
 * transaction, so a table that was empty when the load began is taken for empty to its end, and is read whole for each
 * piece of the file.
 */
async function byIndexes(tx: Transaction, wanted: boolean): Promise<void> {
  await tx.$executeRaw`SELECT set_config('enable_seqscan', ${wanted ? "off" : "on"}, true)`;
}

/** What was found at the last reading; what stands against a row is found anew. */
async function clear(tx: Transaction, batchId: string): Promise<void> {
  await tx.importProblem.deleteMany({ where: { batchId } });
  await tx.importDifference.deleteMany({ where: { batchId } });
  await tx.importMention.deleteMany({ where: { batchId } });
}

interface Load {
  readonly batchId: string;
  readonly register: RegisterKey;
  readonly day: string;
}

class Applying {
  readonly #tx: Transaction;
  readonly #load: Load;
  readonly #sites = new Set<string>();
  readonly #counts = { added: 0, changed: 0, unchanged: 0, refused: 0 };
  /** The lots touched, as long as nothing but lots was. */
  #lots: { entity: "StockLot"; id: string }[] | null = [];
  #steps = 0;
  #problems = 0;
  rows = 0;
  /** First and last row of the piece in hand. */
  range: readonly [number, number] = [0, 0];

  constructor(tx: Transaction, load: Load) {
    this.#tx = tx;
    this.#load = load;
  }

  async take({ examination }: ExaminedPiece): Promise<void> {
    const { resolved, rows, siteCodes } = examination;
    const { batchId, register, day } = this.#load;
    this.range = [rows[0]?.rowNumber ?? 0, rows.at(-1)?.rowNumber ?? 0];
    const steps = await write(this.#tx, resolved, {
      ...{ batchId, day, from: this.#steps, copy: copyInTransaction },
    });
    const problems = problemRows(batchId, examination, this.#problems);
    await copyInTransaction("ImportProblem", problems);
    await copyInTransaction("ImportMention", mentionsOf(batchId, register, resolved));
    for (const site of siteCodes) this.#sites.add(site);
    for (const { entity, id, kind } of steps) {
      this.#counts[kind === "add" ? "added" : "changed"] += 1;
      if (entity === "StockLot") this.#lots?.push({ entity, id });
      else this.#lots = null;
    }
    this.#counts.unchanged += resolved.filter((one) => one.kind === "same").length;
    this.#counts.refused += rows.filter((row) => row.state === "error").length;
    this.#steps += steps.length;
    this.#problems += problems.length;
    this.rows += rows.length;
  }

  async applied(): Promise<Applied> {
    const stock = await this.#touched();
    return { loaded: this.#counts, siteCodes: [...this.#sites].sort(), stock };
  }

  async #touched(): Promise<Applied["stock"]> {
    // What a network list saw is read by no figure.
    if (this.#load.register === "scans") return { beside: true };
    return this.#lots === null ? {} : stockAlone(this.#tx, this.#lots);
  }
}
