import { checkRow, leaveOutAlone, type Problem, type Values } from "@/lib/intake/checkRow";
import type { Dialect } from "@/lib/intake/dialect";
import type { Field } from "@/lib/intake/field";
import { findRepeats, identify, markUnit, SeenMarks } from "@/lib/intake/findRepeats";
import { foldText } from "@/lib/intake/foldText";
import type { LearnedWords } from "@/lib/intake/learnedWords";
import { basisOf } from "@/lib/intake/quantityBasis";
import { type CellReading, type Customs, type FieldValue, readCell } from "@/lib/intake/readCell";
import type { DatePrecision } from "@/lib/intake/readDate";
import { plainText, type RawCell, type Reading, read } from "@/lib/intake/reading";
import { findField, type Register } from "@/lib/intake/registers";
import { currencyBeside } from "@/lib/intake/rowCurrency";
import { settleRow } from "@/lib/intake/settleRow";
import type { Body, BodyRow } from "@/lib/intake/splitBody";
import type { Mapping } from "@/lib/intake/suggestMapping";
import { unitOfHeader } from "@/lib/intake/units";

/** One row as read. `values` has every field of the register; null is not known. */
export type ReadRow = {
  rowNumber: number;
  values: Values;
  /** Fields whose cell says less than the value: partial dates, estimates, converted units. */
  inferred: string[];
  /** The words of cells of choices, folded: two valuation types may be one state. */
  words: Readonly<Record<string, string>>;
  /** How much of a date was written, for fields where it is not the whole. */
  precision: Readonly<Record<string, DatePrecision | "minute">>;
  problems: Problem[];
  state: "ok" | "warning" | "error";
};

export type RegisterReading = {
  rows: ReadRow[];
  /** What is wrong with the file as a whole: required columns without a header. */
  problems: Problem[];
  totals: { rows: number; ok: number; warnings: number; errors: number; skipped: number };
};

/** What a person confirmed before the file is read. */
export type ReadPlan = {
  register: Register;
  mapping: Mapping;
  dialect: Dialect;
  /** What the file's source was learned to mean by its words. */
  words?: LearnedWords;
};

type Column = { index: number; header: string; field: Field; customs: Customs; known: KnownCells };

/** Short texts of a column and how they were read: sites, lines and classes come again in row after row. */
class KnownCells {
  readonly #readings = new Map<string, CellReading>();

  reading(cell: RawCell, readAnew: () => CellReading): CellReading {
    if (typeof cell !== "string" || cell.length > LONGEST_KNOWN) return readAnew();
    const known = this.#readings.get(cell);
    if (known) return known;
    const reading = readAnew();
    // A column of references never comes again; it is not kept for longer than it takes to see that.
    if (this.#readings.size < MOST_KNOWN) this.#readings.set(cell, reading);
    return reading;
  }
}

const LONGEST_KNOWN = 40;
const MOST_KNOWN = 1_000;

/** Unit of amounts whose currency stands in the row. */
const ROW_CURRENCY = "currency of the row";

const SERIAL_PAIRS = [
  ["drivePart", "driveSerial"],
  ["motorPart", "motorSerial"],
  ["itemPart", "itemSerial"],
] as const;

function customsOf(header: string, field: Field, dialect: Dialect): Customs {
  const own = Object.hasOwn(dialect.columns, header) ? dialect.columns[header] : undefined;
  return {
    decimalMark: own?.decimalMark ?? dialect.decimalMark,
    dateOrder: own?.dateOrder ?? dialect.dateOrder,
    headerUnit: unitOfHeader(header, field.unit),
    quantity: basisOf(dialect.quantityBasis, header),
    ...(dialect.nullWords === undefined ? {} : { nullWords: dialect.nullWords }),
  };
}

function listColumns(headers: readonly string[], { register, mapping, dialect }: ReadPlan): Column[] {
  return headers.flatMap((header, index) => {
    const key = Object.hasOwn(mapping, header) ? (mapping[header] ?? null) : null;
    const field = key === null ? null : findField(register, key);
    if (field === null) return [];
    return [{ index, header, field, customs: customsOf(header, field, dialect), known: new KnownCells() }];
  });
}

function tellProblems(reading: Reading<FieldValue>, column: Column, cell: RawCell): Problem[] {
  const about = { column: column.header, field: column.field.key, found: plainText(cell) };
  if (reading.state === "refused") {
    return [{ ...about, problem: reading.problem, remedy: reading.remedy, severity: "error" }];
  }
  return reading.caution === null ? [] : [{ ...about, ...reading.caution, severity: "warning" }];
}

/** Where a cell was refused, its emptiness is no second problem. */
function leaveOutRefused(found: Omit<Problem, "column">[], problems: readonly Problem[]) {
  const refused = new Set(problems.filter((one) => one.severity === "error").map((one) => one.field));
  return found.filter((one) => !refused.has(one.field));
}

function stateOf(problems: readonly Problem[]): ReadRow["state"] {
  if (problems.some((problem) => problem.severity === "error")) return "error";
  return problems.length > 0 ? "warning" : "ok";
}

/** A cell of choices in a word its source was learned to use, else as its field says. */
function readLearned(
  cell: RawCell,
  { field, customs }: Column,
  words: LearnedWords | undefined,
): CellReading {
  const meaning =
    field.kind === "choice" ? (words?.meaningOf("choice", field.key, plainText(cell)) ?? null) : null;
  return meaning === null ? readCell(cell, field, customs) : { reading: read(meaning), precision: null };
}

/** What the cells of a row say one by one. */
class RowCells {
  readonly values: Record<string, FieldValue>;
  readonly words: Record<string, string> = {};
  readonly precision: Record<string, DatePrecision | "minute"> = {};
  readonly inferred: string[] = [];
  readonly problems: Problem[] = [];
  /** Fields whose cell holds something that says nothing: an error of a formula, a stand-in. */
  readonly unread = new Set<string>();
  /** The currency an amount carries; null is none. */
  currency: string | null = null;

