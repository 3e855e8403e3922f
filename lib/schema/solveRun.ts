import { z } from "zod";

const LONGEST_SECONDS = 600;

/** Asks for the best plan of a board; `version` is the plan's as the person saw it. */
export const startSolve = z.strictObject({
  planId: z.uuid(),
  version: z.int().positive(),
  /** Ceiling of the search. */
  timeLimitSeconds: z.int().min(5).max(LONGEST_SECONDS),
});

export const whichSolve = z.strictObject({ runId: z.uuid() });

export type StartSolve = z.output<typeof startSolve>;
export type WhichSolve = z.output<typeof whichSolve>;
