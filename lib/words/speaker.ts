import { type Pattern, pattern } from "@/lib/words/pattern";

/** English to another language; places are `{0}`, `{1}` … */
export type Catalogue = Readonly<Record<string, string>>;

/** Puts an English text into the reader's words; what the catalogue does not hold stays as it is. */
export type Speaker = (text: string) => string;

/** Texts kept with what they came to; a page shows few different ones again and again. */
const KEPT = 20_000;

/** Letters of the longest text that is taken for pieces with glue between; without it a long text could be taken apart in too many ways. */
const GLUED = 160;

const SHORT = "Jan|Feb|März|Apr|Mai|Juni|Juli|Aug|Sept|Okt|Nov|Dez";

/** Between two sentences; the point of a day, a month or a size ends none. */
const SENTENCE = new RegExp(
  `(?<=[.!?])(?<!(?:Tsd|Mio|${SHORT})\\.)(\\s+)(?=[\\p{Lu}\\d\\ue000-\\uf8ff])(?!(?:${SHORT})(?!\\p{L}))`,
  "u",
);

/** Around elements in a sentence, lines of a list, sentences: a text made of several is taken apart there first. */
const WIDE_CUTS = [/([\ue000-\uf8ff])/u, /(\s[·|→–×÷+−=]\s|\n)/u, SENTENCE];

const CLAUSE = /([,;] )/u;

/** Within a sentence, where what is left over must not be half of one. */
const COMMA = /(, )/u;
const BRACKET = /( \(|\) |\)$)/u;
const SOFT_CUTS: ReadonlySet<RegExp> = new Set([COMMA, BRACKET]);
const CUTS = [/(; )/u, /(: )/u, COMMA, BRACKET];

const LETTER = /[\p{L}\ue000-\uf8ff]/u;
const MARKS = /^[^\p{L}\p{N}\ue000-\uf8ff]+/u;
/** A mark, or a word with a digit, that a text ends with. */
const LAST = /(?:\s\S*\d\S*|[^\p{L}\ue000-\uf8ff])$/u;

/** The words of a text without the marks, numbers and codes around them: where they begin and end. */
function wordsWithin(text: string): readonly [from: number, to: number] {
  const from = Math.max(0, text.search(LETTER));
  let to = text.length;
  for (let last = LAST.exec(text); last; last = LAST.exec(text.slice(0, to))) {
    if (to - last[0].length <= from) break;
    to -= last[0].length;
  }
  return [from, to];
}

/** Words that all begin with a capital or hold a digit. */
const isName = (text: string) => !/(?<![\p{L}\d-])\p{Ll}/u.test(text);

/** More than stands in one place of a sentence: the end of another, or a clause. */
const isMore = (place: string) => SENTENCE.test(place) || /[;:] /.test(place);

/** Several words in small letters: no name, no number. */
const isProse = (text: string) => (text.match(/(?<!\p{L})\p{Ll}{2,}/gu)?.length ?? 0) > 2;

const A_WORD = /\p{L}{2}/u;
const A_DAY = /^\d{1,2}\.? \p{L}{3,5}\.? \d{4}$/u;

/** A catalogue at work, with what it was asked before. */
class Interpreter {
  readonly #patterns: ReadonlyMap<string, readonly Pattern[]>;
  readonly #whole: ReadonlyMap<string, string>;
  readonly #kept = new Map<string, string>();
  /** What patterns came to, null where none fits: the places of one are asked for again by the next. */
  readonly #fitted = new Map<string, string | null>();

  constructor(catalogue: Catalogue) {
    this.#patterns = patternsByWord(catalogue);
    this.#whole = new Map(Object.entries(catalogue).filter(([english]) => !english.includes("{0}")));
  }

