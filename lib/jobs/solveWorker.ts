import { parentPort, workerData } from "node:worker_threads";
import type { SolveMessage, SolveStart } from "@/lib/jobs/solveThread";
import { solvePlan } from "@/lib/portfolio/solvePlan";

/** Entry of the thread that solves a plan; started by solveThread.ts, told the task, asked nothing more but to stop. */
const { group, terms, stop } = workerData as SolveStart;
const started = performance.now();
const say = (message: SolveMessage) => parentPort?.postMessage(message);

const outcome = await solvePlan(group, terms, {
  seconds: () => (performance.now() - started) / 1000,
  stopped: () => Atomics.load(stop, 0) === 1,
  report: (progress) => say({ progress }),
});
say({ outcome });
