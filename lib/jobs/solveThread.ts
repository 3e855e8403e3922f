import { pathToFileURL } from "node:url";
import { Worker } from "node:worker_threads";
import { isServedByNext } from "@/lib/env";
import type { SolveOutcome, SolveProgress } from "@/lib/portfolio/planResult";
import type { PlanGroup } from "@/lib/portfolio/planWorth";
import type { SolveTerms } from "@/lib/portfolio/solvePlan";

/** What a thread solves; plain values, copied into it. */
export interface SolveTask {
  readonly group: PlanGroup;
  readonly terms: SolveTerms;
}

export type SolveMessage = { readonly progress: SolveProgress } | { readonly outcome: SolveOutcome };

export interface SolveThread {
  /** The outcome, or null when it was stopped before it had one. Rejects when the thread breaks down. */
  readonly ended: Promise<SolveOutcome | null>;
  /** Asks it to end with the best it has, and ends it at once when it does not in time. */
  stop(): Promise<void>;
}

/** What the thread is started with. */
export interface SolveStart extends SolveTask {
  /** One number, set to 1 once somebody wants it to end. */
  readonly stop: Int32Array;
}

/** Between two looks at the stop a thread may be setting a model up. */
const STOP_WITHIN_MS = 10_000;

/** An evaluation makes many small things that die at once; the default would collect them too often. */
const YOUNG_MEGABYTES = 192;

const limits = { maxYoungGenerationSizeMb: YOUNG_MEGABYTES };

/** Outside the built server nothing has compiled the entry, so the thread does it itself. */
const COMPILE_AND_START = `
  const { workerData } = require("node:worker_threads");
  import("tsx/esm/api").then(({ register }) => {
    register();
    return import(workerData.entry);
  });`;

function startThread(task: SolveStart): Worker {
  if (isServedByNext())
    return new Worker(new URL("./solveWorker.ts", import.meta.url), {
      ...{ workerData: task, execArgv: [], resourceLimits: limits },
    });
  const entry = `${pathToFileURL(process.cwd())}/lib/jobs/solveWorker.ts`;
  return new Worker(/* turbopackIgnore: true */ COMPILE_AND_START, {
    ...{ eval: true, workerData: { ...task, entry }, execArgv: [], resourceLimits: limits },
  });
}

/** Solves a plan in a thread of its own, so that pages answer meanwhile. */
export function solveInThread(task: SolveTask, hear: (progress: SolveProgress) => void): SolveThread {
  const flag = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const worker = startThread({ ...task, stop: flag });
  const ended = new Promise<SolveOutcome | null>((resolve, reject) => {
    worker.on("message", (message: SolveMessage) => {
      if ("progress" in message) hear(message.progress);
      else resolve(message.outcome);
    });
    worker.once("error", reject);
    worker.once("exit", () => resolve(null));
  });
  return {
    ended,
    stop: async () => {
      Atomics.store(flag, 0, 1);
      const patience = setTimeout(() => void worker.terminate(), STOP_WITHIN_MS);
      await ended.catch(() => null);
      clearTimeout(patience);
    },
  };
}
