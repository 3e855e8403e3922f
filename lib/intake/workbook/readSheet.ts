import { grouped, LIMITS, UnreadableFile } from "@/lib/intake/limits";
import type { RawCell } from "@/lib/intake/reading";
import { showNumber } from "@/lib/intake/workbook/cellFormats";
import { fillMerged, type Span, spanOf } from "@/lib/intake/workbook/merged";
import { readPart, type SheetPart, unescapeLetters, type Workbook } from "@/lib/intake/workbook/parts";

/** What a sheet holds beside its values, as far as it bears on them. */
export interface SheetFacts {
  hiddenRows: number;
  hiddenColumns: number;
  merged: number;
  formulas: number;
  /** Formulas without a value worked out, and the first of them. */
  unworked: number;
  firstUnworked: string | null;
}

export interface ReadSheet {
  readonly rows: RawCell[][];
  readonly facts: SheetFacts;
}

/** In place of a value nobody worked out: read as a spreadsheet's error, so that the row says so. */
const NOT_WORKED_OUT = "#CALC!";

interface OpenCell {
  readonly column: number;
  readonly place: string;
  readonly type: string;
  readonly style: number;
  text: string;
  hasValue: boolean;
  hasFormula: boolean;
}

/** Column of a place such as AB12, from 0; null when it is none. */
function columnOf(place: string): number | null {
  const letters = /^[A-Z]{1,3}/.exec(place)?.[0];
  if (letters === undefined) return null;
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

class SheetReader {
  readonly rows: RawCell[][] = [];
  readonly merged: Span[] = [];
  readonly facts: SheetFacts = {
    ...{ hiddenRows: 0, hiddenColumns: 0, merged: 0 },
    ...{ formulas: 0, unworked: 0, firstUnworked: null },
  };
  readonly #workbook: Workbook;
  readonly #name: string;
  #cells = 0;
  #row: RawCell[] = [];
  #cell: OpenCell | null = null;
  #isText = false;
  #isGuide = false;

  constructor(workbook: Workbook, name: string) {
    this.#workbook = workbook;
    this.#name = name;
  }

  open(name: string, attribute: (name: string) => string | null): void {
    if (name === "c") this.#openCell(attribute);
    else if (name === "v" || (name === "t" && !this.#isGuide)) this.#isText = this.#cell !== null;
    else if (name === "rPh") this.#isGuide = true;
    else if (name === "f" && this.#cell) this.#cell.hasFormula = true;
    else if (name === "row") this.#openRow(attribute);
    else if (name === "mergeCell") this.#noteMerged(attribute("ref") ?? "");
    else if (name === "col" && isOn(attribute("hidden")))
      this.facts.hiddenColumns += Math.min(
        LIMITS.columns,
        Number(attribute("max")) - Number(attribute("min")) + 1,
      );
  }

  text(more: string): void {
    if (!this.#isText || !this.#cell) return;
    this.#cell.hasValue = true;
    this.#cell.text += more;
    if (this.#cell.text.length > LIMITS.cellLetters)
      throw this.#refuse(
        `Cell ${this.#cell.place}`,
        `holds more than ${grouped(LIMITS.cellLetters)} letters. Shorten it`,
      );
  }

  close(name: string): void {
    if (name === "v" || name === "t") this.#isText = false;
    else if (name === "rPh") this.#isGuide = false;
    else if (name === "c") this.#closeCell();
  }

  #refuse(where: string, what: string): UnreadableFile {
    return new UnreadableFile(`${where} of sheet “${this.#name}” ${what} and load the file again`);
  }

  #count(cells: number): void {
    this.#cells += cells;
    if (this.#cells > LIMITS.cells)
      throw this.#refuse(
        `Row ${grouped(this.rows.length)}`,
        `is where more than ${grouped(LIMITS.cells)} cells are reached. Save the sheet as .csv, or split it,`,
      );
  }

  #openRow(attribute: (name: string) => string | null): void {
    const last = this.rows.length;
    const number = Number(attribute("r") ?? last + 1);
    if (!Number.isSafeInteger(number) || number <= last || number > LIMITS.rows)
      throw this.#refuse(`A row after row ${grouped(last)}`, "has no proper number. Save the workbook anew");
    if (number - last > LIMITS.blankRows)
      throw this.#refuse(
        `Row ${grouped(number)}`,
        `stands below ${grouped(number - last - 1)} blank rows. Delete it, or move it up,`,
      );
    this.#count(number - last);
    while (this.rows.length < number - 1) this.rows.push([]);
    this.#row = [];
    this.rows.push(this.#row);
    if (isOn(attribute("hidden"))) this.facts.hiddenRows += 1;
  }

  #openCell(attribute: (name: string) => string | null): void {
    const place = attribute("r");
    const column = place === null ? this.#row.length : columnOf(place);
    const at = place ?? `in row ${this.rows.length}`;
    if (column === null || column < this.#row.length || column >= LIMITS.columns)
      throw this.#refuse(
        `Cell ${at}`,
        `is out of order or beyond ${grouped(LIMITS.columns)} columns. Move what it holds to the left,`,
      );
    this.#count(column - this.#row.length + 1);
    while (this.#row.length < column) this.#row.push(null);
    const [type, style] = [attribute("t") ?? "n", Number(attribute("s") ?? 0)];
    this.#cell = { column, place: at, type, style, text: "", hasValue: false, hasFormula: false };
  }

  #closeCell(): void {
    const cell = this.#cell;
    if (!cell) return;
    this.#cell = null;
    if (cell.hasFormula) this.facts.formulas += 1;
    if (cell.hasFormula && !cell.hasValue) {
      this.facts.unworked += 1;
      this.facts.firstUnworked ??= cell.place;
    }
    this.#row.push(this.#valueOf(cell));
  }

  #valueOf({ place, type, text, style, hasValue, hasFormula }: OpenCell): RawCell {
    if (!hasValue) return hasFormula ? NOT_WORKED_OUT : null;
    if (type === "s") return this.#textAt(Number(text), place);
    if (type === "b") return text === "1" || text === "true";
    if (type === "d") return text.replace(/(T\d{2}:\d{2}).*$/, "$1");
    return type === "n" ? this.#numberOf(text, style) : unescapeLetters(text) || null;
  }

  #textAt(index: number, place: string): string | null {
    const text = this.#workbook.strings[index];
    if (text === undefined)
      throw this.#refuse(`Cell ${place}`, "names a text the workbook does not hold. Save the workbook anew");
    return text || null;
  }

  #numberOf(text: string, style: number): RawCell {
    const { formats, from1904 } = this.#workbook;
    const value = text.trim() === "" ? Number.NaN : Number(text);
    if (!Number.isFinite(value)) return text;
    return showNumber(value, formats[style] ?? { shows: "number" }, from1904);
  }

  #noteMerged(reference: string): void {
    this.facts.merged += 1;
    const span = spanOf(reference, columnOf);
    if (span) this.merged.push(span);
  }
}

const isOn = (flag: string | null) => flag === "1" || flag === "true";

/**
 * Reads a sheet as it is shown. Formulas give the value last worked out and are never run; a value merged over
 * several rows stands in each of them; hidden rows are read like the others.
 *
 * @throws UnreadableFile
 */
export function readSheet(workbook: Workbook, { name, part }: SheetPart): ReadSheet {
  const reader = new SheetReader(workbook, name);
  readPart(workbook.archive, part, reader);
  fillMerged(reader.rows, reader.merged);
  return { rows: reader.rows, facts: reader.facts };
}
