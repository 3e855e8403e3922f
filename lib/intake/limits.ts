/**
 * What a file may have at most before it is refused, so that no file can hold up or fill the machine. The rows,
 * columns and letters of a cell are those a spreadsheet itself can hold (common practice, no source); the rest
 * is chosen here, no source.
 */
export const LIMITS = {
  /** Columns of a row. */
  columns: 16_384,
  /** Rows of a sheet. */
  rows: 1_048_576,
  /** Letters of one cell. */
  cellLetters: 32_767,
  /** Cells of a file held at once, blank ones between others counted. */
  cells: 6_000_000,
  /** Letters of one row of text. */
  rowLetters: 4_000_000,
  /** Parts in the archive of a workbook. */
  archiveParts: 5_000,
  /** Bytes a workbook may unpack to, declared or really. */
  unpackedBytes: 400 * 1024 * 1024,
  /** Blank rows between one row and the next: a stray entry far below is a slip, not a row. */
  blankRows: 20_000,
} as const;

/** Whole numbers in a sentence, with groups of three. */
export function grouped(value: number): string {
  return value.toLocaleString("en-GB");
}

/** A file that cannot be read, with the sentence for the person who loads it: what is wrong, where, and the cure. */
export class UnreadableFile extends Error {}
