import type { Choice } from "@/lib/intake/field";
import { foldText } from "@/lib/intake/foldText";
import { infer, plainText, type RawCell, type Reading, read, refuse } from "@/lib/intake/reading";
import { similarity } from "@/lib/intake/similarity";

type WordList = { value: string; label: string; words: string[]; roughly: string[] }[];

/** Folded words by list of choices: folding them anew for every cell would take most of a long file's time. */
const folded = new WeakMap<readonly Choice[], WordList>();

function foldChoices(choices: readonly Choice[]): WordList {
  const known = folded.get(choices);
  if (known !== undefined) return known;
  const made = choices.map(({ value, label, synonyms, roughly }) => ({
    value,
    label,
    words: [value, label, ...synonyms].map(foldText),
    roughly: roughly.map(foldText),
  }));
  folded.set(choices, made);
  return made;
}

/** The label of the choice most like a word, or whose own word stands in it; null when none is likely. */
function nearest(word: string, choices: readonly Choice[]): string | null {
  const within = foldChoices(choices).filter(({ words }) =>
    words.some((known) => known.length > 2 && ` ${word} `.includes(` ${known} `)),
  );
  if (within.length === 1) return within[0]?.label ?? null;
  const scored = foldChoices(choices)
    .map(({ label, words }) => ({ label, score: Math.max(...words.map((known) => similarity(word, known))) }))
    .sort((a, b) => b.score - a.score);
  const best = scored[0];
  return best !== undefined && best.score >= 0.6 ? best.label : null;
}

/** Reads one of a field's choices by its name or a word registers use for it; a near miss is only suggested. */
export function readChoice(cell: RawCell, choices: readonly Choice[]): Reading<string> {
  const word = foldText(cell);
  const found = foldChoices(choices).find((choice) => choice.words.includes(word));
  if (found !== undefined) return read(found.value);
  const rough = foldChoices(choices).find((choice) => choice.roughly.includes(word));
  if (rough !== undefined)
    return infer(rough.value, {
      problem: `“${plainText(cell)}” is kept as “${rough.label}”`,
      remedy: "Check that this is what it means here",
    });
  const near = nearest(word, choices);
  const names = choices.map((choice) => choice.label).join(", ");
  return refuse(
    "This word is none of the choices",
    near === null ? `Use one of: ${names}` : `Did you mean “${near}”? The choices are: ${names}`,
  );
}

const YES = new Set(
  "yes|y|true|1|x|ja|j|tak|t|si|s|oui|o|available|vorhanden|jest|finns|disponible".split("|"),
);
const NO = new Set("no|n|false|0|nein|nie|nej|non|not available|nicht vorhanden|saknas".split("|"));

/** Reads a yes or no in the five languages. */
export function readBoolean(cell: RawCell): Reading<boolean> {
  const word = foldText(cell);
  if (YES.has(word)) return read(true);
  if (NO.has(word)) return read(false);
  return refuse("This is neither yes nor no", "Write yes or no, or leave the cell empty");
}
