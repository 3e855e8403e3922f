import "server-only";
import { type KeptFile, readPiece, readPieces, readWhole } from "@/lib/data/intake/fileStore";
import { foldText } from "@/lib/intake/foldText";
import { type OpenedRegister, openRegister, type ReadingChoice } from "@/lib/intake/openRegister";
import type { RawCell } from "@/lib/intake/reading";
import type { Register } from "@/lib/intake/registers";
import { RowSplitter, type WantedCells } from "@/lib/intake/rowSplitter";
import { type Body, type BodyRow, reasonToSkip, type SkippedRow, skippedRow } from "@/lib/intake/splitBody";
import { detectEncoding, type Encoding, pieceDecoder } from "@/lib/intake/textEncoding";
import { unguardFormula } from "@/lib/intake/writeCsv";
import { err, ok, type Result } from "@/lib/kernel/result";

/** Rows handled at once: enough for the database, few enough that pages are answered between. */
const ROWS_AT_ONCE = 2_000;
/** Blank rows in a row that are listed; more are counted. */
const SKIPPED_LISTED = 200;

/** Bytes of the longest letter of UTF-8. */
const LONGEST_LETTER = 4;

/** Some rows of a file, with those between that are no entries. */
export interface BodyPiece {
  readonly rows: readonly BodyRow[];
  readonly skipped: readonly SkippedRow[];
  /** How many are none; of long stretches of blank rows not all are listed. */
  readonly skippedCount: number;
  /** Bytes of the file read so far. */
  readonly bytesRead: number;
}

/** A file opened for a register: how it is read and what its columns are, and its rows piece by piece. */
export interface OpenedFile {
  /** The file as opened, with all its rows or, of a long text, the first ones. */
  readonly opened: OpenedRegister;
  /**
   * The rows from the first to the last.
   *
   * @param used Places of the columns that are read; of a long text the others stay as they stand in the file.
   * @throws UnreadableFile naming the row.
   */
  readonly pieces: (used: readonly number[]) => AsyncGenerator<BodyPiece>;
}

export type FileToOpen = Omit<KeptFile, "hash">;

/** Opens a stored file; long text is neither held nor parsed as a whole. */
export async function openFile(
  file: FileToOpen,
  register: Register,
  choice: ReadingChoice,
): Promise<Result<OpenedFile, string>> {
  const first = await readPiece(file.id, 0);
  if (first.length === file.size || !isText(first)) return openWhole(file, register, choice);
  const encoding =
    choice.encoding ?? detectEncoding(wholeLetters(await readPiece(file.id, file.tellingPiece)));
  const opened = await openSample(first, register, { ...choice, encoding });
  if (!opened.ok) return opened;
  const { body, headerRow, file: found } = opened.value;
  const way = { encoding, separator: found.separator ?? ";" };
  return ok({
    opened: opened.value,
    pieces: (used) => readLong(file.id, way, { headers: body.headers, headerRow, used }),
  });
}

async function openWhole(
  file: FileToOpen,
  register: Register,
  choice: ReadingChoice,
): Promise<Result<OpenedFile, string>> {
  const opened = await openRegister(await readWhole(file), register, choice);
  if (!opened.ok) return opened;
  return ok({ opened: opened.value, pieces: () => readShort(opened.value.body, file.size) });
}

/** Workbooks, of the new kind and the old, begin with marks of their own. */
function isText(bytes: Uint8Array): boolean {
  return !(bytes[0] === 0x50 && bytes[1] === 0x4b) && !(bytes[0] === 0xd0 && bytes[1] === 0xcf);
}

/** The bytes without the start of a letter whose rest lies in the next piece. */
function wholeLetters(bytes: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  let end = bytes.length;
  while (end > bytes.length - LONGEST_LETTER && (bytes[end - 1] ?? 0) >= 0x80) end -= 1;
  return bytes.subarray(0, end);
}

/** The bytes up to the last end of line, so that no letter is cut in two; two bytes a letter end on an even one. */
function wholeLines(bytes: Uint8Array<ArrayBuffer>, upTo = bytes.length): Uint8Array<ArrayBuffer> {
  const feed = bytes.lastIndexOf(0x0a, upTo - 1);
  const end = feed === -1 ? upTo : feed + 1;
  return bytes.subarray(0, end + (bytes[end] === 0 ? 1 : 0));
}

/** Shares of the first piece; a few thousand rows tell enough, and the rest is counted as it is read. */
const SAMPLE_CUTS = [0.25, 0.5, 1, 0.1];

