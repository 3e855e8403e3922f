import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { type FrozenBoard, workOut } from "@/lib/data/planBoard";
import type { BoardMark } from "@/lib/data/planBoardChange";
import { findBoard } from "@/lib/data/planning/boardRows";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { WhichBoard } from "@/lib/schema/planBoard";
import { plainly } from "@/lib/words/reading";
import type { Prisma } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such plan that you may change." };
const conflict: Refusal = {
  code: "conflict",
  reason: "Somebody else changed this plan since you opened it. Nothing was changed; load the page again.",
};

/** Puts a plan forward: what it shows is kept as it stands and never changes again. */
export async function submitBoard(
  actor: Actor,
  { planId, version }: WhichBoard,
): Promise<Result<BoardMark, Refusal>> {
  const board = await findBoard(database(), { actor, deed: "plan:write", planId });
  if (!board) return err(missing);
  if (board.status !== "draft")
    return err({ code: "impossible", reason: "The plan was put forward already." });
  if (board.version !== version) return err(conflict);
  const worked = await plainly(() => workOut(actor, board, true));
  const { view } = worked;
  if (view.choices.length === 0) return err({ code: "impossible", reason: "Nothing is planned yet." });
  const frozen: FrozenBoard = { frozenOn: await readAsOf(actor, undefined), ...worked };
  return change(actor, async (tx, record) => {
    const { count } = await tx.plan.updateMany({
      where: { id: planId, version, status: "draft" },
      data: {
        ...{ status: "put_forward", version: { increment: 1 } },
        frozen: frozen as unknown as Prisma.InputJsonValue,
        ...{ engine: view.engine, dataVersion: view.dataVersion },
      },
    });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "plan:put-forward", entity: "Plan", entityId: planId },
      after: { frozenOn: frozen.frozenOn, choices: view.choices.length, worth: Math.round(view.worth.worth) },
    });
    return ok({ planId, version: version + 1 });
  });
}

/** Starts the next issue of a plan that was put forward, with the same ways placed and the same decisions. */
export async function nextIssue(
  actor: Actor,
  { planId, version }: WhichBoard,
): Promise<Result<BoardMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const board = await findBoard(tx, { actor, deed: "plan:write", planId });
    if (!board) return err(missing);
    if (board.version !== version) return err(conflict);
    if (board.frozen === null) return err({ code: "impossible", reason: "A draft is changed itself." });
    const { name, year, budget, rankedBy, engine, dataVersion } = board;
    const plan = await tx.plan.create({
      data: {
        ...{ name, year, budget, rankedBy, engine, dataVersion, kind: "board", createdBy: actor.userId },
        ...{ asOf: new Date(`${today}T00:00:00Z`), issue: board.issue + 1, formerId: board.id },
        lines: {
          create: board.lines.map((line) => ({
            ...{
              lineId: line.lineId,
              rank: line.rank,
              cost: line.cost,
              stopLoss: line.stopLoss,
              score: line.score,
            },
            ...{ funded: line.funded, pin: line.pin, pinReason: line.pinReason, pinnedBy: line.pinnedBy },
            slots: { create: line.slots.map(({ option, slot }) => ({ option, slot })) },
          })),
        },
      },
      select: { id: true, version: true },
    });
    record({
      deed: "plan:issue",
      entity: "Plan",
      entityId: plan.id,
      after: { former: board.id, issue: board.issue + 1 },
    });
    return ok({ planId: plan.id, version: plan.version });
  });
}
