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

type KnownField = { key: string; names: string[]; synonyms: string[] };
type Candidate = { header: string; field: string; score: number; why: MappingSuggestion["why"] };

function splitCase(key: string): string {
  return key.replace(/([a-z])([A-Z0-9])/g, "$1 $2");
}

function know(field: Field): KnownField {
  return {
    key: field.key,
    names: [field.label, field.key, splitCase(field.key)].map(foldText),
    synonyms: field.synonyms.map(foldText),
  };
}

/** Share of words two headers have in common (Sørensen–Dice on words). */
function wordLikeness(one: string, other: string): number {
  const left = new Set(one.split(" "));
  const right = new Set(other.split(" "));
  const shared = [...left].filter((word) => right.has(word)).length;
  return (2 * shared) / (left.size + right.size);
}

function likeness(header: string, word: string): number {
  return Math.max(0.95 * wordLikeness(header, word), 0.9 * similarity(header, word));
}

function scoreOne(folded: string, field: KnownField): Pick<Candidate, "score" | "why"> {
  if (field.names.includes(folded)) return { score: 1, why: "name" };
  if (field.synonyms.includes(folded)) return { score: 0.98, why: "synonym" };
  const words = [...field.names, ...field.synonyms];
  return { score: Math.max(...words.map((word) => likeness(folded, word))), why: "similar" };
}

/** The header as it stands, and without what stands in brackets: units, remarks. */
function score(header: string, field: KnownField): Pick<Candidate, "score" | "why"> {
  const whole = scoreOne(foldText(header), field);
  const bare = foldText(header.replace(/[([{].*?[)\]}]/g, " "));
  if (bare === "" || bare === foldText(header)) return whole;
  const without = scoreOne(bare, field);
  return without.score * 0.99 > whole.score ? { score: without.score * 0.99, why: without.why } : whole;
}

function listCandidates(headers: readonly string[], register: Register): Candidate[] {
  const fields = register.fields.map(know);
  return headers
    .filter((header) => foldText(header) !== "")
    .flatMap((header) => fields.map((field) => ({ header, field: field.key, ...score(header, field) })))
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

/** The headers as one text by which a confirmed mapping is found again: folded, in any order. */
export function headersKey(headers: readonly string[]): string {
  return headers.map(foldText).sort().join("|");
}
