import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { type BoardMark, fillBoard } from "@/lib/data/planBoardChange";
import { asOfOf, decisionsOf, findBoard } from "@/lib/data/planning/boardRows";
import { keptGround } from "@/lib/data/planning/keptGround";
import { err, type Result } from "@/lib/kernel/result";
import { limitRows } from "@/lib/portfolio/planLimits";
import { type Candidate, choiceOf } from "@/lib/portfolio/planSlots";
import { rankAndCut } from "@/lib/portfolio/rankAndCut";
import type { WhichBoard } from "@/lib/schema/planBoard";
import { decidedProblem } from "@/lib/view/boardView";

/** Fills a plan down the ranking by stop loss, each line's largest way in its first place; pinned lines stay. */
export async function fillByRanking(
  actor: Actor,
  { planId, version }: WhichBoard,
): Promise<Result<BoardMark, Refusal>> {
  const board = await findBoard(database(), { actor, deed: "plan:write", planId });
  if (!board) return err({ code: "missing", reason: "There is no such plan that you may change." });
  const lineIds = board.lines.map(({ lineId }) => lineId);
  const { evaluator } = await keptGround(actor, { asOf: asOfOf(actor, board), deed: "plan:write", lineIds });
  const limits = limitRows(decidedProblem(evaluator, decisionsOf(actor, board)), evaluator.candidates);
  const choices = rankAndCut(evaluator, limits).map((index) =>
    choiceOf(evaluator.candidates[index] as Candidate),
  );
  return fillBoard(actor, { planId, version, choices, back: false });
}
