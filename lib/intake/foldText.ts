import { plainText, type RawCell } from "@/lib/intake/reading";

/**
 * A word without case, accents, punctuation and brackets' marks: "Stillstand [h]" → "stillstand h".
 * Two headers or choices that fold alike are the same word.
 */
export function foldText(cell: RawCell): string {
  return (
    plainText(cell)
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
