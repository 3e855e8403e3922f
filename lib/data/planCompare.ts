import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { boardTerms, readBoard } from "@/lib/data/planBoard";
import { findBoard } from "@/lib/data/planning/boardRows";
import { limitRows } from "@/lib/portfolio/planLimits";
import { type Candidate, choiceOf } from "@/lib/portfolio/planSlots";
import { rankAndCut } from "@/lib/portfolio/rankAndCut";
import { boardView, decidedProblem } from "@/lib/view/boardView";
import { planStatusWords } from "@/lib/view/plan";
import type { ComparedPlan } from "@/lib/view/planComparison";

/** Some plans side by side, those the person may see, and the ranking spent on the money of the first. */
export async function compareBoards(actor: Actor, ids: readonly string[]): Promise<ComparedPlan[]> {
  const pages = await Promise.all(ids.map((planId) => readBoard(actor, { planId, whole: false })));
  const plans = pages.flatMap((page): ComparedPlan[] =>
    page === null
      ? []
      : [
          {
            id: page.id,
            name: `${page.name}, issue ${page.issue}`,
            state: planStatusWords(page.status),
            view: page.view,
          },
        ],
  );
  const ranking = plans[0]?.id ? await byRanking(actor, plans[0].id) : null;
  return ranking ? [...plans, ranking] : plans;
}

/** Down the ranking by stop loss on the same money and hands, without pins and duties; worth worked out in the same way. */
async function byRanking(actor: Actor, planId: string): Promise<ComparedPlan | null> {
  const board = await findBoard(database(), { actor, deed: "read", planId });
  if (!board) return null;
  const { terms } = await boardTerms(actor, board);
  const { evaluator } = terms;
  const limits = limitRows(decidedProblem(evaluator, { pins: [], bans: [] }), evaluator.candidates);
  const choices = rankAndCut(evaluator, limits).map((index) =>
    choiceOf(evaluator.candidates[index] as Candidate),
  );
  const decided = terms.decided.map((line) => ({
    ...line,
    pin: "none" as const,
    pinReason: null,
    pinnedBy: null,
  }));
  return {
    ...{ id: null, name: "Down the ranking", state: "for comparison" },
    view: boardView({ ...terms, decided, choices, pins: [], bans: [] }),
  };
}