  say(text: string): string {
    if (!A_WORD.test(text)) return text;
    const known = this.#kept.get(text);
    if (known !== undefined) return known;
    const said = this.exactly(text) ?? this.byPattern(text) ?? this.inPieces(text);
    if (this.#kept.size >= KEPT) this.#kept.clear();
    this.#kept.set(text, said);
    return said;
  }

  exactly(shown: string): string | null {
    const text = shown.replace(/\s/g, " ");
    const found = this.#whole.get(text);
    if (found !== undefined) return found;
    const first = text.charAt(0);
    const lower = first.toLowerCase();
    // A title within a sentence, such as `supply stage own stock`; a single word may be another in small letters.
    if (first === lower)
      return text.includes(" ") ? (this.#whole.get(first.toUpperCase() + text.slice(1)) ?? null) : null;
    const small = this.#whole.get(lower + text.slice(1));
    return small === undefined ? null : small.charAt(0).toUpperCase() + small.slice(1);
  }

  byPattern(text: string): string | null {
    let said = this.#fitted.get(text);
    if (said === undefined) {
      said = this.putByPattern(text);
      if (this.#fitted.size >= KEPT) this.#fitted.clear();
      this.#fitted.set(text, said);
    }
    return said;
  }

  putByPattern(text: string): string | null {
    for (const candidate of candidatesOf(text, this.#patterns)) {
      const places = this.placesOf(candidate, text);
      if (places) return candidate.put(places.map((place) => this.say(place)));
    }
    return null;
  }

  placesOf({ beginsOpen, isGlue, fits }: Pattern, text: string): readonly string[] | null {
    // What follows a mark is the rest of a sentence, and no name a pattern could begin with.
    if (beginsOpen && /^[\s:;,.]/u.test(text)) return null;
    const places = isGlue && text.length > GLUED ? null : fits(text);
    if (!places || (beginsOpen && isMore(places[0] ?? ""))) return null;
    return isGlue && !this.holds(places) ? null : places;
  }

  /** Glue such as `of` fits many a sentence: all in its places must be numbers, names or known, and not all be names. */
  holds(places: readonly string[]): boolean {
    const isKnown = (place: string) =>
      !A_WORD.test(place) ||
      A_DAY.test(place) ||
      this.exactly(place) !== null ||
      this.byPattern(place) !== null;
    const known = places.filter(isKnown);
    return known.length > 0 && places.every((place) => known.includes(place) || isName(place));
  }

  inPieces(text: string): string {
    const bare = this.behindMarks(text) ?? this.cutBy(WIDE_CUTS, text);
    return bare ?? this.knownClauses(text) ?? this.bared(text) ?? this.cutBy(CUTS, text) ?? text;
  }

  /** Clauses that are each known as they stand, before a number is taken from the end of one: `a year, rank 2 of 40`. */
  knownClauses(text: string): string | null {
    const pieces = text.split(CLAUSE);
    if (pieces.length === 1) return null;
    const said = pieces.map((piece, at) =>
      at % 2 === 1 || !A_WORD.test(piece) ? piece : (this.exactly(piece) ?? this.byPattern(piece)),
    );
    return said.includes(null) ? null : said.join("");
  }

  /** What follows the marks a text begins with, such as `; ` between two elements. */
  behindMarks(text: string): string | null {
    const marks = MARKS.exec(text)?.[0].length ?? 0;
    return marks > 0 && marks < text.length ? text.slice(0, marks) + this.say(text.slice(marks)) : null;
  }

  /** The numbers and codes around the words set aside, and before them the point, since a sentence may need its number. */
  bared(text: string): string | null {
    if (/[^.]\.$/.test(text)) return `${this.say(text.slice(0, -1))}.`;
    const [from, to] = wordsWithin(text);
    if (from > 0) return text.slice(0, from) + this.say(text.slice(from));
    return to < text.length ? this.say(text.slice(0, to)) + text.slice(to) : null;
  }

  cutBy(cuts: readonly RegExp[], text: string): string | null {
    for (const cut of cuts) {
      const pieces = text.split(cut);
      if (pieces.length === 1) continue;
      const said = pieces.map((piece) => (piece === "" ? "" : this.say(piece)));
      // A sentence put into words by halves reads worse than one left alone.
      const isTorn = SOFT_CUTS.has(cut) && said.some((piece, at) => piece === pieces[at] && isProse(piece));
      return isTorn ? text : said.join("");
    }
    return null;
  }
}

/**
 * A function from English to the language of a catalogue.
 *
 * A text is looked up whole; else the pattern with the most written-out letters that fits gives the sentence, and what
 * stands in its places is put into words itself; else the text is taken apart at its punctuation.
 */
export function makeSpeaker(catalogue: Catalogue): Speaker {
  const interpreter = new Interpreter(catalogue);
  return (text) => interpreter.say(text);
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
  const found: Pattern[] = [];
  for (const word of words)
    for (const one of patterns.get(word) ?? [])
      if (one.words.every((other) => words.has(other))) found.push(one);
  return found.sort((a, b) => b.weight - a.weight);
}
