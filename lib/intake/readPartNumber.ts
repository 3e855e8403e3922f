import { infer, plainText, type RawCell, type Reading, read, refuse } from "@/lib/intake/reading";

/**
 * A maker's number, parted from its hardware revision.
 *
 * `base`: upper case, one kind of dash. `revision`: letter and level, or null. `key`: base without separators,
 * what two spellings of one part share. `fullKey`: base and revision without separators; look it up first, for
 * a number that is known as a whole was never base and revision. `split`: "marked" when the file itself marks
 * the revision ("/C", "ser. C"), "pattern" when the last dashed group looks like one ("-B1"), "guess" when
 * there are no separators to go by, "none" when there is no revision.
 */
export type PartNumber = {
  base: string;
  revision: string | null;
  raw: string;
  key: string;
  fullKey: string;
  split: "marked" | "pattern" | "guess" | "none";
};

const LONGEST_NUMBER = 60;
const EXPONENT = /^\d(?:[.,]\d+)?e\+\d+$|^\d[.,]\d+e\d+$/i;
/** Words that mark a revision, in English, German, Polish, Swedish, Spanish, French and Italian. */
const REVISION_WORDS =
  "SERIES|SERIE|SERIA|SER|REVISION|REVISIÓN|REVISIONE|RÉVISION|REWIZJA|REV|HW|HARDWARESTAND|BAUSTAND|BAUZUSTAND|STAND|UTGÅVA|UTG|INDICE|IND|INDEX";
const MARKED = [
  new RegExp(
    `^(.+?)(?<!\\p{L})[\\s,;-]*\\(?(?:${REVISION_WORDS})(?!\\p{L})\\.?[\\s:]*([A-Z]\\d{0,2}|\\d{1,2})\\)?$`,
    "u",
  ),
  /^(.+?)\s*\/\s*([A-Z]\d{0,2})$/,
];
/** O, I and L before digits are digits written as letters more often than revisions, so they part nothing. */
const DASHED = /^(.+-.+)-([A-HJKMNP-Z]\d{1,2})$/;
const RUN_TOGETHER = /^([A-Z]{2,}\d{2,})([A-HJKMNP-Z]\d{1,2})$/;

/** A spelling without case and separators; applying it again changes nothing. */
export function partKey(text: string): string {
  return plainText(text)
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]+/gu, "");
}

/** A key with letters that look like digits put as digits; only for suggestions, never to merge. */
export function lookAlikeKey(key: string): string {
  return key.replace(/O/g, "0").replace(/[IL]/g, "1");
}

/** Known keys that differ from this one only by look-alike letters and digits. */
export function suggestLookAlikes(key: string, known: readonly string[]): string[] {
  const wanted = lookAlikeKey(key);
  return known.filter((other) => other !== key && lookAlikeKey(other) === wanted);
}

type Split = Pick<PartNumber, "base" | "revision" | "split">;

function dash(text: string): string {
  return text.replace(/[\s\p{Pd}−_]+/gu, "-").replace(/^-+|-+$/g, "");
}

function splitRevision(text: string): Split {
  for (const pattern of MARKED) {
    const match = pattern.exec(text);
    const base = dash(match?.[1] ?? "");
    if (match?.[2] && partKey(base) !== "") return { base, revision: match[2], split: "marked" };
  }
  const whole = dash(text);
  const dashed = DASHED.exec(whole);
  if (dashed?.[1] && dashed[2]) return { base: dashed[1], revision: dashed[2], split: "pattern" };
  const together = RUN_TOGETHER.exec(whole);
  if (together?.[1] && together[2]) return { base: together[1], revision: together[2], split: "guess" };
  return { base: whole, revision: null, split: "none" };
}

function fromText(raw: string): PartNumber | null {
  const parts = splitRevision(raw.toUpperCase());
  const key = partKey(parts.base);
  return key === "" ? null : { ...parts, raw, key, fullKey: key + partKey(parts.revision ?? "") };
}

function readNumberCell(cell: number): Reading<PartNumber> {
  const part = Number.isSafeInteger(cell) && cell > 0 && cell < 1e15 ? fromText(String(cell)) : null;
  if (part === null) {
    return refuse(
      "The part number is kept as a number; digits were lost",
      "Format the column as text in the file, enter the number again and load the file again",
    );
  }
  return infer(part, {
    problem: "The part number is kept as a number; zeros before it may have been lost",
    remedy: "Compare with the nameplate, and format the column as text in the file",
  });
}

/**
 * Reads a maker's number and parts it from its revision. Scientific notation is refused, since digits are lost;
 * look-alike letters are left as they are.
 */
export function readPartNumber(cell: RawCell): Reading<PartNumber> {
  if (typeof cell === "number") return readNumberCell(cell);
  const raw = plainText(cell);
  if (EXPONENT.test(raw)) {
    return refuse(
      "A spreadsheet turned the part number into scientific notation; digits were lost",
      "Format the column as text in the file, enter the number again and load the file again",
    );
  }
  if (raw.length > LONGEST_NUMBER)
    return refuse("This is too long for a part number", "Enter the number on the nameplate");
  const part = fromText(raw);
  if (part === null) return refuse("There is no letter or digit in it", "Enter the number on the nameplate");
  return part.split === "guess" ? infer(part, null) : read(part);
}
