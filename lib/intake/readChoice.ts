import type { Choice } from "@/lib/intake/field";
import { foldText } from "@/lib/intake/foldText";
import { type RawCell, type Reading, read, refuse } from "@/lib/intake/reading";
import { similarity } from "@/lib/intake/similarity";

function wordsOf(choice: Choice): string[] {
  return [choice.value, choice.label, ...choice.synonyms].map(foldText);
}

function nearest(folded: string, choices: readonly Choice[]): Choice | null {
  const scored = choices
    .map((choice) => ({
      choice,
      score: Math.max(...wordsOf(choice).map((word) => similarity(folded, word))),
    }))
    .sort((a, b) => b.score - a.score);
  const best = scored[0];
  return best !== undefined && best.score >= 0.6 ? best.choice : null;
}

/** Reads one of a field's choices by its name or a word registers use for it; a near miss is only suggested. */
export function readChoice(cell: RawCell, choices: readonly Choice[]): Reading<string> {
  const folded = foldText(cell);
  const found = choices.find((choice) => wordsOf(choice).includes(folded));
  if (found !== undefined) return read(found.value);
  const near = nearest(folded, choices);
  const names = choices.map((choice) => choice.label).join(", ");
  return refuse(
    "This word is none of the choices",
    near === null ? `Use one of: ${names}` : `Did you mean “${near.label}”? The choices are: ${names}`,
  );
}

const YES = new Set("yes|y|true|1|x|ja|j|tak|t|si|s|available|vorhanden|jest|finns".split("|"));
const NO = new Set("no|n|false|0|nein|nie|nej|not available|nicht vorhanden|saknas".split("|"));

/** Reads a yes or no in the five languages. */
export function readBoolean(cell: RawCell): Reading<boolean> {
  const folded = foldText(cell);
  if (YES.has(folded)) return read(true);
  if (NO.has(folded)) return read(false);
  return refuse("This is neither yes nor no", "Write yes or no, or leave the cell empty");
}
