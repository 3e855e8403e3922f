import "server-only";
import type { Actor } from "@/lib/access/actor";
import { readAcceptances } from "@/lib/data/acceptances";
import { database } from "@/lib/data/client";
import { asOfOf, choicesOf, decisionsOf, findBoard, type StoredBoard } from "@/lib/data/planning/boardRows";
import { keptGround } from "@/lib/data/planning/keptGround";
import type { PlanGround } from "@/lib/data/planning/loadPlanGround";
import { buildScope } from "@/lib/retrofit/scope/buildScope";
import { scopeOptions } from "@/lib/retrofit/scope/scopeOptions";
import { targetChoices } from "@/lib/retrofit/scope/targetChoices";
import { speakingByLine } from "@/lib/view/acceptance";
import { belowLine } from "@/lib/view/belowLine";
import { type BoardTerms, boardView } from "@/lib/view/boardView";
import type { BelowRow, BoardPage, BoardView, Considered } from "@/lib/view/planBoard";

/**
 * A plan over years as it stands now, or as it was put forward; null when there is none the person may see whole.
 *
 * `whole` works out what falls below the funding line and what was considered too; both take a while.
 */
export async function readBoard(
  actor: Actor,
  { planId, whole }: { readonly planId: string; readonly whole: boolean },
): Promise<BoardPage | null> {
  const board = await findBoard(database(), { actor, deed: "read", planId });
  if (!board) return null;
  const creator = await database().user.findUnique({
    where: { id: board.createdBy },
    select: { name: true },
  });
  const kept = board.frozen as unknown as FrozenBoard | null;
  return {
    ...{ id: board.id, name: board.name, version: board.version, status: board.status, issue: board.issue },
    former: board.former && { id: board.former.id, issue: board.former.issue },
    createdBy: creator?.name ?? "somebody no longer listed",
    createdOn: board.createdAt.toISOString().slice(0, 10),
    frozenOn: kept?.frozenOn ?? null,
    ...(kept ?? (await workOut(actor, board, whole))),
  };
}

/** What a plan shows. */
export interface WorkedOut {
  readonly view: BoardView;
  readonly below: readonly BelowRow[];
  readonly considered: readonly Considered[];
}

/** What is kept of a plan that was put forward. */
export interface FrozenBoard extends WorkedOut {
  readonly frozenOn: string;
}

/** Everything a plan shows, worked out on the data as they are now, as of the plan's day. */
export async function workOut(actor: Actor, board: StoredBoard, whole: boolean): Promise<WorkedOut> {
  const { terms, ground } = await boardTerms(actor, board);
  const view = boardView(terms);
  return whole
    ? { view, below: belowLine(terms), considered: consideredOf(actor, ground, view) }
    : { view, below: [], considered: [] };
}

/** What a plan is worked out from. */
export async function boardTerms(
  actor: Actor,
  board: StoredBoard,
): Promise<{ readonly terms: BoardTerms; readonly ground: PlanGround }> {
  const asOf = asOfOf(actor, board);
  const lineIds = board.lines.map(({ lineId }) => lineId);
  const [{ ground, evaluator }, acceptances] = await Promise.all([
    keptGround(actor, { asOf, deed: "read", lineIds }),
    readAcceptances(actor, { asOf }),
  ]);
  const { engine, dataVersion, assumptionSet } = ground.evaluation;
  const terms = {
    ...{ evaluator, inputs: ground.inputs, ground: ground.lines, ...decisionsOf(actor, board) },
    acceptances: speakingByLine(acceptances, asOf),
    decided: board.lines.map(({ lineId, rank, pin, pinReason, pinnedBy }) => ({
      ...{ lineId, rank, pin, pinReason, pinnedBy },
    })),
    choices: choicesOf(actor, board),
    stamp: { engine, dataVersion, assumptions: `${assumptionSet.kind} ${assumptionSet.version}` },
  };
  return { terms, ground };
}

/** The ways to treat each planned line, from doing nothing on. */
function consideredOf(_actor: Actor, { facts, norms }: PlanGround, { lines }: BoardView): Considered[] {
  return lines.flatMap(({ lineId, placed }) => {
    const known = facts.get(lineId);
    const target = known && targetChoices(known)[0]?.family;
    if (placed.length === 0 || !known || target === undefined) return [];
    const full = buildScope(known, { target, norms });
    if (!full.ok) return [];
    return [
      { lineId, options: scopeOptions({ facts: known, full: full.value, window: null, target, norms }) },
    ];
  });
}
