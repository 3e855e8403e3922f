import { isServedByNext } from "@/lib/env";
import { threadEvaluator } from "@/lib/jobs/evaluationThread";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { EvaluatedGroup } from "@/lib/risk/evaluateGroup";
import type { GroupInput } from "@/lib/risk/evaluation";
import { type GroupRows, type PoolChange, tellStep, tellWhole } from "@/lib/risk/tellGroup";

/** An evaluation somebody holds, to step on from: itself, or its number in the thread that has it. */
export type Held = EvaluatedGroup | number;

export interface Computed {
  readonly held: Held;
  readonly rows: GroupRows;
}

/** Who evaluates the group. What is stepped on from stays held, as what came of it may not be kept. */
export interface Evaluator {
  whole(input: GroupInput, assumptions: Assumptions): Promise<Computed>;
  /** Null when it is not held any more, or is no ground for the change. */
  step(from: Held, change: PoolChange): Promise<Computed | null>;
}

const here: Evaluator = {
  whole: async (input, assumptions) => {
    const { group, rows } = tellWhole(input, assumptions);
    return { held: group, rows };
  },
  step: async (from, change) => {
    const told = typeof from === "number" ? null : tellStep(from, change);
    return told && { held: told.group, rows: told.rows };
  },
};

/** A thread of its own in the built server, so that pages answer meanwhile; programs and tests wait for it anyway. */
export const evaluator = (): Evaluator => (isServedByNext() ? threadEvaluator : here);
