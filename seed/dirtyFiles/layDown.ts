import { columnLetters } from "@/lib/intake/columnLetters";
import type { RegisterKey } from "@/lib/intake/registers";
import { encodeText } from "@/lib/intake/textEncoding";
import type { DirtyFile, KeyRow, ProblemNumber } from "@/seed/dirtyFiles/answerKey";
import type { DirtyCell, DirtyRow } from "@/seed/dirtyFiles/spoil";
import { escapeXml, writtenWorkbook } from "@/seed/dirtyFiles/workbookFile";
import type { Habits } from "@/seed/registerFiles/habits";

/** How a file is laid out around its entries. */
export interface Layout {
  readonly titles: readonly string[];
  /** Names of groups above the column names, by the first column of each; a workbook merges them. */
  readonly groups?: Readonly<Record<number, string>>;
  /** Headings before an entry, by its place. */
  readonly headings?: Readonly<Record<number, string>>;
  /** Entries after which a blank row stands. */
  readonly blankAfter?: readonly number[];
  /** Entries written a second time right after. */
  readonly twice?: readonly number[];
  /** Entries before which the column names stand again. */
  readonly namesBefore?: readonly number[];
  readonly total?: string;
  /** Columns that mean nothing, behind the others. */
  readonly idleColumns?: number;
  /** Entries whose row is hidden; a workbook only. */
  readonly hidden?: readonly number[];
}

interface Line {
  readonly cells: readonly DirtyCell[];
  readonly key: Omit<KeyRow, "rowNumber"> | null;
  readonly isHidden: boolean;
}

const NONE = { outcome: "none", problem: 10, cells: [] } as const;
const plain = (cells: readonly DirtyCell[], key: Line["key"] = null): Line => ({
  cells,
  key,
  isHidden: false,
});

interface Entries {
  readonly rows: readonly DirtyRow[];
  readonly fields: readonly string[];
  readonly names: Line;
}

function entryLines({ rows, fields, names }: Entries, layout: Layout): Line[] {
  return rows.flatMap(({ cells, means, isRefused }, index) => {
    const written = fields.map((field) => cells[field] ?? "");
    const outcome = isRefused ? ("refused" as const) : ("entry" as const);
    const own = {
      cells: written,
      key: { outcome, problem: null, cells: means },
      isHidden: layout.hidden?.includes(index) ?? false,
    };
    const heading = layout.headings?.[index];
    return [
      ...(heading === undefined ? [] : [plain([heading], NONE)]),
      ...(layout.namesBefore?.includes(index) ? [plain(names.cells, NONE)] : []),
      own,
      ...(layout.twice?.includes(index)
        ? [plain(written, { outcome: "refused", problem: 12, cells: [] })]
        : []),
      ...(layout.blankAfter?.includes(index) ? [plain([], NONE)] : []),
    ];
  });
}

