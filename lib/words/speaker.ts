import { type Pattern, pattern } from "@/lib/words/pattern";

/** English to another language; places are `{0}`, `{1}` … */
export type Catalogue = Readonly<Record<string, string>>;

/** Puts an English text into the reader's words; what the catalogue does not hold stays as it is. */
export type Speaker = (text: string) => string;

/** Texts kept with what they came to; a page shows few different ones again and again. */
const KEPT = 20_000;

/** Where a text made of several may be taken apart, the wider cuts first. */
const CUTS = [/(\s[·|→–]\s|\n)/u, /(?<=[.!?])(\s+)(?=\S)/u, /(; )/u, /(: )/u, /(, )/u, /( \(|\) |\)$)/u];

const A_WORD = /\p{L}{2}/u;

/**
 * A function from English to the language of a catalogue.
 *
 * A text is looked up whole; else the pattern with the most written-out letters that fits gives the sentence, and what
 * stands in its places is put into words itself; else the text is taken apart at its punctuation.
 */
export function makeSpeaker(catalogue: Catalogue): Speaker {
  const patterns = patternsByWord(catalogue);
  const kept = new Map<string, string>();
  const whole = new Map(Object.entries(catalogue).filter(([english]) => !english.includes("{0}")));

  function say(text: string): string {
    if (!A_WORD.test(text)) return text;
    const known = kept.get(text);
    if (known !== undefined) return known;
    const said = exactly(text) ?? byPattern(text) ?? inPieces(text);
    if (kept.size >= KEPT) kept.clear();
    kept.set(text, said);
    return said;
  }

  function exactly(shown: string): string | null {
    const text = shown.replace(/\s/g, " ");
    const found = whole.get(text);
    if (found !== undefined) return found;
    const first = text.charAt(0);
    const lower = first.toLowerCase();
    const small = first === lower ? undefined : whole.get(lower + text.slice(1));
    return small === undefined ? null : small.charAt(0).toUpperCase() + small.slice(1);
  }

  function byPattern(text: string): string | null {
    for (const candidate of candidatesOf(text, patterns)) {
      const places = candidate.fits(text);
      if (!places) continue;
      const said = places.map(say);
      // Two or three letters of glue fit many a name: something in it must be known, or be a number.
      if (candidate.isGlue && !said.some((place, at) => place !== places[at] || !A_WORD.test(place)))
        continue;
      return candidate.put(said);
    }
    return null;
  }

  function inPieces(text: string): string {
    const edge = /^(\s*)(.*?)([\s.:,;…]*)$/su.exec(text);
    const [, before = "", middle = "", after = ""] = edge ?? [];
    if (middle !== text && middle !== "") return before + say(middle) + after;
    for (const cut of CUTS) {
      const pieces = text.split(cut);
      if (pieces.length > 1) return pieces.map((piece) => (piece === "" ? "" : say(piece))).join("");
    }
    return text;
  }

  return say;
}

/** Each pattern under the rarest of its written-out words; under "" those that have none. */
function patternsByWord(catalogue: Catalogue): Map<string, Pattern[]> {
  const made = Object.entries(catalogue)
    .filter(([english]) => english.includes("{0}"))
    .map(([english, other]) => pattern(english, other));
  const seen = new Map<string, number>();
  for (const { words } of made) for (const word of words) seen.set(word, (seen.get(word) ?? 0) + 1);
  const byWord = new Map<string, Pattern[]>();
  for (const one of made) {
    const rarest = [...one.words].sort((a, b) => (seen.get(a) ?? 0) - (seen.get(b) ?? 0))[0] ?? "";
    const there = byWord.get(rarest);
    if (there) there.push(one);
    else byWord.set(rarest, [one]);
  }
  return byWord;
}

function candidatesOf(text: string, patterns: ReadonlyMap<string, readonly Pattern[]>): Pattern[] {
  const words = new Set(["", ...(text.match(/\p{L}+/gu) ?? [])]);
  return [...words].flatMap((word) => patterns.get(word) ?? []).sort((a, b) => b.letters - a.letters);
}
