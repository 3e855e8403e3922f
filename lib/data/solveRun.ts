import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { type Deed, scopeOf } from "@/lib/access/policy";
import { change } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { asOfOf, decisionsOf, findBoard, type StoredBoard } from "@/lib/data/planning/boardRows";
import { keptGround } from "@/lib/data/planning/keptGround";
import { markInterrupted, runningHere, runSolve, stopSolve } from "@/lib/data/planning/runSolve";
import { keepSolveInput, packed, solveInputOf, unpackedGroup } from "@/lib/data/planning/solveInput";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { SolveOutcome, SolveProgress } from "@/lib/portfolio/planResult";
import type { PlanGroup } from "@/lib/portfolio/planWorth";
import type { StartSolve, WhichSolve } from "@/lib/schema/solveRun";
import { decidedProblem } from "@/lib/view/boardView";
import { outcomeFor, type SolveRunMark, type SolveRunPage } from "@/lib/view/solveRun";
import type { SolveRun } from "@/prisma/generated/client";

const SOLVER = "HiGHS, package highs 1.15.3";
/** The solver's own dice; always the same. */
const SEED = 0;
/** Each search keeps one core busy. */
const MOST_AT_ONCE = 2;
const MOST_LISTED = 20;

const missing: Refusal = { code: "missing", reason: "There is no such plan that you may change." };
const frozen: Refusal = {
  code: "impossible",
  reason: "The plan was put forward and stays as it stood. Start a new issue from it to search again.",
};
const moved: Refusal = {
  code: "conflict",
  reason: "Somebody else changed this plan since you opened it. Load the page again, then start the search.",
};
const busy: Refusal = {
  code: "impossible",
  reason: "This plan is being searched already. Wait for it or stop it.",
};
const full: Refusal = {
  code: "impossible",
  reason: `${MOST_AT_ONCE} searches run on this server already. Try again when one has ended.`,
};

/** Everything a plan is solved from: the plan's own lines, decisions and inputs, and the group as evaluated. */
async function groupOf(actor: Actor, board: StoredBoard) {
  const lineIds = board.lines.map(({ lineId }) => lineId);
  const asOf = asOfOf(actor, board);
  const { ground, evaluator } = await keptGround(actor, { asOf, deed: "plan:write", lineIds });
  const problem = decidedProblem(evaluator, decisionsOf(actor, board));
  const { input, evaluation } = ground;
  const group: PlanGroup = { problem, input, assumptions: evaluation.assumptions };
  return { group, evaluation, solveInput: solveInputOf(evaluation.engine, group) };
}

/** Starts the search for the best plan of a board; it goes on by itself and is read by its id. */
export async function startSolve(
  actor: Actor,
  { planId, version, timeLimitSeconds }: StartSolve,
): Promise<Result<{ readonly runId: string }, Refusal>> {
  await markInterrupted();
  if (runningHere() >= MOST_AT_ONCE) return err(full);
  const board = await findBoard(database(), { actor, deed: "plan:write", planId });
  if (!board) return err(missing);
  if (board.frozen !== null) return err(frozen);
  if (board.version !== version) return err(moved);
  const { group, evaluation, solveInput } = await groupOf(actor, board);
  const inputHash = solveInput.hash;
  const kept = { hash: inputHash, packed: await packed(solveInput) };
  const progress: SolveProgress = { step: "reading", done: 0, worth: null, bound: null };
  const started = await change<string, Refusal>(actor, async (tx, record) => {
    // Rows of one plan are started one after the other.
    await tx.$queryRaw`SELECT "id" FROM "Plan" WHERE "id" = ${planId}::uuid FOR UPDATE`;
    if (await tx.solveRun.findFirst({ where: { planId, state: "running" }, select: { id: true } }))
      return err(busy);
    await keepSolveInput(tx, kept);
    const { id } = await tx.solveRun.create({
      data: {
        ...{ planId, planVersion: version, asOf: board.asOf, inputHash, timeLimitSeconds },
        ...{ engine: evaluation.engine, dataVersion: evaluation.dataVersion },
        ...{ solver: SOLVER, seed: SEED, startedBy: actor.userId },
        progress: { ...progress },
      },
      select: { id: true },
    });
    const after = { planId, version, inputHash, timeLimitSeconds };
    record({ deed: "plan:solve", entity: "SolveRun", entityId: id, after });
    return ok(id);
  });
  if (!started.ok) return started;
  runSolve(started.value, { group, terms: { timeLimitSeconds, companions: true } });
  return ok({ runId: started.value });
}