/** Opens the first lines of a long text. A cut may fall into a quotation; then another is tried. */
async function openSample(
  first: Uint8Array<ArrayBuffer>,
  register: Register,
  choice: ReadingChoice,
): Promise<Result<OpenedRegister, string>> {
  let refused = "The file holds no rows";
  for (const share of SAMPLE_CUTS) {
    const sample = wholeLines(first, Math.floor(first.length * share));
    const opened = await openRegister(sample, register, choice);
    if (opened.ok) return opened;
    refused = opened.error;
  }
  return err(refused);
}

async function* readShort(body: Body, bytesRead: number): AsyncGenerator<BodyPiece> {
  for (let at = 0; at === 0 || at < body.rows.length; at += ROWS_AT_ONCE) {
    const rows = body.rows.slice(at, at + ROWS_AT_ONCE);
    const skipped = at === 0 ? body.skipped : [];
    yield { rows, skipped, skippedCount: skipped.length, bytesRead };
  }
}

interface LongPlace {
  readonly headers: readonly string[];
  readonly headerRow: number;
  readonly used: readonly number[];
}

interface Way {
  readonly encoding: Encoding;
  readonly separator: string;
}

/** Reads a long text piece by piece and cuts it into entries and rows that are none, as splitBody does a short one. */
async function* readLong(
  fileId: string,
  { encoding, separator }: Way,
  place: LongPlace,
): AsyncGenerator<BodyPiece> {
  const decode = pieceDecoder(encoding);
  const cutter = new BodyCutter(place);
  const splitter = new RowSplitter(separator, cutter.wanted);
  let bytesRead = 0;
  for await (const bytes of readPieces(fileId)) {
    bytesRead += bytes.length;
    const rows = splitter.push(decode(bytes), false);
    for (let at = 0; at < rows.length; at += ROWS_AT_ONCE)
      yield { ...cutter.cut(rows.slice(at, at + ROWS_AT_ONCE)), bytesRead };
  }
  yield { ...cutter.cut(splitter.push(decode(), true)), bytesRead };
}

class BodyCutter {
  readonly #place: LongPlace;
  #rowNumber = 0;
  #headerTexts: readonly string[] = [];
  /** The same with nothing for columns that are not read. */
  #usedTexts: readonly string[] | null = null;
  /** Blank rows count once a row follows them: those at the end are none. */
  #blank: SkippedRow[] = [];
  #blankCount = 0;

  /** Which cells to take out of the text: all of the column names and of what may be no entry, else those read. */
  readonly wanted: WantedCells;
  #rowsAsked = 0;

  constructor(place: LongPlace) {
    this.#place = place;
    const used = place.headers.map((_, index) => place.used.includes(index));
    this.wanted = { used, needsAll: (cells) => this.#needsAll(cells) };
  }

  #needsAll(cells: readonly string[]): boolean {
    this.#rowsAsked += 1;
    if (this.#usedTexts === null || this.#rowsAsked <= this.#place.headerRow) return true;
    return reasonToSkip(cells, this.#usedTexts) !== null;
  }

  cut(raw: readonly string[][]): Omit<BodyPiece, "bytesRead"> {
    const rows: BodyRow[] = [];
    const skipped: SkippedRow[] = [];
    let skippedCount = 0;
    for (const cells of raw) {
      if (this.#isAbove(cells)) continue;
      const reason = reasonToSkip(cells, this.#headerTexts);
      if (reason === "blank row") {
        this.#keepBlank();
        continue;
      }
      skipped.push(...this.#blank);
      skippedCount += this.#blankCount + (reason === null ? 0 : 1);
      this.#blank = [];
      this.#blankCount = 0;
      if (reason === null) rows.push({ rowNumber: this.#rowNumber, cells: toCells(cells, this.#place.used) });
      else skipped.push(skippedRow(this.#rowNumber, reason, cells));
    }
    return { rows, skipped, skippedCount };
  }

  /** Counts the row; whether it is the column names or stands above them. */
  #isAbove(cells: readonly string[]): boolean {
    const { headers, headerRow } = this.#place;
    this.#rowNumber += 1;
    if (this.#rowNumber === headerRow) {
      this.#headerTexts = headers.map((_, index) => foldText(cells[index] ?? null));
      this.#usedTexts = this.#headerTexts.map((text, index) => (this.wanted.used[index] ? text : ""));
    }
    return this.#rowNumber <= headerRow;
  }

  #keepBlank(): void {
    this.#blankCount += 1;
    if (this.#blank.length < SKIPPED_LISTED) this.#blank.push(skippedRow(this.#rowNumber, "blank row", []));
  }
}

/** The cells with those that are read made plain; of 200 columns mostly a few are. */
function toCells(cells: RawCell[], used: readonly number[]): readonly RawCell[] {
  for (const index of used) {
    const cell = cells[index];
    if (typeof cell === "string") cells[index] = cell === "" ? null : unguardFormula(cell);
  }
  return cells;
}
