import { foldText } from "@/lib/intake/foldText";
import { lookAlikeKey, partKey } from "@/lib/intake/readPartNumber";
import { similarity } from "@/lib/intake/similarity";

/** A part on record that a number may mean. */
export interface KnownNumber {
  readonly id: string;
  readonly maker: string;
  readonly number: string;
  /** Class, family and description in words. */
  readonly text: string;
  /** Other numbers; of one site, or everywhere where the site is null. */
  readonly aliases: readonly { readonly alias: string; readonly siteCode: string | null }[];
}

/** A number as a file writes it; what is not said is empty. */
export interface WrittenPart {
  readonly written: string;
  readonly maker: string;
  readonly siteCode: string;
  /** The text beside it. */
  readonly detail: string;
}

/** A part a number may mean. `score` is 0 to 1 and orders, no more: it is no chance. */
export interface PartSuggestion {
  readonly partId: string;
  readonly score: number;
  readonly why: string;
}

type Likeness = Omit<PartSuggestion, "partId">;

/** Suggestions shown, and the likeness below which one is chance: both chosen, no source. */
const MOST = 5;
const LOWEST_SCORE = 0.5;
/** Letters a number must have before its beginning, or one letter's difference, says anything. */
const SHORTEST_KEY = 6;
/** Registers that cut texts cut them here as a rule: common practice, no source. */
const CUT_TEXT = 40;

interface Keyed {
  readonly part: KnownNumber;
  readonly makerKey: string;
  readonly numbers: readonly {
    readonly key: string;
    readonly said: string;
    readonly siteCode: string | null;
  }[];
  readonly words: readonly string[];
}

/** Parts on record, made ready for comparing once. */
export function keyParts(parts: readonly KnownNumber[]): readonly Keyed[] {
  return parts.map((part) => ({
    part,
    makerKey: partKey(part.maker),
    numbers: [
      { key: partKey(part.number), said: "the number", siteCode: null },
      ...part.aliases.map(({ alias, siteCode }) => ({
        key: partKey(alias),
        said: siteCode === null ? `its other number ${alias}` : `${siteCode}'s number ${alias}`,
        siteCode,
      })),
    ],
    words: foldText(`${part.maker} ${part.text}`).split(" "),
  }));
}

/**
 * The parts a number may mean, likeliest first, each with why. Nothing is taken for granted: a person decides.
 */
export function suggestParts(written: WrittenPart, parts: readonly Keyed[]): PartSuggestion[] {
  const key = partKey(written.written);
  const found = parts.flatMap((part) => {
    const best = [...numberLikenesses(key, part), textLikeness(written, part)]
      .map((one) => byMaker(one, partKey(written.maker), part.makerKey))
      .sort((a, b) => b.score - a.score)[0];
    return best && best.score >= LOWEST_SCORE ? [{ partId: part.part.id, ...best }] : [];
  });
  return found.sort((a, b) => b.score - a.score || (a.partId < b.partId ? -1 : 1)).slice(0, MOST);
}

function numberLikenesses(key: string, { numbers }: Keyed): Likeness[] {
  return numbers.map((known) => {
    const { score, why } = likenessOf(key, known.key);
    return { score, why: score === 0 ? "" : `${why} ${known.said}` };
  });
}

function likenessOf(key: string, known: string): Likeness {
  if (key === known) return { score: 0.95, why: "Spelled like" };
  if (lookAlikeKey(key) === lookAlikeKey(known))
    return { score: 0.93, why: "Only letters that look like digits differ from" };
  if (withoutZeros(key) === withoutZeros(known)) return { score: 0.9, why: "Without its leading zeros like" };
  if (isBeginning(key, known)) return { score: 0.85, why: `Its first ${key.length} letters begin` };
  if (isBeginning(known, key)) return { score: 0.7, why: "More letters follow" };
  if (Math.min(key.length, known.length) >= SHORTEST_KEY && isOneStepApart(key, known))
    return { score: 0.8, why: "One letter differs from" };
  const alike = similarity(key, known);
  return alike > 0.75
    ? { score: 0.75 * alike, why: `${Math.round(alike * 100)} % of its letter pairs are in` }
    : NONE;
}

const NONE: Likeness = { score: 0, why: "" };

function withoutZeros(key: string): string {
  return key.replace(/^0+(?=\d)/, "");
}

function isBeginning(short: string, long: string): boolean {
  return short.length >= SHORTEST_KEY && long.length > short.length && long.startsWith(short);
}

/** Whether one letter was changed, left out, put in, or two neighbours changed about. */
export function isOneStepApart(one: string, other: string): boolean {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  if (long.length - short.length > 1 || short === long) return false;
  let at = 0;
  while (at < short.length && short[at] === long[at]) at += 1;
  if (long.length > short.length) return short.slice(at) === long.slice(at + 1);
  const rest = (text: string, from: number) => text.slice(from);
  if (rest(short, at + 1) === rest(long, at + 1)) return true;
  return (
    short[at] === long[at + 1] && short[at + 1] === long[at] && rest(short, at + 2) === rest(long, at + 2)
  );
}

/** The share of the words of a text that a part's own words hold; the last word of a cut text may be half a word. */
function textLikeness({ detail }: WrittenPart, { words }: Keyed): Likeness {
  const said = foldText(detail)
    .split(" ")
    .filter((word) => word.length > 1);
  if (said.length < 2) return NONE;
  const isCut = detail.trim().length >= CUT_TEXT - 1;
  const last = said.length - 1;
  const shared = said.filter((word, index) =>
    words.some((known) => (isCut && index === last ? known.startsWith(word) : known === word)),
  ).length;
  const share = shared / said.length;
  const why = `${Math.round(share * 100)} % of the words of its text${isCut ? ", which seems cut off," : ""} are in that of the part`;
  return { score: 0.8 * share, why };
}

/** Another maker speaks against a likeness, the same one for it. */
function byMaker(one: Likeness, written: string, known: string): Likeness {
  if (one.score === 0 || written === "") return one;
  if (written === known) return { ...one, score: Math.min(0.99, one.score + 0.03) };
  return { score: one.score * 0.75, why: `${one.why}; the maker is written otherwise` };
}
