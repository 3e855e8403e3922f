import { requireNumber, requireShare } from "@/lib/kernel/requireNumber";
import { earnedValue } from "@/lib/projects/earnedValue";

/** When the warning speaks; common practice, no source. */
export const overrunNorms = {
  /** Share of the work that must be earned before a forecast is taken seriously. */
  leastEarned: 0.15,
  /** How far above the budget of the work the lowest forecast may lie before it is said. */
  tolerance: 0.02,
} as const;

export interface OverrunInput {
  /** Whole budget with approved changes, contingency included. */
  readonly budget: number;
  /** Contingency not yet taken, >= 0. */
  readonly contingencyLeft: number;
  /** Shares of the work, in [0, 1]. */
  readonly planned: number;
  readonly earned: number;
  readonly paid: number;
}

export interface Overrun {
  /**
   * `early`: too little is earned to tell. `kept`: the lowest forecast keeps the budget of the work. `contingency`: it
   * does not, contingency would be needed. `budget`: contingency would not be enough.
   */
  readonly state: "early" | "kept" | "contingency" | "budget";
  /** Budget less contingency: what the work itself may cost. */
  readonly work: number;
  /** Lowest and highest of the three forecasts of the work. */
  readonly low: number;
  readonly high: number;
}

/**
 * Whether even the kindest forecast passes the budget less contingency: an overrun while most of it can be steered.
 *
 * The three estimates at completion are made of the work alone, W = budget - contingency left, with EV = earned * W; on
 * the whole budget a project exactly on plan would already seem to need its contingency.
 *
 * @param norms from when a forecast counts, and the slack it is given.
 * @throws {RangeError} naming the argument and its value.
 */
export function overrun(input: OverrunInput, norms = overrunNorms): Overrun {
  const { budget, contingencyLeft, planned, earned, paid } = input;
  requireNumber(contingencyLeft, "contingencyLeft", { least: 0 });
  const work = requireNumber(budget - contingencyLeft, "budget less contingencyLeft", { least: 0 });
  const { eac } = earnedValue({
    budgetAtCompletion: work,
    planned: requireShare(planned, "planned") * work,
    earned: requireShare(earned, "earned") * work,
    actual: paid,
  });
  const known = Object.values(eac).filter((one) => one !== null);
  const span = { work, low: Math.min(...known), high: Math.max(...known) };
  if (earned < norms.leastEarned) return { state: "early", ...span };
  if (span.low > budget) return { state: "budget", ...span };
  return { state: span.low > work * (1 + norms.tolerance) ? "contingency" : "kept", ...span };
}
