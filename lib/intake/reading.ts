/** What a cell of a file holds: text, a number, a yes or no, or nothing. Dates of a workbook come as ISO text. */
export type RawCell = string | number | boolean | null;

/** What is odd about a cell and what a person should do about it. */
export type Caution = { problem: string; remedy: string };

/**
 * The outcome of reading one cell.
 * `value`: read; `inferred` when the cell says less than the value does; a caution goes to the person.
 * `missing`: nothing there, or nothing that is known; a caution when that was not said plainly.
 * `refused`: something is there that cannot be taken over.
 */
export type Reading<T> =
  | { state: "value"; value: T; inferred: boolean; caution: Caution | null }
  | { state: "missing"; caution: Caution | null }
  | ({ state: "refused" } & Caution);

/** A value as plainly written. */
export function read<T>(value: T): Reading<T> {
  return { state: "value", value, inferred: false, caution: null };
}

/** A value concluded from a cell that says less; the caution tells how. */
export function infer<T>(value: T, caution: Caution | null): Reading<T> {
  return { state: "value", value, inferred: true, caution };
}

/** Nothing known. */
export function missing(caution: Caution | null = null): { state: "missing"; caution: Caution | null } {
  return { state: "missing", caution };
}

/** Something that cannot be taken over. */
export function refuse(problem: string, remedy: string): { state: "refused" } & Caution {
  return { state: "refused", problem, remedy };
}

/** Letters, digits and marks of the keyboard with single spaces between: as a person sees it already. */
const PLAIN = /^(?:[\x21-\x7e]+(?: [\x21-\x7e]+)*)?$/;

/** The cell as a person sees it, with odd spaces, widths and control characters made plain. */
export function plainText(cell: RawCell): string {
  if (cell === null) return "";
  const text = String(cell);
  // Nearly every cell of a long file; the steps below would leave it as it is.
  if (PLAIN.test(text)) return text;
  return (
    text
      .normalize("NFKC")
      // Control characters and zero-width marks come with copies from documents and hide differences.
      .replace(/[\p{Cc}\p{Cf}]+/gu, " ")
      .replace(/\s+/gu, " ")
      .trim()
  );
}
