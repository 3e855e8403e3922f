import { parse } from "csv-parse/sync";
import { unzipSync } from "fflate";
import readFileOfSheets from "read-excel-file/node";
import { expect, test } from "vitest";
import { csvTable } from "@/lib/reports/table/csvTable";
import { jsonTable } from "@/lib/reports/table/jsonTable";
import { xlsxTable } from "@/lib/reports/table/xlsxTable";
import type { ExportColumn, ExportRow, ExportTable } from "@/lib/view/exportTable";

const columns: readonly ExportColumn[] = [
  { key: "id", title: "Id", kind: "id" },
  { key: "note", title: "Note", kind: "text" },
  { key: "hours", title: "Downtime", kind: "number", unit: "h" },
  { key: "price", title: "Price", kind: "money", currency: "of:currency" },
  { key: "currency", title: "Currency", kind: "text" },
  { key: "on", title: "Day", kind: "date" },
  { key: "at", title: "Happened", kind: "instant" },
  { key: "sure", title: "Sure", kind: "yes-no" },
  { key: "more", title: "More", kind: "json" },
];
const rows: readonly ExportRow[] = [
  [
    "a1",
    '=1+1, "quoted"\nnew line',
    0.1,
    -1234.5,
    "CZK",
    "2026-11-30",
    "2026-11-30T06:07:08.000Z",
    true,
    '{"a":[1]}',
  ],
  ["a2", "Příliš <b>&</b> \u0000\ud800", null, null, null, null, null, false, null],
];

async function* each<T>(values: readonly T[]) {
  yield* values;
}
const table = (of = rows): ExportTable => ({ name: "things", title: "Things", columns, rows: each(of) });

/** Rows of a sheet as another library reads them. */
const readWorkbook = async (bytes: Buffer, { sheet } = { sheet: 1 }) =>
  (await readFileOfSheets(bytes))[sheet - 1]?.data ?? [];

async function whole(pieces: AsyncIterable<Buffer>): Promise<Buffer> {
  const all: Buffer[] = [];
  for await (const piece of pieces) all.push(piece);
  return Buffer.concat(all);
}

test("CSV has units in its heads and guards what a spreadsheet would run", async () => {
  const text = (await whole(csvTable(table()))).toString("utf8");
  expect(
    text.startsWith('\uFEFFId,Note,"Downtime, h",Price,Currency,Day,"Happened, UTC",Sure,More\r\n'),
  ).toBe(true);
  const [, first, second] = parse(text, { bom: true });
  expect(first).toEqual([
    "a1",
    `'=1+1, "quoted"\nnew line`,
    "0.1",
    "-1234.5",
    "CZK",
    "2026-11-30",
    "2026-11-30T06:07:08.000Z",
    "yes",
    '{"a":[1]}',
  ]);
  expect(second?.slice(2, 7)).toEqual(["", "", "", "", ""]);
});

test("JSON names each column once and each value by its key", async () => {
  const read = JSON.parse((await whole(jsonTable(table()))).toString("utf8"));
  expect(read.columns).toEqual(columns);
  expect(read.rows[0]).toEqual({
    id: "a1",
    note: '=1+1, "quoted"\nnew line',
    hours: 0.1,
    price: -1234.5,
    currency: "CZK",
    on: "2026-11-30",
    at: "2026-11-30T06:07:08.000Z",
    sure: true,
    more: { a: [1] },
  });
  expect(read.rows[1].hours).toBeNull();
  expect(JSON.parse((await whole(jsonTable(table([])))).toString("utf8")).rows).toEqual([]);
});

test("XLSX has real numbers, days, instants and yes or no, read back by another library", async () => {
  const bytes = await whole(xlsxTable(table()));
  const [head, first, second] = await readWorkbook(bytes);
  expect(head?.slice(0, 3)).toEqual(["Id", "Note", "Downtime, h"]);
  expect(first).toEqual([
    "a1",
    `'=1+1, "quoted"\nnew line`,
    0.1,
    -1234.5,
    "CZK",
    new Date("2026-11-30T00:00:00Z"),
    new Date("2026-11-30T06:07:08Z"),
    true,
    '{"a":[1]}',
  ]);
  expect(second?.[1]).toBe("Příliš <b>&</b> \uFFFD\uFFFD");
  const files = unzipSync(bytes);
  const styles = Buffer.from(files["xl/styles.xml"] ?? []).toString();
  expect(styles).toContain('formatCode="[$CZK] #,##0.00"');
  expect(Buffer.from(files["xl/worksheets/sheet1.xml"] ?? []).toString()).not.toContain("<f>");
});

test("XLSX goes on on another sheet where one is full, and keeps an empty list readable", async () => {
  const many = Array.from({ length: 5 }, (_, at): ExportRow => [String(at), "x"]);
  const bytes = await whole(xlsxTable(table(many), 3));
  expect((await readFileOfSheets(bytes)).map(({ sheet }) => sheet)).toEqual([
    "Things",
    "Things 2",
    "Things 3",
  ]);
  expect((await readWorkbook(bytes, { sheet: 3 })).map(([id]) => id)).toEqual(["Id", "4"]);
  expect(await readWorkbook(await whole(xlsxTable(table([]))))).toHaveLength(1);
});

test("XLSX cuts what no cell holds and says so; days no calendar of a sheet has stay text", async () => {
  const [, row] = await readWorkbook(
    await whole(xlsxTable(table([["a", "x".repeat(40_000), 1, 1, "EUR", "1850-01-01", null, null, null]]))),
  );
  expect(String(row?.[1])).toHaveLength(32_767);
  expect(String(row?.[1])).toMatch(/whole as CSV or JSON\)$/);
  expect(row?.[5]).toBe("1850-01-01");
});