/** A run of a plan all of whose lines are where the person may do the deed. */
async function findRun(actor: Actor, runId: string, deed: Deed): Promise<SolveRun | null> {
  const line = atSites(actor, deed);
  await markInterrupted();
  return database().solveRun.findFirst({
    where: { id: runId, plan: { lines: { some: { line }, every: { line } } } },
  });
}

async function markOf(runs: readonly Omit<SolveRun, "outcome">[]): Promise<SolveRunMark[]> {
  const people = await database().user.findMany({
    where: { id: { in: runs.map(({ startedBy }) => startedBy) } },
    select: { id: true, name: true },
  });
  const names = new Map(people.map(({ id, name }) => [id, name]));
  return runs.map((run) => ({
    ...{ id: run.id, planId: run.planId, state: run.state, planVersion: run.planVersion },
    ...{ engine: run.engine, dataVersion: Number(run.dataVersion), inputHash: run.inputHash },
    ...{ solver: run.solver, seed: run.seed, timeLimitSeconds: run.timeLimitSeconds },
    asOf: run.asOf.toISOString().slice(0, 10),
    progress: run.progress as unknown as SolveProgress,
    worth: run.worth === null ? null : Number(run.worth),
    bound: run.bound === null ? null : Number(run.bound),
    gap: run.gap === null ? null : Number(run.gap),
    startedBy: names.get(run.startedBy) ?? "somebody no longer listed",
    startedAt: run.startedAt.toISOString(),
    endedAt: run.endedAt?.toISOString() ?? null,
  }));
}

/** The searches of a plan the person may see whole, the latest first, without what they found. */
export async function listSolveRuns(actor: Actor, planId: string): Promise<SolveRunMark[]> {
  await markInterrupted();
  const line = atSites(actor, "read");
  const runs = await database().solveRun.findMany({
    where: { planId, plan: { lines: { some: { line }, every: { line } } } },
    omit: { outcome: true },
    orderBy: { startedAt: "desc" },
    take: MOST_LISTED,
  });
  return markOf(runs);
}

/** A search with what it found; null when there is none of a plan the person may see whole. */
export async function readSolveRun(actor: Actor, runId: string): Promise<SolveRunPage | null> {
  const run = await findRun(actor, runId, "read");
  if (!run) return null;
  const { outcome, ...rest } = run;
  const [mark] = await markOf([rest]);
  const seen = await seenLines(actor);
  return {
    ...(mark as SolveRunMark),
    outcome: outcome === null ? null : outcomeFor(outcome as unknown as SolveOutcome, seen),
  };
}

/**
 * The group a search was made from, as it was then, so that it can be searched again; null when there is no such run,
 * or it is of before inputs were kept, or the person may not see every site: it holds the stock of all of them.
 */
export async function readSolveInput(actor: Actor, runId: string): Promise<PlanGroup | null> {
  if (scopeOf(actor.grants, "read") !== "all") return null;
  const run = await findRun(actor, runId, "read");
  if (!run) return null;
  const kept = await database().solveInput.findUnique({ where: { hash: run.inputHash } });
  return kept ? unpackedGroup(kept.packed) : null;
}

/** Ids of the lines the person may see; null is all. */
async function seenLines(actor: Actor): Promise<ReadonlySet<string> | null> {
  if (scopeOf(actor.grants, "read") === "all") return null;
  const lines = await database().line.findMany({ where: atSites(actor, "read"), select: { id: true } });
  return new Set(lines.map(({ id }) => id));
}

/** Stops a search; the best plan it had found by then is kept with it. */
export async function cancelSolve(
  actor: Actor,
  { runId }: WhichSolve,
): Promise<Result<{ readonly runId: string }, Refusal>> {
  const run = await findRun(actor, runId, "plan:write");
  if (!run) return err(missing);
  if (run.state !== "running")
    return err({ code: "impossible", reason: "That search has ended already; there is nothing to stop." });
  const stopped = await change<{ readonly runId: string }, Refusal>(actor, async (_, record) => {
    record({ deed: "plan:solve-stop", entity: "SolveRun", entityId: runId });
    return ok({ runId });
  });
  await stopSolve(runId);
  return stopped;
}
