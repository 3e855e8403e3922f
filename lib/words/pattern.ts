/** A sentence with places, in English and in another language. */
export interface Pattern {
  /** Words written out in the English sentence, whole ones only. */
  readonly words: readonly string[];
  /** The more, the less it fits by chance: letters written out, and words it begins with. */
  readonly weight: number;
  /** It begins with a place. */
  readonly beginsOpen: boolean;
  /** So few letters that it fits by chance. */
  readonly isGlue: boolean;
  /** What stands in the places of a text; null where it does not fit. */
  readonly fits: (text: string) => readonly string[] | null;
  /** The sentence of the other language with its places filled. */
  readonly put: (places: readonly string[]) => string;
}

const GLUE_LETTERS = 8;
const ANCHORED_GLUE = 5;
/** Words at the beginning are worth so many letters further on. */
const ANCHOR_LETTERS = 20;
const PLACE = /\{(\d+)\}/;

/**
 * The two sides of a catalogue's entry with places, such as `{0} of {1} counted`.
 *
 * @param english Places numbered in order from 0.
 * @param other   The same places in any order.
 */
export function pattern(english: string, other: string): Pattern {
  const parts = english.split(/\{\d+\}/);
  const letters = parts.join("").match(/\p{L}/gu)?.length ?? 0;
  const isAnchored = /\p{L}/u.test(parts[0] ?? "");
  return {
    words: wholeWords(english),
    weight: letters + (isAnchored ? ANCHOR_LETTERS : 0),
    beginsOpen: (parts[0] ?? "").trim() === "",
    isGlue: letters <= (isAnchored ? ANCHORED_GLUE : GLUE_LETTERS),
    fits: placesOf(parts),
    put: (places) => other.replace(new RegExp(PLACE, "g"), (_, at: string) => places[Number(at)] ?? ""),
  };
}

/** Words that touch no place, so that they are found as words in every text the pattern fits. */
function wholeWords(english: string): string[] {
  const apart = english.replace(/\p{L}*\{\d+\}\p{L}*/gu, " 0 ");
  return [...new Set(apart.match(/\p{L}+/gu) ?? [])];
}

/** Of places with nothing between them the first holds all there is, and the others nothing. */
function placesOf(parts: readonly string[]): Pattern["fits"] {
  const touches = parts.slice(0, -1).map((part, at) => at > 0 && part === "");
  const apart = parts.filter((_, at) => !touches[at]);
  return (text) => {
    const left = placesIn(text, apart)?.values();
    return left === undefined ? null : touches.map((touching) => (touching ? "" : (left.next().value ?? "")));
  };
}

/**
 * A place right behind a letter holds the rest of a sentence, such as `, two of them late`, or nothing; never more of the
 * word. One right behind a sentence holds another, or nothing.
 */
const endsInLetter = (part: string) => /\p{L}$/u.test(part);
const endsSentence = (part: string) => /[.!?]$/.test(part);
const earliestEnd = (from: number, before: string) => (endsInLetter(before) ? from : from + 1);
const mayStand = (place: string, before: string) =>
  endsInLetter(before) ? !/^\p{L}/u.test(place) : place !== "" || endsSentence(before);

/**
 * What stands between the written-out parts of a sentence, each found where it comes first; null where one is missing or
 * nothing stands between two. One look along the text, whatever it holds: a person may have typed it.
 */
function placesIn(text: string, parts: readonly string[]): readonly string[] | null {
  const plain = text.replace(/\s/g, " ");
  const [first, last] = [parts.slice(0, 1).join(""), parts.slice(-1).join("")];
  if (!plain.startsWith(first) || !plain.endsWith(last)) return null;
  const end = plain.length - last.length;
  const places: string[] = [];
  let [from, before] = [first.length, first];
  for (const part of parts.slice(1)) {
    const isLast = places.length === parts.length - 2;
    const at = isLast ? end : plain.indexOf(part, earliestEnd(from, before));
    const place = text.slice(from, at);
    if (at < from || at > end || !mayStand(place, before)) return null;
    places.push(place);
    [from, before] = [at + part.length, part];
  }
  return places;
}