  constructor(nothing: Values) {
    this.values = { ...nothing };
  }

  add(column: Column, cell: RawCell, { reading, precision }: CellReading): void {
    const { key, kind, unit } = column.field;
    if (unit === ROW_CURRENCY) this.currency ??= currencyBeside(cell);
    this.problems.push(...tellProblems(reading, column, cell));
    if (reading.state === "missing" && reading.caution !== null) this.unread.add(key);
    if (reading.state !== "value") return;
    this.values[key] = reading.value;
    if (kind === "choice") this.words[key] = foldText(cell);
    if (reading.inferred) this.inferred.push(key);
    const whole = kind === "date" ? "day" : "minute";
    if (precision !== null && precision !== whole) this.precision[key] = precision;
  }
}

interface RowPlan extends ReadPlan {
  readonly columns: readonly Column[];
  /** Every field of the register, none of them known. */
  readonly nothing: Values;
}

function readRow(row: BodyRow, plan: RowPlan): ReadRow {
  const { columns } = plan;
  const cells = new RowCells(plan.nothing);
  for (const column of columns) {
    const cell = row.cells[column.index] ?? null;
    cells.add(
      column,
      cell,
      column.known.reading(cell, () => readLearned(cell, column, plan.words)),
    );
  }
  const settled = settleRow(cells.values, { beside: cells.currency, words: plan.words });
  const alone = leaveOutAlone(plan.register, { ...cells.values, ...settled.values }, cells.unread);
  const { values } = alone;
  const headerOf = (key: string | null) => columns.find(({ field }) => field.key === key)?.header ?? null;
  const between = [
    ...settled.problems,
    ...alone.problems,
    ...leaveOutRefused(checkRow(plan.register, values), cells.problems),
  ].map((one) => ({ ...one, column: headerOf(one.field) }));
  const problems = [...cells.problems, ...between];
  const { words, precision } = cells;
  const inferred = [...cells.inferred, ...settled.inferred];
  return { rowNumber: row.rowNumber, values, inferred, words, precision, problems, state: stateOf(problems) };
}

/** Adds to each row that repeats another what the caller says about it. */
function noteRepeats(
  rows: readonly ReadRow[],
  { markOf, seen }: { markOf: (row: ReadRow) => string | null; seen: Map<string, number> },
  note: (first: number) => Problem,
) {
  findRepeats(rows, markOf, seen).forEach((first, index) => {
    const row = rows[index];
    if (first === null || row === undefined) return;
    row.problems.push(note(first));
    row.state = stateOf(row.problems);
  });
}

function noteAllRepeats(rows: readonly ReadRow[], register: Register, seen: SeenMarks): void {
  noteRepeats(
    rows,
    { markOf: (row) => identify({ ...row.values, ...row.words }, register.identity), seen: seen.of("entry") },
    (first) => ({
      column: null,
      field: null,
      found: `same as row ${first}`,
      problem: `Row ${first} already gives this entry`,
      remedy: "Keep one of the two rows, or tell them apart in the file",
      severity: "error",
    }),
  );
  for (const [partField, serialField] of SERIAL_PAIRS) {
    noteRepeats(
      rows,
      { markOf: ({ values }) => markUnit(values, partField, serialField), seen: seen.of(partField) },
      (first) => ({
        column: null,
        field: serialField,
        found: `same as row ${first}`,
        problem: `Row ${first} has the same part and serial number; one unit cannot be in two places`,
        remedy: "Read both nameplates and correct the wrong row",
        severity: "warning",
      }),
    );
  }
}

function findMissingColumns(columns: readonly Column[], register: Register): Problem[] {
  const mapped = new Set(columns.map((column) => column.field.key));
  return register.fields
    .filter((field) => field.required && !mapped.has(field.key))
    .map((field) => ({
      column: null,
      field: field.key,
      found: "",
      problem: `No column is chosen for “${field.label}”`,
      remedy: "Choose the column that holds it, or add one to the file",
      severity: "error",
    }));
}

/**
 * Reads the rows of a file into a register by a confirmed mapping and dialect. A problem names row, column,
 * what was found and what to do. Rows with an error are to be left out of a commit, the others may be taken.
 *
 * @param seen Marks of the rows read before, when a file is read in pieces.
 */
export function readRegister(body: Body, plan: ReadPlan, seen: SeenMarks = new SeenMarks()): RegisterReading {
  const columns = listColumns(body.headers, plan);
  const nothing = Object.fromEntries(plan.register.fields.map((field) => [field.key, null]));
  const rowPlan = { ...plan, columns, nothing };
  const rows = body.rows.map((row) => readRow(row, rowPlan));
  noteAllRepeats(rows, plan.register, seen);
  const count = (state: ReadRow["state"]) => rows.filter((row) => row.state === state).length;
  return {
    rows,
    problems: findMissingColumns(columns, plan.register),
    totals: {
      rows: rows.length,
      ok: count("ok"),
      warnings: count("warning"),
      errors: count("error"),
      skipped: body.skipped.length,
    },
  };
}
