import "server-only";
import { database } from "@/lib/data/client";
import { type SolveTask, type SolveThread, solveInThread } from "@/lib/jobs/solveThread";
import type { SolveOutcome, SolveProgress } from "@/lib/portfolio/planResult";
import type { Prisma } from "@/prisma/generated/client";

const BEAT_MS = 2_000;
/** A run without a sign of life for so long runs nowhere any more. */
const SILENT_SECONDS = 60;

/** A search of this process, and when all it found is stored. */
interface Running {
  readonly thread: SolveThread;
  readonly stored: Promise<void>;
}

/** The searches of this process; kept over hot reloads. */
const kept = globalThis as typeof globalThis & { ebblineSolves?: Map<string, Running> };

function threads(): Map<string, Running> {
  kept.ebblineSolves ??= new Map();
  return kept.ebblineSolves;
}

/** JSON has no infinities and no undefined; what is computed has neither. */
const asJson = (value: SolveOutcome | SolveProgress): Prisma.InputJsonValue =>
  JSON.parse(JSON.stringify(value)) as Prisma.InputJsonValue;

/** Marks as interrupted what some process once ran and no process runs now. */
export async function markInterrupted(): Promise<void> {
  const own = [...threads().keys()];
  await database().$executeRaw`
    UPDATE "SolveRun" SET "state" = 'interrupted', "endedAt" = now()
    WHERE "state" = 'running' AND NOT ("id" = ANY(${own}::uuid[]))
      AND "beatAt" < now() - make_interval(secs => ${SILENT_SECONDS})`;
}

/** Number of searches this process runs. */
export const runningHere = (): number => threads().size;

/** Starts the thread of a stored run; it writes its own progress and end. */
export function runSolve(runId: string, task: SolveTask): void {
  let progress: SolveProgress | null = null;
  const thread = solveInThread(task, (heard) => {
    progress = heard;
  });
  const beat = setInterval(() => {
    void beatOf(runId, progress, thread);
  }, BEAT_MS);
  const stored = thread.ended
    .then((outcome) => (outcome ? keepOutcome(runId, outcome) : end(runId, { state: "cancelled" })))
    .catch(async (error: unknown) => {
      process.stderr.write(`Search ${runId}: ${error instanceof Error ? error.stack : String(error)}\n`);
      await end(runId, { state: "failed" });
    })
    .finally(() => {
      clearInterval(beat);
      threads().delete(runId);
    });
  threads().set(runId, { thread, stored });
}

/** A sign of life; a run somebody ended elsewhere is stopped here. */
async function beatOf(runId: string, progress: SolveProgress | null, thread: SolveThread): Promise<void> {
  const { count } = await database().solveRun.updateMany({
    where: { id: runId, state: "running" },
    data: {
      beatAt: new Date(),
      ...(progress
        ? { progress: asJson(progress), worth: money(progress.worth), bound: money(progress.bound) }
        : {}),
    },
  });
  if (count === 0) await thread.stop();
}

const money = (value: number | null): string | null => (value === null ? null : value.toFixed(2));

type Ending = Prisma.SolveRunUpdateManyMutationInput;

/** Ends a run once; what was ended before stays as it was. */
async function end(runId: string, data: Ending): Promise<void> {
  await database().solveRun.updateMany({
    where: { id: runId, state: "running" },
    data: { ...data, endedAt: new Date() },
  });
}

async function keepOutcome(runId: string, outcome: SolveOutcome): Promise<void> {
  if (outcome.kind === "none-found") return end(runId, { state: "none_found" });
  if (outcome.kind === "infeasible") return end(runId, { state: "infeasible", outcome: asJson(outcome) });
  const { worth, model } = outcome.plan;
  const found = {
    outcome: asJson(outcome),
    ...{ worth: money(worth.worth), bound: money(model.bound), gap: model.gap.toFixed(6) },
    progress: asJson({ step: "companions", done: 1, worth: worth.worth, bound: model.bound }),
  };
  await end(runId, { state: "solved", ...found });
  // One stopped by hand stays stopped, with the best plan it had.
  await database().solveRun.updateMany({ where: { id: runId, state: "cancelled" }, data: found });
}

/**
 * Ends a run wherever it runs: its own process tells the thread, another one at its next sign of life. What it had found
 * by then is kept.
 */
export async function stopSolve(runId: string): Promise<void> {
  await end(runId, { state: "cancelled" });
  const running = threads().get(runId);
  await running?.thread.stop();
  await running?.stored;
}
