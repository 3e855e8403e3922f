import { lineChain } from "@/lib/portfolio/lineChain";
import { brokenBy, limitRows } from "@/lib/portfolio/planLimits";
import { type Candidate, chosenOf } from "@/lib/portfolio/planSlots";
import { type BoardTerms, brokenWords, decidedProblem, namesOf, possibleChoices } from "@/lib/view/boardView";
import type { BelowRow } from "@/lib/view/planBoard";

const LOOKED_AT = 8;

/** The first lines by rank that are not planned: what each would add to the plan as it is, and what it would break. */
export function belowLine(terms: BoardTerms): BelowRow[] {
  const { evaluator, decided, ground } = terms;
  const limits = limitRows(decidedProblem(evaluator, terms), evaluator.candidates);
  const choices = possibleChoices(evaluator, terms.choices);
  const chosen = chosenOf(evaluator.candidates, choices);
  const planned = new Set(choices.map(({ lineId }) => lineId));
  const names = namesOf(terms);
  const { worth } = evaluator.worth(chosen);
  const codes = new Map(ground.map(({ id, code }) => [id, code]));
  const broken = new Set(brokenBy(limits, chosen).map(({ limit }) => JSON.stringify(limit)));
  return decided
    .filter(({ lineId, pin }) => !planned.has(lineId) && pin !== "out")
    .sort((a, b) => a.rank - b.rank)
    .slice(0, LOOKED_AT)
    .map(({ lineId, rank }): BelowRow => {
      const chain = lineChain(evaluator, lineId);
      const named = { lineId, rank, code: codes.get(lineId) ?? "" };
      if (chain === null) return { ...named, way: null, needs: [] };
      const more = [...chosen, ...chain].sort((a, b) => a - b);
      const steps = chain.map((index) => evaluator.candidates[index] as Candidate);
      return {
        ...named,
        way: {
          words: steps.map(({ option, slot }) => `${option.name}, ${names.slot(slot.id)}`).join("; then "),
          cost: steps.reduce((sum, { option }) => sum + option.cost.typical, 0),
          addedWorth: evaluator.worth(more).worth - worth,
        },
        needs: brokenBy(limits, more)
          .filter(({ limit }) => !broken.has(JSON.stringify(limit)))
          .map((one) => brokenWords(one, names)),
      };
    });
}
