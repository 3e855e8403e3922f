import type { Field } from "@/lib/intake/field";
import { foldText } from "@/lib/intake/foldText";
import type { Register } from "@/lib/intake/registers";
import { similarity } from "@/lib/intake/similarity";

/** Header to field; null leaves the column out. Kept by header, so that next month's shuffled columns still fit. */
export type Mapping = Readonly<Record<string, string | null>>;

/** What a header most likely is. `score` is 0 to 1; 1 is the field's own name. */
export type MappingSuggestion = {
  header: string;
  field: string | null;
  score: number;
  why: "name" | "synonym" | "similar" | "none";
};

/** Below this a likeness is taken as chance: a chosen threshold, no source. */
const LOWEST_SCORE = 0.62;

/** Of wider files than this only names and words known by heart are proposed: likeness of all would take minutes. */
const MOST_COMPARED = 1_000;

/** A header or a known word, folded, with its parts: wide files compare very many of them. */
type Phrase = { text: string; words: readonly string[] };
type KnownField = { key: string; names: string[]; synonyms: string[]; phrases: Phrase[] };
type Candidate = { header: string; field: string; score: number; why: MappingSuggestion["why"] };

function splitCase(key: string): string {
  return key.replace(/([a-z])([A-Z0-9])/g, "$1 $2");
}

function phraseOf(text: string): Phrase {
  return { text, words: [...new Set(text.split(" "))] };
}

function know(field: Field): KnownField {
  const names = [field.label, field.key, splitCase(field.key)].map(foldText);
  const synonyms = field.synonyms.map(foldText);
  return { key: field.key, names, synonyms, phrases: [...names, ...synonyms].map(phraseOf) };
}

/** Share of words two headers have in common (Sørensen–Dice on words). */
function wordLikeness(one: Phrase, other: Phrase): number {
  const shared = one.words.filter((word) => other.words.includes(word)).length;
  return (2 * shared) / (one.words.length + other.words.length);
}

/** Letters are compared only where their number alone lets two phrases be alike enough. */
function likeness(header: Phrase, known: Phrase): number {
  const byWords = 0.95 * wordLikeness(header, known);
  const [one, other] = [header.text.length, known.text.length];
  const atMost = (1.8 * Math.min(one, other)) / (one + other);
  return atMost < LOWEST_SCORE ? byWords : Math.max(byWords, 0.9 * similarity(header.text, known.text));
}

function scoreOne(header: Phrase, field: KnownField): Pick<Candidate, "score" | "why"> {
  if (field.names.includes(header.text)) return { score: 1, why: "name" };
  if (field.synonyms.includes(header.text)) return { score: 0.98, why: "synonym" };
  return { score: Math.max(0, ...field.phrases.map((known) => likeness(header, known))), why: "similar" };
}

/** The header as it stands, and without what stands in brackets: units, remarks. */
function phrasesOf(header: string): { whole: Phrase; bare: Phrase | null } {
  const whole = foldText(header);
  const bare = foldText(header.replace(/[([{].*?[)\]}]/g, " "));
  return { whole: phraseOf(whole), bare: bare === "" || bare === whole ? null : phraseOf(bare) };
}

function score({ whole, bare }: ReturnType<typeof phrasesOf>, field: KnownField) {
  const full = scoreOne(whole, field);
  if (bare === null) return full;
  const without = scoreOne(bare, field);
  return without.score * 0.99 > full.score ? { score: without.score * 0.99, why: without.why } : full;
}

function listCandidates(headers: readonly string[], register: Register): Candidate[] {
  const isWide = headers.length > MOST_COMPARED;
  const fields = register.fields.map((field) => ({ ...know(field), ...(isWide ? { phrases: [] } : {}) }));
  return headers
    .map((header) => ({ header, phrases: phrasesOf(header) }))
    .filter(({ phrases }) => phrases.whole.text !== "")
    .flatMap(({ header, phrases }) =>
      fields.map((field) => ({ header, field: field.key, ...score(phrases, field) })),
    )
    .filter((candidate) => candidate.score >= LOWEST_SCORE)
    .sort((a, b) => b.score - a.score);
}

/**
 * Suggests a field for each header, best likeness first. No field is given twice; a header without a likely
 * field gets none.
 */
export function suggestMapping(headers: readonly string[], register: Register): MappingSuggestion[] {
  const chosen = new Map<string, Candidate>();
  const taken = new Set<string>();
  for (const candidate of listCandidates(headers, register)) {
    if (chosen.has(candidate.header) || taken.has(candidate.field)) continue;
    chosen.set(candidate.header, candidate);
    taken.add(candidate.field);
  }
  return headers.map((header) => {
    const found = chosen.get(header);
    return found === undefined
      ? { header, field: null, score: 0, why: "none" }
      : { header, field: found.field, score: found.score, why: found.why };
  });
}

/** The suggestions as a mapping a person can confirm. */
export function toMapping(suggestions: readonly MappingSuggestion[]): Mapping {
  return Object.fromEntries(suggestions.map(({ header, field }) => [header, field]));
}

/** Longest key kept as it is; an index of the database takes some 2,700 bytes. */
const LONGEST_KEY = 1200;

/** The headers as one text by which a confirmed mapping is found again: folded, in any order. */
export function headersKey(headers: readonly string[]): string {
  const whole = headers.map(foldText).sort().join("|");
  if (whole.length <= LONGEST_KEY) return whole;
  return `${whole.slice(0, LONGEST_KEY)}#${headers.length}#${digest(whole, 0x811c9dc5)}${digest(whole, 0x9e3779b9)}`;
}

/** FNV-1a over the text's 16-bit units (public domain; Fowler, Noll and Vo; from memory), eight hex digits. */
function digest(text: string, start: number): string {
  let hash = start;
  for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, "0");
}
