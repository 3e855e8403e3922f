import { checkRow, type Problem, type Values } from "@/lib/intake/checkRow";
import type { Dialect } from "@/lib/intake/dialect";
import type { Field } from "@/lib/intake/field";
import { findRepeats, identify, markUnit } from "@/lib/intake/findRepeats";
import { type Customs, type FieldValue, readCell } from "@/lib/intake/readCell";
import type { DatePrecision } from "@/lib/intake/readDate";
import { plainText, type RawCell, type Reading } from "@/lib/intake/reading";
import { findField, type Register } from "@/lib/intake/registers";
import type { Body, BodyRow } from "@/lib/intake/splitBody";
import type { Mapping } from "@/lib/intake/suggestMapping";

/** One row as read. `values` has every field of the register; null is not known. */
export type ReadRow = {
  rowNumber: number;
  values: Values;
  /** Fields whose cell says less than the value: partial dates, estimates, converted units. */
  inferred: string[];
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
export type ReadPlan = { register: Register; mapping: Mapping; dialect: Dialect };

type Column = { index: number; header: string; field: Field; customs: Customs };

const SERIAL_PAIRS = [
  ["drivePart", "driveSerial"],
  ["motorPart", "motorSerial"],
  ["itemPart", "itemSerial"],
] as const;

function listColumns(headers: readonly string[], { register, mapping, dialect }: ReadPlan): Column[] {
  return headers.flatMap((header, index) => {
    const key = Object.hasOwn(mapping, header) ? (mapping[header] ?? null) : null;
    const field = key === null ? null : findField(register, key);
    if (field === null) return [];
    const own = Object.hasOwn(dialect.columns, header) ? dialect.columns[header] : undefined;
    const customs = {
      decimalMark: own?.decimalMark ?? dialect.decimalMark,
      dateOrder: own?.dateOrder ?? dialect.dateOrder,
    };
    return [{ index, header, field, customs }];
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

function readRow(row: BodyRow, columns: readonly Column[], register: Register): ReadRow {
  const values: Record<string, FieldValue> = Object.fromEntries(
    register.fields.map((field) => [field.key, null]),
  );
  const precision: Record<string, DatePrecision | "minute"> = {};
  const inferred: string[] = [];
  const problems: Problem[] = [];
  for (const column of columns) {
    const cell = row.cells[column.index] ?? null;
    const read = readCell(cell, column.field, column.customs);
    problems.push(...tellProblems(read.reading, column, cell));
    if (read.reading.state !== "value") continue;
    values[column.field.key] = read.reading.value;
    if (read.reading.inferred) inferred.push(column.field.key);
    const whole = column.field.kind === "dateTime" ? "minute" : "day";
    if (read.precision !== null && read.precision !== whole) precision[column.field.key] = read.precision;
  }
  const headerOf = new Map(columns.map((column) => [column.field.key, column.header]));
  const between = leaveOutRefused(checkRow(register, values), problems);
  problems.push(...between.map((one) => ({ ...one, column: headerOf.get(one.field ?? "") ?? null })));
  return { rowNumber: row.rowNumber, values, inferred, precision, problems, state: stateOf(problems) };
}

/** Adds to each row that repeats another what the caller says about it. */
function noteRepeats(
  rows: readonly ReadRow[],
  markOf: (values: Values) => string | null,
  note: (first: number) => Problem,
) {
  findRepeats(rows, markOf).forEach((first, index) => {
    const row = rows[index];
    if (first === null || row === undefined) return;
    row.problems.push(note(first));
    row.state = stateOf(row.problems);
  });
}

function noteAllRepeats(rows: readonly ReadRow[], register: Register): void {
  noteRepeats(
    rows,
    (values) => identify(values, register.identity),
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
      (values) => markUnit(values, partField, serialField),
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
 */
export function readRegister(body: Body, plan: ReadPlan): RegisterReading {
  const columns = listColumns(body.headers, plan);
  const rows = body.rows.map((row) => readRow(row, columns, plan.register));
  noteAllRepeats(rows, plan.register);
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
