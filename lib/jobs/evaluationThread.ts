import { Worker } from "node:worker_threads";
import type { Evaluator } from "@/lib/jobs/evaluator";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { GroupInput } from "@/lib/risk/evaluation";
import type { GroupRows, PoolChange } from "@/lib/risk/tellGroup";

/** What the thread is asked; the evaluation that comes of it is held there under the number. */
export type EvaluationAsk =
  | { readonly number: number; readonly input: GroupInput; readonly assumptions: Assumptions }
  | { readonly number: number; readonly from: number; readonly change: PoolChange };

/** Its answer: rows to store, or why there are none. */
export type EvaluationAnswer =
  | { readonly number: number; readonly rows: GroupRows | null }
  | { readonly number: number; readonly failed: string };

/** An evaluation makes many small things that die at once; the default would collect them too often. */
const YOUNG_MEGABYTES = 192;

interface Waiting {
  readonly resolve: (rows: GroupRows | null) => void;
  readonly reject: (reason: Error) => void;
}

interface Thread {
  worker?: Worker;
  readonly waiting: Map<number, Waiting>;
  last: number;
}

const kept = globalThis as typeof globalThis & { ebblineEvaluationThread?: Thread };

/** The one thread of the process, for all parts of the build; kept over hot reloads with what it holds. */
function thread(): Thread {
  kept.ebblineEvaluationThread ??= { waiting: new Map(), last: 0 };
  return kept.ebblineEvaluationThread;
}

function start(): Worker {
  const { waiting } = thread();
  const worker = new Worker(new URL("./evaluationWorker.ts", import.meta.url), {
    execArgv: [],
    resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MEGABYTES },
  });
  worker.on("message", (answer: EvaluationAnswer) => {
    const asked = waiting.get(answer.number);
    waiting.delete(answer.number);
    if ("rows" in answer) asked?.resolve(answer.rows);
    else asked?.reject(new Error(`The evaluation failed: ${answer.failed}`));
  });
  let reason = new Error("The thread of the evaluation ended");
  worker.once("error", (error) => {
    reason = error instanceof Error ? error : new Error(String(error));
  });
  worker.once("exit", () => {
    delete thread().worker;
    for (const { reject } of waiting.values()) reject(reason);
    waiting.clear();
  });
  // It ends with the process and keeps nothing open.
  worker.unref();
  return worker;
}

function ask(question: EvaluationAsk): Promise<GroupRows | null> {
  const own = thread();
  return new Promise((resolve, reject) => {
    own.waiting.set(question.number, { resolve, reject });
    own.worker ??= start();
    own.worker.postMessage(question);
  });
}

/** Evaluates in the thread; what it holds has a number here. */
export const threadEvaluator: Evaluator = {
  whole: async (input, assumptions) => {
    const number = nextNumber();
    const rows = await ask({ number, input, assumptions });
    if (!rows) throw new Error("A whole evaluation came without rows");
    return { held: number, rows };
  },
  step: async (from, change) => {
    if (typeof from !== "number") return null;
    const number = nextNumber();
    const rows = await ask({ number, from, change });
    return rows && { held: number, rows };
  },
};

function nextNumber(): number {
  thread().last += 1;
  return thread().last;
}
