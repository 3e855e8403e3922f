import type { Problem } from "@/lib/intake/checkRow";
import type { Dialect, DialectFinding } from "@/lib/intake/dialect";
import { plainText } from "@/lib/intake/reading";
import type { ReadRow } from "@/lib/intake/readRegister";
import { findField, type Register } from "@/lib/intake/registers";
import type { Body } from "@/lib/intake/splitBody";
import type { Mapping, MappingSuggestion } from "@/lib/intake/suggestMapping";
import { cellWord } from "@/lib/view/importWords";

/** Rows shown of a file before it is loaded. */
export const ROWS_SHOWN = 200;
/** Problems handed to the page; the count is of all. */
export const PROBLEMS_SHOWN = 2_000;

/** One column of the file, with the field it is read into and the field it looks like. */
export interface ImportColumn {
  readonly header: string;
  readonly samples: readonly string[];
  readonly field: string | null;
  readonly suggested: string | null;
  /** Likeness of header and suggested field, 0 to 1. */
  readonly score: number;
}

/** A custom of the file with what its values tell of it. */
export interface ImportCustom {
  readonly custom: DialectFinding["ask"][number];
  /** A question no value answers, still open, or answered by a person; else told by the values. */
  readonly state: "open" | "answered" | "told" | "plain";
  /** The way the file is read by now. */
  readonly choice: string;
  /** What a person said; null when nobody did. */
  readonly answer: string | null;
  readonly ambiguous: number;
  readonly total: number;
  readonly examples: readonly string[];
  /** Columns whose values do not tell. */
  readonly columns: readonly string[];
}

export interface RowProblem extends Problem {
  readonly rowNumber: number;
}

export interface PreviewRow {
  readonly rowNumber: number;
  readonly state: ReadRow["state"];
  readonly cells: readonly { readonly text: string; readonly inferred: boolean }[];
}

export interface PreviewTotals {
  readonly rows: number;
  readonly ok: number;
  readonly warning: number;
  readonly error: number;
}

const SAMPLES = 3;
const LONGEST_SAMPLE = 60;
const CUSTOMS = ["decimalMark", "dateOrder"] as const;
const UNDECIDED = ["ambiguous", "conflict"];

type Custom = (typeof CUSTOMS)[number];

/** The columns of the file in their order, each with up to three different values. */
export function listColumns(
  body: Body,
  mapping: Mapping,
  suggestions: readonly MappingSuggestion[],
): ImportColumn[] {
  return body.headers.map((header, index) => ({
    header,
    samples: sampleColumn(body, index),
    field: Object.hasOwn(mapping, header) ? (mapping[header] ?? null) : null,
    suggested: suggestions[index]?.field ?? null,
    score: suggestions[index]?.score ?? 0,
  }));
}

function sampleColumn({ rows }: Body, index: number): string[] {
  const samples = new Set<string>();
  for (const { cells } of rows) {
    const text = plainText(cells[index] ?? null).slice(0, LONGEST_SAMPLE);
    if (text !== "") samples.add(text);
    if (samples.size === SAMPLES) break;
  }
  return [...samples];
}

/** How numbers and dates are read, and on whose word. */
export function listCustoms(
  finding: DialectFinding,
  dialect: Dialect,
  open: DialectFinding["ask"],
): ImportCustom[] {
  const basis = listBasis(finding, dialect);
  const others = CUSTOMS.map((custom): ImportCustom => {
    const { ambiguous, total, examples } = finding[custom];
    const columns = undecidedColumns(finding, custom);
    return {
      custom,
      state: stateOf(finding, custom, open),
      choice: dialect[custom],
      answer: answerOf(finding, dialect, custom),
      ambiguous,
      total,
      examples,
      columns,
    };
  });
  return basis === null ? others : [...others, basis];
}

/** What quantities count, where the file leaves it open. */
function listBasis({ quantityBasis }: DialectFinding, dialect: Dialect): ImportCustom | null {
  const { state, ambiguous, total, examples, columns } = quantityBasis;
  if (state === "plain") return null;
  const answer = dialect.quantityBasis ?? null;
  return {
    ...{ custom: "quantityBasis", state: answer === null ? "open" : "answered", choice: answer ?? "total" },
    ...{ answer, ambiguous, total, examples, columns },
  };
}

function undecidedColumns({ columns }: DialectFinding, custom: Custom): string[] {
  const undecided = columns.filter((column) => UNDECIDED.includes(column[custom]?.state ?? ""));
  return undecided.map((column) => column.header);
}

function stateOf(
  finding: DialectFinding,
  custom: Custom,
  open: DialectFinding["ask"],
): ImportCustom["state"] {
  if (open.includes(custom)) return "open";
  if (finding.ask.includes(custom)) return "answered";
  return finding[custom].state === "plain" ? "plain" : "told";
}

/** What a person said: for the columns that do not tell, or against what the file tells. */
function answerOf(finding: DialectFinding, dialect: Dialect, custom: Custom): string | null {
  if (finding.ask.includes(custom)) {
    const [first = ""] = undecidedColumns(finding, custom);
    return Object.hasOwn(dialect.columns, first) ? (dialect.columns[first]?.[custom] ?? null) : null;
  }
  return dialect[custom] === finding.proposal[custom] ? null : dialect[custom];
}

/** The first rows as read, in the order of the file's columns. */
export function previewRows(
  rows: readonly ReadRow[],
  { headers }: Body,
  { mapping, register }: { readonly mapping: Mapping; readonly register: Register },
): { readonly labels: readonly string[]; readonly rows: readonly PreviewRow[] } {
  const fields = headers.flatMap((header) => findField(register, mapping[header] ?? "") ?? []);
  return {
    labels: fields.map(({ label, unit }) => (unit === null ? label : `${label} (${unit})`)),
    rows: rows.slice(0, ROWS_SHOWN).map((row) => ({
      rowNumber: row.rowNumber,
      state: row.state,
      cells: fields.map(({ key, kind }) => ({
        text: cellWord(row.values[key], kind),
        inferred: row.inferred.includes(key),
      })),
    })),
  };
}

/** Rows by what was found against them. */
export function countRows(rows: readonly ReadRow[]): PreviewTotals {
  const count = (state: ReadRow["state"]) => rows.filter((row) => row.state === state).length;
  return { rows: rows.length, ok: count("ok"), warning: count("warning"), error: count("error") };
}

/** All problems of all rows, errors before warnings, then by row. */
export function listProblems(rows: readonly ReadRow[]): RowProblem[] {
  const all = rows.flatMap(({ rowNumber, problems }) => problems.map((one) => ({ rowNumber, ...one })));
  const weight = (one: RowProblem) => (one.severity === "error" ? 0 : 1);
  return all.sort((a, b) => weight(a) - weight(b) || a.rowNumber - b.rowNumber);
}
