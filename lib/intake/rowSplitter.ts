import { grouped, LIMITS, UnreadableFile } from "@/lib/intake/limits";

interface Field {
  readonly value: string;
  /** Where the separator or the end of the line stands that ends it. */
  readonly end: number;
}

interface Given {
  readonly text: string;
  readonly isLast: boolean;
}

interface Line {
  readonly at: number;
  readonly end: number;
  readonly marks: Marks;
}

interface Cut {
  readonly cells: string[];
  /** Where the next row begins. */
  readonly next: number;
}

/** What stands for a cell that is filled and not read. */
export const UNREAD = "…";

/** Which cells of a row are wanted; the others are not taken out of the text. */
export interface WantedCells {
  /** By place of the column. */
  readonly used: readonly boolean[];
  /** Whether all cells of a row are wanted nevertheless, told by those that are. */
  readonly needsAll: (cells: readonly string[]) => boolean;
}

/**
 * Parts the text of a long file into rows of cells as it comes, by the rules of RFC 4180 and, like the reading of short
 * files, bearing with quotation marks inside plain cells and rows of any width. A line ends with LF, CR or both.
 *
 * A line without a quotation mark is cut at its separators, which is nearly all of a long file.
 */
export class RowSplitter {
  readonly #separator: string;
  readonly #wanted: WantedCells | null;
  #rest = "";
  #rows = 0;
  #endedByReturn = false;

  constructor(separator: string, wanted: WantedCells | null = null) {
    this.#separator = separator;
    this.#wanted = wanted;
  }

  /**
   * The rows that are whole by now.
   *
   * @param isLast Whether no text follows: what is left then is the last row.
   * @throws UnreadableFile naming the row, when a quotation mark is left open or a row is too wide to be one.
   */
  push(text: string, isLast: boolean): string[][] {
    let whole = this.#rest + text;
    // A pair of CR and LF that two pieces of text part is one end of line.
    if (this.#endedByReturn && whole.startsWith("\n")) whole = whole.slice(1);
    if (whole !== "") this.#endedByReturn = false;
    const rows: string[][] = [];
    const cut = this.#cutRows(whole, isLast, rows);
    this.#rest = isLast ? "" : whole.slice(cut);
    if (this.#rest === "" && whole.endsWith("\r") && !isLast) this.#endedByReturn = true;
    if (this.#rest.length > LIMITS.rowLetters) throw openQuotation(this.#rows + 1);
    return rows;
  }

  /** Fills the rows. @returns where the first row begins that is not whole. */
  #cutRows(text: string, isLast: boolean, rows: string[][]): number {
    const marks = new Marks(text);
    let at = 0;
    while (at < text.length) {
      const end = marks.lineEnd(at);
      if (end === -1 && !isLast) return at;
      const row = this.#cutRow({ text, isLast }, { at, end: end === -1 ? text.length : end, marks });
      if (row === null) return at;
      rows.push(row.cells);
      at = row.next;
      this.#rows += 1;
      if (row.cells.length > LIMITS.columns) throw tooWide(this.#rows);
    }
    return at;
  }

  /** Reads one row, whose line ends at `end` unless a quotation goes beyond it; null when it is not whole yet. */
  #cutRow({ text, isLast }: Given, { at, end, marks }: Line): Cut | null {
    const quotation = marks.quotation(at);
    if (quotation === -1 || quotation >= end)
      return { cells: this.#plainRow(text, at, end), next: afterLine(text, end) };
    return this.#quotedRow({ text, isLast }, at);
  }

  #plainRow(text: string, at: number, end: number): string[] {
    const cells = this.#wanted && this.#wantedCells(text, at, end);
    if (cells && !this.#wanted?.needsAll(cells)) return cells;
    return text.slice(at, end).split(this.#separator);
  }

  /** Of 200 columns mostly a few are read; the letters of the others stay where they are. */
  #wantedCells(text: string, start: number, end: number): string[] {
    const used = this.#wanted?.used ?? [];
    const cells: string[] = [];
    for (let at = start; ; ) {
      const found = text.indexOf(this.#separator, at);
      const stop = found === -1 || found > end ? end : found;
      if (used[cells.length]) cells.push(text.slice(at, stop));
      else cells.push(stop > at ? UNREAD : "");
      if (stop === end) return cells;
      at = stop + 1;
    }
  }

  #quotedRow({ text, isLast }: Given, start: number): Cut | null {
    const cells: string[] = [];
    for (let at = start; ; ) {
      const field = text[at] === '"' ? this.#quotedField(text, at, isLast) : this.#plainField(text, at);
      if (field === null) return null;
      cells.push(field.value);
      if (text[field.end] === this.#separator) at = field.end + 1;
      else return field.end < text.length || isLast ? { cells, next: afterLine(text, field.end) } : null;
    }
  }

  #plainField(text: string, start: number): Field {
    let end = start;
    while (end < text.length && !this.#ends(text[end])) end += 1;
    return { value: text.slice(start, end), end };
  }

  #quotedField(text: string, start: number, isLast: boolean): Field | null {
    let value = "";
    let from = start + 1;
    for (;;) {
      const mark = text.indexOf('"', from);
      if (mark === -1) {
        if (isLast) throw openQuotation(this.#rows + 1);
        return null;
      }
      value += text.slice(from, mark);
      if (text[mark + 1] === '"') {
        value += '"';
        from = mark + 2;
      } else return this.#closed(text, { value, mark }, isLast);
    }
  }

  /** After the closing mark comes an end; where text comes the marks were part of a plain cell. */
  #closed(text: string, { value, mark }: { readonly value: string; readonly mark: number }, isLast: boolean) {
    const after = mark + 1;
    if (after >= text.length) return isLast ? { value, end: after } : null;
    if (this.#ends(text[after])) return { value, end: after };
    const rest = this.#plainField(text, after);
    return { value: `"${value}"${rest.value}`, end: rest.end };
  }

  #ends(letter: string | undefined): boolean {
    return letter === this.#separator || letter === "\n" || letter === "\r";
  }
}

function openQuotation(row: number): UnreadableFile {
  return new UnreadableFile(
    `Row ${grouped(row)}: a quotation mark is left open. Close it, or take it out, and load the file again`,
  );
}

function tooWide(row: number): UnreadableFile {
  return new UnreadableFile(
    `Row ${grouped(row)} has more than ${grouped(LIMITS.columns)} columns. Check what parts the columns, and load the file again`,
  );
}

function afterLine(text: string, end: number): number {
  return text[end] === "\r" && text[end + 1] === "\n" ? end + 2 : end + 1;
}

/** Where the next line end and the next quotation mark stand, each looked for once. */
class Marks {
  readonly #text: string;
  #feed: number;
  #return: number;
  #quotation: number;

  constructor(text: string) {
    this.#text = text;
    this.#feed = text.indexOf("\n");
    this.#return = text.indexOf("\r");
    this.#quotation = text.indexOf('"');
  }

  lineEnd(from: number): number {
    if (this.#feed !== -1 && this.#feed < from) this.#feed = this.#text.indexOf("\n", from);
    if (this.#return !== -1 && this.#return < from) this.#return = this.#text.indexOf("\r", from);
    if (this.#feed === -1 || this.#return === -1) return Math.max(this.#feed, this.#return);
    return Math.min(this.#feed, this.#return);
  }

  quotation(from: number): number {
    if (this.#quotation !== -1 && this.#quotation < from) this.#quotation = this.#text.indexOf('"', from);
    return this.#quotation;
  }
}
