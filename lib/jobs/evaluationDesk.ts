import type { EvaluationAnswer, EvaluationAsk } from "@/lib/jobs/evaluationThread";
import type { EvaluatedGroup } from "@/lib/risk/evaluateGroup";
import { type ToldGroup, tellStep, tellWhole } from "@/lib/risk/tellGroup";

/**
 * Answers what is asked of the thread and holds what may be stepped on from: a whole evaluation replaces all, a step
 * leaves what it came from beside it until it is known which of the two was kept.
 */
export function evaluationDesk(): (ask: EvaluationAsk) => EvaluationAnswer {
  const held = new Map<number, EvaluatedGroup>();
  const tell = (ask: EvaluationAsk): ToldGroup | null => {
    if ("input" in ask) {
      held.clear();
      return tellWhole(ask.input, ask.assumptions);
    }
    const before = held.get(ask.from);
    held.clear();
    if (!before) return null;
    held.set(ask.from, before);
    return tellStep(before, ask.change);
  };
  return (ask) => {
    const { number } = ask;
    try {
      const told = tell(ask);
      if (told) held.set(number, told.group);
      return { number, rows: told ? told.rows : null };
    } catch (error) {
      return { number, failed: error instanceof Error ? error.message : String(error) };
    }
  };
}
