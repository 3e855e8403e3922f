import { foldText } from "@/lib/intake/foldText";
import { similarity } from "@/lib/intake/similarity";

/** A line or machine on record by its code and name. */
export interface KnownName {
  readonly code: string;
  readonly name: string;
}

/** What a name of a file may mean. `score` is 0 to 1 and orders, no more. */
export interface NameSuggestion {
  readonly code: string;
  readonly score: number;
  readonly why: string;
}

/** Both chosen, no source. */
const MOST = 4;
const LOWEST_SCORE = 0.45;

/** Words for a line or a machine, which tell nothing by themselves. */
const EMPTY_WORDS =
  /\b(?:line|linie|linia|linea|ligne|linje|l|machine|maschine|maszyna|maquina|macchina|maskin|m|no|nr)\b/g;

/** Lines or machines that a name may mean, likeliest first: by code, by name, by the number in it. */
export function suggestNames(written: string, known: readonly KnownName[]): NameSuggestion[] {
  const found = known.map(({ code, name }) => ({ code, ...bestOf(written, { code, name }) }));
  return found
    .filter(({ score }) => score >= LOWEST_SCORE)
    .sort((a, b) => b.score - a.score || (a.code < b.code ? -1 : 1))
    .slice(0, MOST);
}

function bestOf(written: string, { code, name }: KnownName): Omit<NameSuggestion, "code"> {
  const folded = foldText(written);
  if (folded === foldText(code)) return { score: 0.99, why: "the code, written otherwise" };
  if (folded === foldText(name)) return { score: 0.97, why: "the name" };
  const number = numberIn(folded);
  const sameNumber = number !== null && number === numberIn(foldText(code));
  const byName = similarity(bare(folded), bare(foldText(name)));
  const byCode = similarity(folded, foldText(code));
  const score = Math.max(0.9 * byName, 0.85 * byCode, sameNumber ? 0.6 + 0.3 * byName : 0);
  if (sameNumber) return { score, why: `the number ${number} is in its code` };
  return { score, why: byName >= byCode ? "like the name" : "like the code" };
}

function bare(folded: string): string {
  const rest = folded.replace(EMPTY_WORDS, " ").replace(/\s+/g, " ").trim();
  return rest === "" ? folded : rest;
}

/** The last number in a name, without leading zeros: "Line 03" and "L3" both say 3. */
function numberIn(folded: string): string | null {
  return (
    folded
      .match(/\d+/g)
      ?.at(-1)
      ?.replace(/^0+(?=\d)/, "") ?? null
  );
}
