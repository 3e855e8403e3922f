import "server-only";
import { noteTrouble } from "@/lib/access/securityLog";
import { troubleOf } from "@/lib/access/trouble";
import { database } from "@/lib/data/client";
import { type SolveTask, type SolveThread, solveInThread } from "@/lib/jobs/solveThread";
import type { SolveOutcome, SolveProgress } from "@/lib/portfolio/planResult";
import type { Prisma } from "@/prisma/generated/client";

const BEAT_MS = 2_000;
/** A run without a sign of life for so long runs nowhere any more. */
const SILENT_SECONDS = 60;
/** How long a search waits for the database to keep what it found. */
const STORE_WITHIN_MS = 600_000;

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
    // One that the database did not hear is followed by the next.
    beatOf(runId, progress, thread).catch(() => undefined);
  }, BEAT_MS);
  const stored = thread.ended
    .then((outcome) => storeUntilKept(runId, () => keepEnd(runId, outcome)))
    .catch((error: unknown) => {
      noteTrouble(`search ${runId}`, error);
      return storeUntilKept(runId, () => end(runId, { state: "failed" }));
    })
    .finally(() => {
      clearInterval(beat);
      threads().delete(runId);
    });
  threads().set(runId, { thread, stored });
}

/** What a search found is not lost while the database is away: it is written once that is back. */
async function storeUntilKept(runId: string, write: () => Promise<void>): Promise<void> {
  const end = performance.now() + STORE_WITHIN_MS;
  for (;;) {
    try {
      return await write();
    } catch (error) {
      if (troubleOf(error) !== "away") throw error;
      if (performance.now() > end) {
        process.stderr.write(
          `Search ${runId}: what it found could not be stored, the database being away.\n`,
        );
        return;
      }
    }
    await new Promise((resolve) => setTimeout(resolve, BEAT_MS));
  }
}

/** A sign of life by the clock of the database, the only one all processes share; a run ended elsewhere is stopped here. */
async function beatOf(runId: string, progress: SolveProgress | null, thread: SolveThread): Promise<void> {
  const { worth, bound } = progress ?? { worth: null, bound: null };
  const count = await database().$executeRaw`
    UPDATE "SolveRun" SET "beatAt" = now(),
      "progress" = coalesce(${progress && JSON.stringify(progress)}::jsonb, "progress"),
      "worth" = coalesce(${money(worth)}::numeric, "worth"), "bound" = coalesce(${money(bound)}::numeric, "bound")
    WHERE "id" = ${runId}::uuid AND "state" = 'running'`;
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

async function keepEnd(runId: string, outcome: SolveOutcome | null): Promise<void> {
  if (outcome === null) return end(runId, { state: "cancelled" });
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
