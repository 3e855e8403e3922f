import writeWorkbook from "write-excel-file/node";
import type { FieldKind } from "@/lib/intake/field";
import { findField, REGISTERS, type RegisterKey } from "@/lib/intake/registers";
import { encodeText } from "@/lib/intake/textEncoding";
import { writeCsv } from "@/lib/intake/writeCsv";
import type { Habits } from "@/seed/registerFiles/habits";
import { headerOf } from "@/seed/registerFiles/headers";
import type { RegisterRow } from "@/seed/registerFiles/registerRow";
import { wordFor } from "@/seed/registerFiles/words";

type Value = RegisterRow[string];

interface Column {
  readonly key: string;
  readonly kind: FieldKind;
  readonly header: string;
}

function columnsOf(register: RegisterKey, rows: readonly RegisterRow[], { language }: Habits): Column[] {
  return Object.keys(rows[0] ?? {}).map((key) => {
    const field = findField(REGISTERS[register], key);
    if (!field) throw new RangeError(`key must be a field of ${register}, got ${key}`);
    const header =
      register === "lifecycle" || register === "scans" ? field.label : headerOf(register, language, key);
    return { key, kind: field.kind, header };
  });
}

function dayText(day: string, { dateShape }: Habits): string {
  const [year = "", month = "", date = ""] = day.split("-");
  if (dateShape === "m/d/Y") return `${Number(month)}/${Number(date)}/${year}`;
  if (dateShape === "d/m/Y") return `${date}/${month}/${year}`;
  return dateShape === "d.m.Y" ? `${date}.${month}.${year}` : day;
}

function timeText(time: string, habits: Habits): string {
  const [day = "", clock = ""] = time.split("T");
  const [hour = 0, minute = 0] = clock.split(":").map(Number);
  const half = `${hour % 12 === 0 ? 12 : hour % 12}:${String(minute).padStart(2, "0")} ${hour < 12 ? "AM" : "PM"}`;
  return `${dayText(day, habits)} ${habits.clock === "12 h" ? half : clock}`;
}

type CellWriter = (value: string | number | boolean, habits: Habits) => string;

const asWritten: CellWriter = (value) => String(value);
const asNumber: CellWriter = (value, { decimalMark }) => String(value).replace(".", decimalMark);

const WRITERS: Readonly<Partial<Record<FieldKind, CellWriter>>> = {
  decimal: asNumber,
  percent: asNumber,
  date: (value, habits) => dayText(String(value), habits),
  dateTime: (value, habits) => timeText(String(value), habits),
  choice: (value, { language }) => wordFor(String(value), language),
  boolean: (value, { language }) => wordFor(String(value), language),
  partNumber: (value, { dashes }) => (dashes ? String(value) : String(value).replaceAll("-", "")),
};

/** A value as a site writes it into a text file; empty for what is not known. */
export function writtenCell(value: Value | undefined, kind: FieldKind, habits: Habits): string {
  return value === null || value === undefined ? "" : (WRITERS[kind] ?? asWritten)(value, habits);
}

function writeText(columns: readonly Column[], rows: readonly RegisterRow[], habits: Habits): Uint8Array {
  const table = [
    columns.map(({ header }) => header),
    ...rows.map((row) => columns.map(({ key, kind }) => writtenCell(row[key], kind, habits))),
  ];
  const text = writeCsv(table, { separator: habits.separator });
  return encodeText(habits.marked ? `\uFEFF${text}` : text, habits.encoding);
}

function workbookCell(value: Value | undefined, kind: FieldKind, { language }: Habits) {
  if (value === null || value === undefined) return null;
  if (kind === "date") return { value: new Date(`${value}T00:00:00.000Z`), type: Date, format: "yyyy-mm-dd" };
  if (kind === "dateTime")
    return { value: new Date(`${value}:00.000Z`), type: Date, format: "yyyy-mm-dd hh:mm" };
  if (kind === "choice" || kind === "boolean")
    return { value: wordFor(String(value), language), type: String };
  return typeof value === "number" ? { value, type: Number } : { value: String(value), type: String };
}

async function writeSheet(
  columns: readonly Column[],
  rows: readonly RegisterRow[],
  habits: Habits,
): Promise<Uint8Array> {
  const head = columns.map(({ header }) => ({ value: header, type: String, fontWeight: "bold" as const }));
  const body = rows.map((row) => columns.map(({ key, kind }) => workbookCell(row[key], kind, habits)));
  return writeWorkbook([head, ...body], { stickyRowsCount: 1 }).toBuffer();
}

/** The bytes of a register file as the site would export it. */
export async function writeRegister(
  register: RegisterKey,
  rows: readonly RegisterRow[],
  habits: Habits,
): Promise<Uint8Array> {
  const columns = columnsOf(register, rows, habits);
  return habits.format === "workbook" ? writeSheet(columns, rows, habits) : writeText(columns, rows, habits);
}
