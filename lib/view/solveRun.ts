import type { PlanWorth, SolveOutcome, SolveProgress } from "@/lib/portfolio/planResult";

export type SolveState =
  | "running"
  | "solved"
  | "infeasible"
  | "none_found"
  | "cancelled"
  | "interrupted"
  | "failed";

/** A search for the best plan, without what it found. */
export interface SolveRunMark {
  readonly id: string;
  readonly planId: string;
  readonly state: SolveState;
  /** Version of the plan it was started from. */
  readonly planVersion: number;
  readonly asOf: string;
  readonly engine: string;
  readonly dataVersion: number;
  /** SHA-256 of the whole input; the same input gives the same plan. */
  readonly inputHash: string;
  readonly solver: string;
  readonly seed: number;
  readonly timeLimitSeconds: number;
  readonly progress: SolveProgress;
  /** EUR; null before there is a plan. */
  readonly worth: number | null;
  readonly bound: number | null;
  readonly gap: number | null;
  readonly startedBy: string;
  /** RFC 3339. */
  readonly startedAt: string;
  readonly endedAt: string | null;
}

export interface SolveRunPage extends SolveRunMark {
  /** Null while it runs, and when it ended without one. */
  readonly outcome: SolveOutcome | null;
}

const STATE_WORDS = {
  running: "Searching",
  solved: "Found",
  infeasible: "No plan keeps within the limits",
  none_found: "Time ran out before any plan was found",
  cancelled: "Stopped by hand",
  interrupted: "Interrupted: the server stopped meanwhile",
  failed: "Broke down; the server's log says why",
} satisfies Record<SolveState, string>;

/** How a search stands, in words. */
export function solveStateWords(state: SolveState): string {
  return STATE_WORDS[state];
}

/** A worth told by lines alone, for somebody who may not see the whole group: losses are those of the lines he may see. */
function ofLines(worth: PlanWorth, seen: ReadonlySet<string>): PlanWorth {
  const lines = worth.lines.filter(({ lineId }) => seen.has(lineId));
  const lossWithout = lines.reduce((sum, { without }) => sum + (without ?? 0), 0);
  return { ...worth, lines, lossWithout, lossWith: lossWithout - worth.worth };
}

/**
 * An outcome as somebody may see it: of lines he may not see no loss is told, and the losses without and with the plan
 * are counted from his lines on. What the plan is worth to the whole group stays.
 */
export function outcomeFor(outcome: SolveOutcome, seen: ReadonlySet<string> | null): SolveOutcome {
  if (seen === null || outcome.kind !== "plan") return outcome;
  const { plan, companions } = outcome;
  const withoutWorth = plan.withoutWorth.filter((lineId) => seen.has(lineId));
  const rankAndCut = companions?.rankAndCut;
  const rankSameMoney = companions?.rankSameMoney;
  return {
    kind: "plan",
    plan: { ...plan, worth: ofLines(plan.worth, seen), withoutWorth },
    companions: companions && {
      ...companions,
      rankAndCut: rankAndCut ? { ...rankAndCut, worth: ofLines(rankAndCut.worth, seen) } : null,
      ...(rankSameMoney
        ? { rankSameMoney: { ...rankSameMoney, worth: ofLines(rankSameMoney.worth, seen) } }
        : {}),
    },
  };
}
