import type { RegisterKey } from "@/lib/intake/registers";

/** Problems of files as they are, by number: what registers, exports and lists of real plants suffer from. */
export const PROBLEMS = {
  1: "part numbers spelled in several ways",
  2: "revision or series behind the number",
  3: "order number, nameplate and storeroom number",
  4: "scientific notation, zeros lost",
  5: "decimal and thousands marks",
  6: "dates in many shapes",
  7: "units beside the number",
  8: "currency signs",
  9: "encodings and separators",
  10: "titles, two header rows, totals, headings",
  11: "formulas, error cells, injected code",
  12: "rows twice",
  13: "counts that are none",
  14: "sets instead of pieces",
  15: "firmware levels",
  16: "states of pieces",
  18: "words of five languages",
  19: "times of a stop that cannot be",
  20: "stand-ins for not known",
  21: "classes under other names",
  22: "short texts cut off, without a number",
  23: "devices nobody registered",
  24: "columns in another order",
  25: "stock below zero",
  26: "very wide files",
} as const;

export type ProblemNumber = keyof typeof PROBLEMS;

/**
 * What a cell means, from the truth the generator knows, whatever is written in it: the value, null for not known,
 * or the part it looks like, which may only be suggested. A part is its number with ` rev. ` and the revision.
 */
export type Meant = string | number | boolean | null | { readonly looksLike: string };

export interface KeyCell {
  readonly field: string;
  readonly means: Meant;
  /** The problem the cell shows; null when it is written plainly. */
  readonly problem: ProblemNumber | null;
}

/** One row below the column names as it has to be taken. */
export interface KeyRow {
  /** As a spreadsheet numbers it. */
  readonly rowNumber: number;
  /** `none`: no entry at all, such as a total; `refused`: must stay out with a reason. */
  readonly outcome: "entry" | "refused" | "none";
  /** Problems of the row as a whole. */
  readonly problem: ProblemNumber | null;
  readonly cells: readonly KeyCell[];
}

/** A dirty register file with the truth about each of its rows. */
export interface DirtyFile {
  readonly name: string;
  readonly register: RegisterKey;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** What a person of the site answers when the file is asked about. */
  readonly answers: {
    readonly decimalMark: "point" | "comma";
    readonly dateOrder: "dayFirst" | "monthFirst";
  };
  readonly rows: readonly KeyRow[];
  /** All problems the file shows. */
  readonly problems: readonly ProblemNumber[];
}
