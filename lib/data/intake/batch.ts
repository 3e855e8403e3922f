import "server-only";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { type Examination, examine, FileMemory } from "@/lib/data/intake/examine";
import { type BodyPiece, type FileToOpen, type OpenedFile, openFile } from "@/lib/data/intake/openFile";
import { loadWords } from "@/lib/data/intake/sourceWords";
import { type Dialect, DialectCounter } from "@/lib/intake/dialect";
import type { LearnedWords } from "@/lib/intake/learnedWords";
import { UnreadableFile } from "@/lib/intake/limits";
import type { OpenedRegister, ReadingChoice } from "@/lib/intake/openRegister";
import {
  findField,
  isRegisterKey,
  type KeyedRegister,
  REGISTERS,
  type RegisterKey,
} from "@/lib/intake/registers";
import type { BodyRow, SkippedRow } from "@/lib/intake/splitBody";
import type { Mapping } from "@/lib/intake/suggestMapping";
import type { UnmatchedName } from "@/lib/intake/unmatched";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { ImportBatch, Prisma } from "@/prisma/generated/client";

/** Registers whose rows stand each for itself, so that a file of any length is examined in pieces. */
const BY_PIECE: ReadonlySet<RegisterKey> = new Set(["events", "stock", "scans"]);
/** Rows of the others hang together and are examined at once; so many fit into memory. */
const MOST_ROWS_AT_ONCE = 200_000;

/** A batch with what is needed to open its file. */
export type StoredBatch = ImportBatch & { readonly file: FileToOpen };

export const WITH_FILE = { file: { select: { id: true, size: true, tellingPiece: true } } } as const;

/** A staged file opened again by the choices made. */
export interface OpenedBatch {
  readonly register: KeyedRegister;
  readonly file: OpenedFile;
  readonly opened: OpenedRegister;
  readonly mapping: Mapping;
  readonly dialect: Dialect;
  readonly words: LearnedWords;
  /** Rows the batch is confined to; null is all. */
  readonly only: ReadonlySet<number> | null;
}

/** Condition on batches a person may see: all of them for who imports for every site, else the own ones. */
export function visibleBatches(actor: Actor): Prisma.ImportBatchWhereInput {
  return scopeOf(actor.grants, "register:import") === "all" ? {} : { createdBy: actor.userId };
}

/** Codes of the sites the person may import for; null is every site. */
export async function importSites(tx: Transaction, actor: Actor): Promise<ReadonlySet<string> | null> {
  const scope = scopeOf(actor.grants, "register:import");
  if (scope === "all") return null;
  const rows = await tx.site.findMany({ where: { id: { in: [...scope] } }, select: { code: true } });
  return new Set(rows.map((row) => row.code));
}

/** Opens the stored file of a batch by the choices made for it. */
export async function openBatch(batch: StoredBatch): Promise<Result<OpenedBatch, string>> {
  if (!isRegisterKey(batch.register)) throw new Error(`Import batch ${batch.id} names no register`);
  const register = REGISTERS[batch.register];
  const file = await openFile(batch.file, register, batch.reading as ReadingChoice);
  if (!file.ok) return err(`${batch.fileName}: ${file.error}`);
  return ok({
    register,
    file: file.value,
    opened: file.value.opened,
    mapping: batch.mapping as Mapping,
    dialect: batch.dialect as unknown as Dialect,
    words: await loadWords(database(), batch.sourceId),
    only: batch.onlyRows.length > 0 ? new Set(batch.onlyRows) : null,
  });
}

/** Counts what the mapped columns of a file say about its numbers and dates. */
export class MappedColumns {
  readonly used: readonly number[];
  readonly #counter: DialectCounter;

  constructor({ opened, mapping, register }: Pick<OpenedBatch, "opened" | "mapping" | "register">) {
    const columns = opened.body.headers.flatMap((header, index) => {
      const field = findField(register, mapping[header] ?? "");
      return field ? [{ index, header, kind: field.kind }] : [];
    });
    this.used = columns.map(({ index }) => index);
    this.#counter = new DialectCounter(columns);
  }

  count(rows: readonly BodyRow[]): void {
    for (const { cells } of rows)
      for (let place = 0; place < this.used.length; place += 1)
        this.#counter.add(place, cells[this.used[place] ?? 0] ?? null);
  }

  finding() {
    return this.#counter.finding();
  }
}

export interface Around {
  readonly allowedSites: ReadonlySet<string> | null;
  readonly day: IsoDate;
  readonly leftOut: readonly number[];
}

/** Some rows of a file and what they would do. */
export interface ExaminedPiece extends BodyPiece {
  readonly examination: Examination;
  /** Names nothing on record is called, of the rows so far. */
  readonly unmatched: () => readonly UnmatchedName[];
}

/**
 * Goes over the file of a batch and compares it with what is stored, piece by piece; each piece is handed out
 * before the next is looked at, so that it can be written first.
 *
 * @throws UnreadableFile naming the row.
 */
export async function* examinePieces(
  tx: Transaction,
  open: OpenedBatch,
  { allowedSites, day, leftOut, columns }: Around & { readonly columns: MappedColumns },
): AsyncGenerator<ExaminedPiece> {
  const { register, opened, mapping, dialect, words } = open;
  const memory = new FileMemory();
  const out = new Set(leftOut);
  for await (const piece of piecesOf(open, columns)) {
    const body = { headers: opened.body.headers, rows: [...piece.rows], skipped: [...piece.skipped] };
    const choices = { register, body, mapping, dialect, words, recordedOn: day, allowedSites, leftOut: out };
    const examination = await examine(tx, choices, memory);
    yield { ...piece, examination, unmatched: () => memory.unmatched?.list() ?? [] };
  }
}

async function* piecesOf(
  { file, register, only }: OpenedBatch,
  columns: MappedColumns,
): AsyncGenerator<BodyPiece> {
  const rows: BodyRow[] = [];
  const skipped: SkippedRow[] = [];
  let skippedCount = 0;
  let bytesRead = 0;
  for await (const piece of file.pieces(columns.used)) {
    columns.count(piece.rows);
    const kept = only ? { ...piece, rows: piece.rows.filter((row) => only.has(row.rowNumber)) } : piece;
    if (BY_PIECE.has(register.key)) {
      yield kept;
      continue;
    }
    rows.push(...kept.rows);
    skipped.push(...kept.skipped);
    skippedCount += kept.skippedCount;
    bytesRead = kept.bytesRead;
    if (rows.length > MOST_ROWS_AT_ONCE)
      throw new UnreadableFile(
        `Row ${rows.at(-1)?.rowNumber}: ${register.label} are taken over ${MOST_ROWS_AT_ONCE} rows a file, since its rows hang together. Split the file and load the pieces one after the other`,
      );
  }
  if (!BY_PIECE.has(register.key)) yield { rows, skipped, skippedCount, bytesRead };
}
