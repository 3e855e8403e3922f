import { parentPort, workerData } from "node:worker_threads";
import type { SolveMessage, SolveTask } from "@/lib/jobs/solveThread";
import { solvePlan } from "@/lib/portfolio/solvePlan";

/** Entry of the thread that solves a plan; started by solveThread.ts, told the task and asked nothing more. */
const { group, terms } = workerData as SolveTask;
const started = performance.now();
const say = (message: SolveMessage) => parentPort?.postMessage(message);

const outcome = await solvePlan(group, terms, {
  seconds: () => (performance.now() - started) / 1000,
  report: (progress) => say({ progress }),
});
say({ outcome });