function quote(text: string, separator: string): string {
  return text.includes(separator) || /["\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Text without a guard against formulas: other programs write none. */
function asText(lines: readonly Line[], habits: Habits): Uint8Array<ArrayBuffer> {
  const text = lines
    .map(({ cells }) => {
      const written = cells.map((cell) => (typeof cell === "object" ? "" : String(cell)));
      return `${written.map((one) => quote(one, habits.separator)).join(habits.separator)}\r\n`;
    })
    .join("");
  return new Uint8Array(encodeText(habits.marked ? `\uFEFF${text}` : text, habits.encoding));
}

function cellXml(place: string, cell: DirtyCell): string {
  if (cell === "") return "";
  if (typeof cell === "number") return `<c r="${place}"><v>${cell}</v></c>`;
  if (typeof cell === "string")
    return `<c r="${place}" t="inlineStr"><is><t xml:space="preserve">${escapeXml(cell)}</t></is></c>`;
  if ("error" in cell) return `<c r="${place}" t="e"><v>${cell.error}</v></c>`;
  if ("digits" in cell) return `<c r="${place}" s="1"><v>${cell.digits}</v></c>`;
  const formula = `<f>${escapeXml(cell.formula)}</f>`;
  if (cell.shows === null) return `<c r="${place}">${formula}</c>`;
  const type = typeof cell.shows === "number" ? "" : ' t="str"';
  return `<c r="${place}"${type}>${formula}<v>${escapeXml(String(cell.shows))}</v></c>`;
}

function mergedXml(groups: Layout["groups"], row: number, width: number): string {
  const starts = Object.keys(groups ?? {}).map(Number);
  const areas = starts.flatMap((start, index) => {
    const end = (starts[index + 1] ?? width) - 1;
    return end > start
      ? [`<mergeCell ref="${columnLetters(start)}${row}:${columnLetters(end)}${row}"/>`]
      : [];
  });
  return areas.length === 0 ? "" : `<mergeCells>${areas.join("")}</mergeCells>`;
}

function asWorkbook(lines: readonly Line[], layout: Layout, sheet: string): Uint8Array<ArrayBuffer> {
  const rows = lines.map(({ cells, isHidden }, index) => {
    const inner = cells.map((cell, at) => cellXml(`${columnLetters(at)}${index + 1}`, cell)).join("");
    return `<row r="${index + 1}"${isHidden ? ' hidden="1"' : ""}>${inner}</row>`;
  });
  const width = Math.max(...lines.map(({ cells }) => cells.length));
  return writtenWorkbook({
    formats: ["00000000"],
    sheets: [
      {
        name: sheet,
        rows: rows.join(""),
        after: mergedXml(layout.groups, layout.titles.length + 1, width),
        comments: { A4: "ask the storeroom, two more in the cupboard" },
      },
      { name: "Old", state: "hidden", rows: '<row r="1"><c r="A1"><v>1</v></c></row>' },
    ],
  });
}

interface Told {
  readonly name: string;
  readonly register: RegisterKey;
  readonly habits: Habits;
  readonly fields: readonly string[];
  readonly headers: readonly string[];
  readonly problems: readonly ProblemNumber[];
}

function groupLine(groups: Layout["groups"], width: number): Line[] {
  if (!groups) return [];
  return [plain(Array.from({ length: width }, (_, index) => groups[index] ?? ""))];
}

/** Every file has something above or among its entries that is none. */
function problemsOf(rows: readonly KeyRow[], others: readonly ProblemNumber[]): ProblemNumber[] {
  const shown = rows.flatMap(({ problem, cells }) => [problem, ...cells.map((cell) => cell.problem)]);
  const numbers = new Set([...shown, ...others, 10 as const].filter((one) => one !== null));
  return [...numbers].sort((a, b) => a - b);
}

/** Writes the rows as a file of the site with everything around them, and the key of each row. */
export function layDown(rows: readonly DirtyRow[], told: Told, layout: Layout): DirtyFile {
  const { name, register, habits, fields, headers, problems } = told;
  const idle = Array.from({ length: layout.idleColumns ?? 0 }, (_, index) => `Reserve ${index + 1}`);
  const names = plain([...headers, ...idle]);
  const above = [...layout.titles.map((title) => plain([title])), ...groupLine(layout.groups, fields.length)];
  const lines = [...above, names, ...entryLines({ rows, fields, names }, layout)];
  if (layout.total !== undefined) lines.push(plain([layout.total, "", "42"], NONE));
  const entries = lines.flatMap(({ key }, index) => (key ? [{ ...key, rowNumber: index + 1 }] : []));
  return {
    name,
    register,
    bytes: habits.format === "workbook" ? asWorkbook(lines, layout, "Stand 11-2026") : asText(lines, habits),
    answers: {
      decimalMark: habits.decimalMark === "," ? "comma" : "point",
      dateOrder: habits.dateShape === "m/d/Y" ? "monthFirst" : "dayFirst",
    },
    rows: entries,
    problems: problemsOf(entries, problems),
  };
}
