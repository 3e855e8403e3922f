import readWorkbook from "read-excel-file/node";
import { beforeAll, describe, expect, test } from "vitest";
import { paperText } from "@/lib/reports/pdf/paperText";
import { reportPdf } from "@/lib/reports/pdf/reportPdf";
import { reportSlides } from "@/lib/reports/reportSlides";
import { reportWorkbook } from "@/lib/reports/reportWorkbook";
import { basisText, cellsOf } from "@/lib/view/reportCell";
import type { ReportDocument, ReportTable } from "@/lib/view/reportDocument";
import { readPdf, readSlides, tight } from "@/test/support/readReportFiles";
import { crowded, DANGEROUS, FOREIGN, sample } from "@/test/support/reportSample";

const ADDRESS = "https://plant.example";
// ISO 216: A4 is 210 mm × 297 mm; ANSI Letter is 8.5 in × 11 in; a point is 1/72 in.
const SHEETS = { A4: [595.28, 841.89], LETTER: [612, 792] } as const;

const blocksOf = ({ pages }: ReportDocument) => pages.flatMap(({ blocks }) => blocks);
const tables = blocksOf(sample).filter((block): block is ReportTable => block.kind === "table");
const textsOf = (table: ReportTable) => table.rows.map((row) => cellsOf(table, row).map(({ text }) => text));

describe.each(["A4", "LETTER"] as const)("the report as a PDF on %s", (size) => {
  let pages: Awaited<ReturnType<typeof readPdf>>;
  beforeAll(async () => {
    pages = await readPdf(await reportPdf(sample, { address: ADDRESS, size }));
  });

  test("says every value of the document, in letters that can be read out", () => {
    const said = pages.map(({ text }) => tight(text));
    sample.pages.forEach(({ blocks }, place) => {
      for (const block of blocks) {
        const texts = block.kind === "table" ? textsOf(block).flat() : block.items.map(({ text }) => text);
        for (const text of texts) expect(said[place]).toContain(tight(paperText(text)));
      }
    });
    expect(said[0]).toContain(tight(FOREIGN));
    expect(said[0]).toContain(tight("€ 398 k expected stop loss in the next twelve months, € 200–760 k"));
  });

  test("lies on two sheets of that paper, each with what it rests on and its number", () => {
    expect(pages).toHaveLength(2);
    pages.forEach(({ text, width, height }, place) => {
      expect(width).toBeCloseTo(SHEETS[size][0], 1);
      expect(height).toBeCloseTo(SHEETS[size][1], 1);
      expect(tight(text)).toContain(tight(paperText(basisText(sample.basis))));
      expect(text).toContain(`Page ${place + 1} of 2`);
    });
    expect(pages[1]?.text).toContain("never to justify running an unsafe machine");
  });

  test("leads from every figure to its page, and nowhere else", () => {
    const links = pages.flatMap(({ links: own }) => own);
    for (const table of tables)
      for (const row of table.rows)
        for (const { href } of cellsOf(table, row)) expect(links).toContain(`${ADDRESS}${href}`);
    expect(links.every((link) => link.startsWith(ADDRESS))).toBe(true);
  });

  test.each([
    ["a site's", sample, 2],
    ["a group's", { ...sample, pages: [{ title: "All", blocks: blocksOf(sample) }] }, 1],
  ] as const)("keeps %s pages however long the words are", async (_, report, sheets) => {
    const full = crowded(report, 16);
    expect(await readPdf(await reportPdf(full, { address: ADDRESS, size }))).toHaveLength(sheets);
  });
});

describe("the report as slides", () => {
  let slides: ReturnType<typeof readSlides>;
  beforeAll(async () => {
    slides = readSlides(await reportSlides(sample, ADDRESS));
  });

  test("has the tables of the document as tables, cell by cell", () => {
    const [first, lines, projects] = slides.tables;
    expect(first).toEqual([]);
    [lines, projects].forEach((rows, place) => {
      const table = tables[place];
      if (!table) throw new Error("no table");
      expect(rows).toEqual([table.columns.map(({ title }) => title), ...textsOf(table)]);
    });
  });

  test("has charts of numbers that can be edited, and no picture", () => {
    const [table] = tables;
    const { series = [] } = table?.chart ?? {};
    expect(slides.charts).toHaveLength(1);
    slides.charts[0]?.forEach(({ name, labels, values }, place) => {
      expect(name).toBe(series[place]?.name);
      expect(labels).toEqual(table && textsOf(table).map(([label]) => label));
      expect(values.map((value) => (value === "" ? null : Number(value)))).toEqual(series[place]?.values);
    });
    expect(slides.names.filter((name) => /embeddings\/.*\.xlsx$/.test(name))).toHaveLength(1);
    expect(slides.names.filter((name) => /\.(png|jpe?g|gif|svg|emf)$/.test(name))).toEqual([]);
  });

  test("takes names for names, and leads only to the app", () => {
    for (const text of DANGEROUS) expect(slides.texts.some((one) => one.includes(text))).toBe(true);
    expect(slides.links.length).toBeGreaterThan(20);
    expect(slides.links.every((link) => link.startsWith(ADDRESS))).toBe(true);
  });
});

describe("the report as a workbook", () => {
  let sheets: Awaited<ReturnType<typeof readWorkbook>>;
  const sheet = (name: string) => sheets.find((one) => one.sheet === name)?.data ?? [];
  beforeAll(async () => {
    sheets = await readWorkbook(Buffer.from(await reportWorkbook(sample, ADDRESS)));
  });

  test("has what it rests on, with its day and numbers as such", () => {
    const facts = new Map(sheet("Report").map((row) => [row[0], row]));
    expect(facts.get("As of")?.[3]).toEqual(new Date("2026-11-30T00:00:00.000Z"));
    expect(facts.get("Data version")?.[2]).toBe(42);
    expect(facts.get("Stop loss a year, expected, EUR")?.[2]).toBe(398_123.4);
    expect(facts.get("Of")?.[1]).toBe(sample.scope);
  });

  test("has each value as a number or a day, unrounded, and nothing where it is not known", () => {
    const [heads, ...rows] = sheet("Lines");
    expect(heads).toEqual([
      ...["Line", "Stop loss a year, EUR", "Low (5 %), EUR", "High (95 %), EUR", "Share", "Empty from"],
      ...["Empty from, in words", "Stage", "Page"],
    ]);
    expect(rows[2]?.slice(1)).toEqual([
      ...[123_458.75, 123_458.75 / 2, 123_458.75 * 1.9, 0.1, new Date("2027-01-12T00:00:00.000Z")],
      ...["12 Jan 2027 – overdue", "F Own stock", `${ADDRESS}/lines/L-2`],
    ]);
    expect([rows[0]?.[4], rows[1]?.[5], rows[1]?.[6]]).toEqual([null, null, "already"]);
    expect(
      sheet("Projects")
        .slice(1)
        .map((row) => row.slice(0, 6)),
    ).toEqual([
      ["KAR-02-R1", 4_900_000, "SEK", 0.75, 0.79, 12],
      ["VEL-09-R1", null, "EUR", null, 1, null],
    ]);
  });

  test("runs no name", () => {
    const names = sheet("Lines")
      .slice(1)
      .map(([name]) => String(name));
    const decisions = sheet("Decisions asked for")
      .slice(1)
      .map(([text]) => String(text));
    for (const text of [...names, ...decisions]) expect(text).not.toMatch(/^[=+\-@\t\r]/);
    expect(names.slice(0, 5)).toEqual(["'=1+1", "'+1", "'-1", "'@SUM(A1)", "'\tcmd"]);
    expect(names).toContain(FOREIGN);
  });
});
