import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { asOfOf, findBoard, type StoredBoard } from "@/lib/data/planning/boardRows";
import { keptGround } from "@/lib/data/planning/keptGround";
import { err, ok, type Result } from "@/lib/kernel/result";
import { type Candidate, choiceOf } from "@/lib/portfolio/planSlots";
import type { FillBoard, MakeBoard, PinLine, PlaceWay } from "@/lib/schema/planBoard";
import { Prisma } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such plan that you may change." };
const frozen: Refusal = {
  code: "impossible",
  reason: "The plan was put forward and stays as it stood. Start a new issue from it to change anything.",
};
const unknownWay: Refusal = {
  code: "impossible",
  reason: "That way cannot be put there: no such window or quarter is open to it. Load the page again.",
};
const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else changed this plan since you opened it. Nothing was changed; the page shows it as it is now.",
};

/** The plan's version after a change, to go on from or to take it back with. */
export interface BoardMark {
  readonly planId: string;
  readonly version: number;
}

/** Makes an empty plan over the years with a budget, of the lines the person may plan that have a way and a known loss. */
export async function makeBoard(
  actor: Actor,
  { name, asOf }: MakeBoard,
): Promise<Result<BoardMark, Refusal>> {
  const { ground, evaluator } = await keptGround(actor, { asOf, deed: "plan:write", lineIds: null });
  const { years } = ground.inputs;
  const able = new Set(evaluator.candidates.map(({ line }) => line.lineId));
  const lines = ground.lines.filter(({ id, stopLoss }) => able.has(id) && stopLoss !== null);
  const [first] = years;
  if (first === undefined)
    return err({
      code: "impossible",
      reason: "No budget of the group is stated for a coming year. State it in the planning inputs.",
    });
  if (lines.length === 0)
    return err({
      code: "impossible",
      reason: "No line where you may plan has a way to convert it and a known stop loss.",
    });
  const budget = evaluator.problem.budgets.reduce(
    (sum, one) => (one.siteId === null ? sum + one.amount : sum),
    0,
  );
  return change(actor, async (tx, record) => {
    const plan = await tx.plan.create({
      data: {
        ...{ name, kind: "board", year: first, budget: budget.toFixed(2), rankedBy: "loss" },
        ...{ asOf: new Date(`${asOf}T00:00:00Z`), dataVersion: ground.evaluation.dataVersion },
        ...{ engine: ground.evaluation.engine, createdBy: actor.userId },
        lines: {
          create: lines.map((line, i) => ({
            ...{ lineId: line.id, rank: line.rankByLoss ?? i + 1, cost: "0", funded: false },
            ...{ stopLoss: (line.stopLoss?.mean ?? 0).toFixed(2), score: line.score.toFixed(3) },
          })),
        },
      },
      select: { id: true, version: true },
    });
    record({
      deed: "plan:make",
      entity: "Plan",
      entityId: plan.id,
      after: { name, asOf, lines: lines.length },
    });
    return ok({ planId: plan.id, version: plan.version });
  });
}

/** Puts a way of a line into a slot, or takes it out; other ways of the same step of the line give way to it. */
export async function placeWay(actor: Actor, wanted: PlaceWay): Promise<Result<BoardMark, Refusal>> {
  return edit(actor, wanted, async ({ tx, board, candidates }) => {
    const { lineId, option, slot } = wanted;
    const line = board.lines.find((one) => one.lineId === lineId);
    const own = candidates.filter((one) => one.line.lineId === lineId);
    const way = own.find((one) => one.option.id === option);
    if (!line) return err(missing);
    if (slot !== null && !own.some((one) => one.option.id === option && one.slot.id === slot))
      return err(unknownWay);
    const sameStep = own
      .filter((one) => way && one.option.stage === way.option.stage)
      .map((one) => one.option.id);
    await tx.planSlot.deleteMany({ where: { planLineId: line.id, option: { in: [option, ...sameStep] } } });
    if (slot !== null) await tx.planSlot.create({ data: { planLineId: line.id, option, slot } });
    const before = line.slots.map((one) => ({ option: one.option, slot: one.slot }));
    return ok({ deed: "plan:place", before: { lineId, placed: before }, after: { lineId, option, slot } });
  });
}

/** Lines a fill changes: all that are free, and those pinned in whose pin the choices keep. */
function filledLines({ lines }: StoredBoard, { choices, back }: FillBoard): StoredBoard["lines"] {
  const asked = new Set(choices.map((one) => JSON.stringify(one)));
  return lines.filter(({ lineId, pin, slots }) => {
    const kept = slots.every(({ option, slot }) =>
      asked.has(JSON.stringify({ lineId, optionId: option, slotId: slot })),
    );
    return pin === "none" || (pin === "in" && (back || kept));
  });
}

