import { columnLetters } from "@/lib/intake/columnLetters";
import { foldText } from "@/lib/intake/foldText";
import { plainText, type RawCell } from "@/lib/intake/reading";
import type { Register } from "@/lib/intake/registers";

/** Where the column names stand: row numbers as a spreadsheet shows them, and how many rows they take. */
export type HeaderPlace = { row: number; lines: 1 | 2 };

type Row = readonly RawCell[];

const ROWS_LOOKED_AT = 30;

function filledTexts(row: Row): string[] {
  return row.map(foldText).filter((text) => text !== "");
}

function knownWords(register: Register): Set<string> {
  return new Set(
    register.fields.flatMap((field) => [field.label, field.key, ...field.synonyms]).map(foldText),
  );
}

/** Known column names count most; then the number of cells with letters. Data rows carry numbers and repeat. */
function rate(row: Row, words: ReadonlySet<string>): number {
  const texts = filledTexts(row);
  const bare = row.map((cell) => foldText(plainText(cell).replace(/[([{].*?[)\]}]/g, " ")));
  const known = bare.filter(
    (text, index) => words.has(text) || words.has(foldText(row[index] ?? null)),
  ).length;
  const lettered = texts.filter((text) => /\p{L}/u.test(text)).length;
  return texts.length < 2 ? 0 : known * 10 + lettered / texts.length;
}

/** Two rows of names: group names above, and names that repeat below them ("Part no.", "Serial" twice). */
function hasGroupRow(above: Row | undefined, header: Row): boolean {
  if (above === undefined) return false;
  const names = filledTexts(header);
  const groups = filledTexts(above);
  return groups.length >= 2 && groups.length < names.length && new Set(names).size < names.length;
}

/** Entries have figures in them, names have none. */
function isOfNames(row: Row): boolean {
  return filledTexts(row).every((text) => !/\p{N}/u.test(text));
}

/** Finds the row with the column names among the first thirty; row 1 when none stands out. */
export function findHeader(rows: readonly Row[], register: Register): HeaderPlace {
  const words = knownWords(register);
  let best = { index: 0, rating: 0 };
  rows.slice(0, ROWS_LOOKED_AT).forEach((row, index) => {
    const rating = rate(row, words);
    if (rating > best.rating) best = { index, rating };
  });
  const header = rows[best.index] ?? [];
  const below = rows[best.index + 1] ?? [];
  // The names of the groups may be the words that are known: then the names proper stand below.
  if (hasGroupRow(header, below) && isOfNames(below)) return { row: best.index + 2, lines: 2 };
  const above = best.index > 0 ? rows[best.index - 1] : undefined;
  return { row: best.index + 1, lines: hasGroupRow(above, header) ? 2 : 1 };
}

/** A merged group name stands in its first cell only; the cells after it belong to it. */
function spreadGroups(row: Row, width: number): string[] {
  let current = "";
  return Array.from({ length: width }, (_, index) => {
    const text = plainText(row[index] ?? null);
    if (text !== "") current = text;
    return current;
  });
}

function makeUnique(names: readonly string[]): string[] {
  const used = new Set<string>();
  const next = new Map<string, number>();
  return names.map((name) => {
    let unique = name;
    let count = next.get(name) ?? 2;
    for (; used.has(unique); count += 1) unique = `${name} (${count})`;
    next.set(name, count);
    used.add(unique);
    return unique;
  });
}

/**
 * The column names: of two header rows the group name goes before, columns without a name are called by
 * their letters, and a name that repeats gets a number. No two are alike.
 */
export function readHeaders(rows: readonly Row[], place: HeaderPlace): string[] {
  const header = rows[place.row - 1] ?? [];
  const above = place.lines === 2 ? (rows[place.row - 2] ?? []) : [];
  const width = Math.max(header.length, ...rows.slice(place.row, place.row + 200).map((row) => row.length));
  const groups = spreadGroups(above, width);
  const names = Array.from({ length: width }, (_, index) => {
    const [group = "", own] = [groups[index], plainText(header[index] ?? null)];
    // A name merged over both rows stands in each of them and is said once.
    const name = group === own ? own : `${group} ${own}`.trim();
    return name === "" ? `Column ${columnLetters(index)}` : name;
  });
  return makeUnique(names);
}
