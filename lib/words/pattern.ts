/** A sentence with places, in English and in another language. */
export interface Pattern {
  /** Words written out in the English sentence, whole ones only. */
  readonly words: ReadonlySet<string>;
  /** Letters written out: the more, the less it fits by chance. */
  readonly letters: number;
  /** So few letters that it fits by chance. */
  readonly isGlue: boolean;
  /** What stands in the places of a text; null where it does not fit. */
  fits(text: string): readonly string[] | null;
  /** The sentence of the other language with its places filled. */
  put(places: readonly string[]): string;
}

const GLUE_LETTERS = 5;
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
  let made: RegExp | undefined;
  return {
    words: wholeWords(english),
    letters,
    isGlue: letters <= GLUE_LETTERS,
    fits(text) {
      made ??= new RegExp(`^${parts.map(escaped).join("(.+?)")}$`, "su");
      return made.exec(text)?.slice(1) ?? null;
    },
    put: (places) => other.replace(new RegExp(PLACE, "g"), (_, at: string) => places[Number(at)] ?? ""),
  };
}

/** Words that touch no place, so that they are found as words in every text the pattern fits. */
function wholeWords(english: string): Set<string> {
  const apart = english.replace(/\p{L}*\{\d+\}\p{L}*/gu, " 0 ");
  return new Set(apart.match(/\p{L}+/gu) ?? []);
}

const escaped = (part: string) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&").replace(/ /g, "\\s+");