/** Replaces what is placed by other choices; what is placed of a line pinned in stays, and one pinned out stays out. */
export async function fillBoard(actor: Actor, wanted: FillBoard): Promise<Result<BoardMark, Refusal>> {
  return edit(actor, wanted, async ({ tx, board, candidates }) => {
    const known = new Set(candidates.map((one) => JSON.stringify(choiceOf(one))));
    const free = new Map(filledLines(board, wanted).map((line) => [line.lineId, line.id]));
    const choices = wanted.choices.filter(({ lineId }) => free.has(lineId));
    if (
      choices.some(({ lineId, optionId, slotId }) => !known.has(JSON.stringify({ lineId, optionId, slotId })))
    )
      return err(unknownWay);
    await tx.planSlot.deleteMany({ where: { planLineId: { in: [...free.values()] } } });
    await tx.planSlot.createMany({
      data: choices.map(({ lineId, optionId, slotId }) => ({
        ...{ planLineId: free.get(lineId) ?? "", option: optionId, slot: slotId },
      })),
    });
    return ok({ deed: "plan:fill", before: {}, after: { choices: choices.length } });
  });
}

/** Decides a line in or out, with a reason. */
export async function pinLine(actor: Actor, wanted: PinLine): Promise<Result<BoardMark, Refusal>> {
  return edit(actor, wanted, async ({ tx, board }) => {
    const line = board.lines.find(({ lineId }) => lineId === wanted.lineId);
    if (!line) return err(missing);
    const { pin, reason } = wanted;
    const said =
      pin === "none" ? { pinReason: null, pinnedBy: null } : { pinReason: reason, pinnedBy: actor.name };
    await tx.planLine.update({ where: { id: line.id }, data: { pin, ...said } });
    if (pin === "out") await tx.planSlot.deleteMany({ where: { planLineId: line.id } });
    const code = line.line.code;
    return ok({
      deed: "plan:pin",
      before: { code, pin: line.pin, reason: line.pinReason },
      after: { code, pin, reason },
    });
  });
}

interface Edited {
  readonly deed: string;
  readonly before: object;
  readonly after: object;
}

interface Editing {
  readonly tx: Transaction;
  readonly board: StoredBoard;
  readonly candidates: readonly Candidate[];
}

/** A change of a draft nobody else changed since the person looked; the lines' costs follow what is placed. */
async function edit(
  actor: Actor,
  { planId, version }: { readonly planId: string; readonly version: number },
  run: (editing: Editing) => Promise<Result<Edited, Refusal>>,
): Promise<Result<BoardMark, Refusal>> {
  const seen = await findBoard(database(), { actor, deed: "plan:write", planId });
  if (!seen) return err(missing);
  const lineIds = seen.lines.map(({ lineId }) => lineId);
  const { evaluator } = await keptGround(actor, { asOf: asOfOf(actor, seen), deed: "plan:write", lineIds });
  return change(actor, async (tx, record) => {
    const { count } = await tx.plan.updateMany({
      where: { id: planId, version, status: "draft", frozen: { equals: Prisma.DbNull } },
      data: { version: { increment: 1 } },
    });
    const board = await findBoard(tx, { actor, deed: "plan:write", planId });
    if (!board) return err(missing);
    if (count === 0) return err(board.status === "draft" ? conflict : frozen);
    const done = await run({ tx, board, candidates: evaluator.candidates });
    if (!done.ok) return done;
    await followCosts(tx, planId, evaluator.candidates);
    const { deed, before, after } = done.value;
    record({ deed, entity: "Plan", entityId: planId, before, after });
    return ok({ planId, version: version + 1 });
  });
}

async function followCosts(tx: Transaction, planId: string, candidates: readonly Candidate[]): Promise<void> {
  const costs = new Map(candidates.map(({ option }) => [option.id, option.cost.typical]));
  const lines = await tx.planLine.findMany({
    where: { planId },
    select: { id: true, cost: true, slots: true },
  });
  for (const { id, cost, slots } of lines) {
    const now = slots.reduce((sum, { option }) => sum + (costs.get(option) ?? 0), 0).toFixed(2);
    if (cost.toFixed(2) !== now)
      await tx.planLine.update({ where: { id }, data: { cost: now, funded: slots.length > 0 } });
  }
}
