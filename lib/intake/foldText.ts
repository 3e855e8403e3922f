import { plainText, type RawCell } from "@/lib/intake/reading";

/** Words met last: a long file says the same ones over and over. */
const known = new Map<string, string>();
const MOST_KNOWN = 5_000;
const LONGEST_KNOWN = 60;

/**
 * A word without case, accents, punctuation and brackets' marks: "Stillstand [h]" → "stillstand h".
 * Two headers or choices that fold alike are the same word.
 */
export function foldText(cell: RawCell): string {
  const text = plainText(cell);
  if (/^[a-z0-9]*$/.test(text)) return text;
  const met = known.get(text);
  if (met !== undefined) return met;
  const folded = fold(text);
  if (text.length > LONGEST_KNOWN) return folded;
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(text, folded);
  return folded;
}

function fold(text: string): string {
  return (
    text
      .toLowerCase()
      .normalize("NFKD")
      .replace(/\p{M}+/gu, "")
      // These letters have no accent to take off, yet are written without it as often.
      .replace(/ł/g, "l")
      .replace(/ß/g, "ss")
      .replace(/[^\p{L}\p{N}]+/gu, " ")
      .trim()
  );
}
