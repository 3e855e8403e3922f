import type { Assumptions } from "@/lib/risk/assumptions";
import type { GroupInput } from "@/lib/risk/evaluation";

/** All an evaluation reads: enough to compute it again. */
export interface SnapshotInput {
  readonly input: GroupInput;
  readonly assumptions: Assumptions;
}

/** What can move between two snapshots, in the order it is changed; the last is the clock, the as-of day. */
export const MOVED_STEPS = ["corrections", "events", "stock", "dates", "assumptions", "clock"] as const;

export type MovedStep = (typeof MOVED_STEPS)[number];
