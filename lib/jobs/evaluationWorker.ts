import { parentPort } from "node:worker_threads";
import { evaluationDesk } from "@/lib/jobs/evaluationDesk";
import type { EvaluationAsk } from "@/lib/jobs/evaluationThread";

/** Entry of the thread that evaluates; started by evaluationThread.ts. */
const answer = evaluationDesk();

parentPort?.on("message", (ask: EvaluationAsk) => parentPort?.postMessage(answer(ask)));
