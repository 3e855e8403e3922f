import type { ReportBlock, ReportCell, ReportDocument, ReportTable } from "@/lib/view/reportDocument";
import { column, pair, tableOf, words } from "@/lib/view/reportTable";

/** What a spreadsheet or a page might run, and marks that XML and HTML take for their own. */
export const DANGEROUS = [
  "=1+1",
  "+1",
  "-1",
  "@SUM(A1)",
  "\tcmd",
  `<script>alert("x")</script>`,
  "A & B <b> 'c'",
] as const;

/** A name with letters beyond those of Western Europe, which are set from a second alphabet. */
export const FOREIGN = "Łódź, Říčany, Győr";

const span = (mean: number) => ({ low: mean / 2, mean, high: mean * 1.9 });

const lines: ReportTable = {
  ...tableOf({
    title: "Lines",
    href: "/lines",
    columns: [
      column("Line", "text", 4),
      column("Stop loss a year", "money", 2),
      column("Range (5–95 %)", "span", 4),
      column("Share", "share", 2),
      column("Empty from", "date", 3),
      column("Stage", "stage", 3),
    ],
    rows: [...DANGEROUS, FOREIGN].map((name, place) => ({
      key: name,
      cells: [
        words(name, `/lines/L-${place}`),
        { kind: "money", value: 123_456.75 + place },
        { kind: "span", span: span(123_456.75 + place) },
        { kind: "share", value: place === 0 ? null : place / 20, none: "–" },
        place === 1
          ? { kind: "date", on: null, none: "already" }
          : { kind: "date", on: `2027-01-1${place}`, ...(place === 2 ? { mark: "overdue" } : {}) },
        { kind: "stage", stage: place % 2 === 0 ? "own-stock" : "undated" },
      ] satisfies ReportCell[],
    })),
    ...{ most: 20, things: ["line", "lines"], none: "None." },
  }),
  chart: {
    title: "Stop loss",
    unit: "EUR a year",
    series: [
      {
        name: "Low & <low>",
        values: [...DANGEROUS, FOREIGN].map((_, place) => (place === 3 ? null : place * 10)),
      },
      { name: "Expected", values: [...DANGEROUS, FOREIGN].map((_, place) => 123_456.75 + place) },
    ],
  },
};

const projects = tableOf({
  title: "Projects",
  href: "/projects",
  columns: [
    column("Project", "text", 4),
    column("Budget", "local", 3),
    column("Cost index / schedule index", "pair", 3),
    column("Units", "number", 2),
  ],
  rows: [
    {
      key: "a",
      cells: [
        words("KAR-02-R1", "/projects/KAR-02-R1"),
        { kind: "local", value: 4_900_000, currency: "SEK" },
        pair([0.75, 0.79], { share: false, places: 2, none: "not defined" }),
        { kind: "number", value: 12, places: 0 },
      ],
    },
    {
      key: "b",
      cells: [
        words("VEL-09-R1", "/projects/VEL-09-R1"),
        { kind: "local", value: null, currency: "EUR" },
        pair([null, 1], { share: false, places: 2, none: "not defined" }),
        { kind: "number", value: null, places: 0 },
      ],
    },
  ],
  ...{ most: 5, things: ["project", "projects"], none: "None." },
});

const decisions: ReportBlock = {
  kind: "list",
  title: "Decisions asked for",
  items: DANGEROUS.map((text, place) => ({ text, href: place === 0 ? null : `/dates?n=${place}` })),
  ...{ none: "None.", note: null, half: false },
};

/** A report with every kind of value, known and not, and names that try to be more than names. */
export const sample: ReportDocument = {
  ...{ form: 1, kind: "monthly", period: "2026-11", title: "Monthly report, Nov 2026", siteCode: "VEL" },
  scope: `VEL ${FOREIGN}`,
  basis: {
    ...{ asOf: "2026-11-30", dataVersion: 42, engine: "ebbline-3", seed: 20261130 },
    assumptions: "assumptions likely, version 1",
  },
  headline: {
    ...{ loss: span(398_123.4), shortage: 231_000.5, words: "in nine of ten draws", href: "/lines" },
    sentences: ["27 stops a year are expected on 9 lines."],
  },
  pages: [
    { title: "Risk", blocks: [lines] },
    { title: "Work", blocks: [projects, decisions] },
  ],
  cautions: [
    { title: "Caution", text: "Estimates from sparse records; never to justify running an unsafe machine." },
  ],
};

/** The sample with every table full of long words, as many as a report has at most. */
export function crowded(report: ReportDocument, rows: number): ReportDocument {
  const long = "A long description of what is to be done by whom before the window opens ".repeat(3);
  const full = (block: ReportBlock): ReportBlock =>
    block.kind === "list"
      ? { ...block, items: Array.from({ length: 8 }, (_, at) => ({ text: `${at} ${long}`, href: "/x" })) }
      : {
          ...block,
          rows: Array.from({ length: rows }, (_, at) => {
            const cells = block.rows[at % block.rows.length]?.cells ?? [];
            return { key: `${at}`, cells: [words(`${at} ${long}`), ...cells.slice(1)] };
          }),
        };
  return { ...report, pages: report.pages.map((page) => ({ ...page, blocks: page.blocks.map(full) })) };
}
