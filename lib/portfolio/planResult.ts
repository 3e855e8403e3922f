import type { IsoDate } from "@/lib/kernel/isoDate";
import type { PlanDecision } from "@/lib/portfolio/planProblem";

/** One option of one line, placed in a window or a quarter. */
export interface PlanChoice {
  readonly lineId: string;
  readonly optionId: string;
  /** Id of the window, or of the quarter for work that needs none. */
  readonly slotId: string;
}

/** Something there is only so much of, or that was promised. */
export type LimitName =
  | { readonly kind: "budget"; readonly year: number; readonly siteId: string | null }
  | { readonly kind: "engineers"; readonly region: string; readonly quarterId: string }
  /** Crews at once, on a day; and crew-weeks in a quarter. */
  | { readonly kind: "crews"; readonly region: string; readonly on: IsoDate }
  | { readonly kind: "crew-weeks"; readonly region: string; readonly quarterId: string }
  | { readonly kind: "window"; readonly lineId: string; readonly windowId: string }
  /** The slots of a line begin before its parts can be there or its project be ready. */
  | { readonly kind: "lead-time"; readonly lineId: string }
  | { readonly kind: "must-do"; readonly lineId: string; readonly by: IsoDate }
  | ({ readonly kind: "pin" } & PlanDecision)
  | ({ readonly kind: "ban" } & PlanDecision)
  | { readonly kind: "one-per-stage"; readonly lineId: string; readonly stage: number }
  | { readonly kind: "after" | "commits-to"; readonly lineId: string; readonly optionId: string };

/** Unit of a limit's figures. */
export type LimitUnit = "EUR" | "engineer-weeks" | "crews" | "crew-weeks" | "hours" | "weeks" | "choices";

/** How far a limit is used. */
export interface LimitUse {
  readonly limit: LimitName;
  readonly unit: LimitUnit;
  readonly used: number;
  /** Reserve already taken off. */
  readonly most: number;
}

/** A limit a plan breaks, and by how much. */
export interface BrokenLimit extends LimitUse {
  readonly by: number;
}

/** Why no plan keeps within the limits. */
export interface PlanConflict {
  /** Limits that cannot all be kept; without any one of them they could. */
  readonly clash: readonly LimitName[];
  /** The least that would do, in sum of shares of each limit; safety and legal dates are never relaxed. Null: nothing would. */
  readonly relax: readonly BrokenLimit[] | null;
}

/** What a plan is worth, EUR of the as-of day. */
export interface PlanWorth {
  /** Horizon loss of the group without the plan and with it; lines without a cost per hour are in neither. */
  readonly lossWithout: number;
  readonly lossWith: number;
  /** `lossWithout - lossWith`: what the plan is worth. */
  readonly worth: number;
  /** Of `lossWith`: stops of what is put in, hours lost by the work itself, and yearly costs. */
  readonly residual: number;
  readonly workLoss: number;
  readonly yearlyCosts: number;
  /** Money spent, as of its quarters and as of the as-of day. */
  readonly spent: number;
  readonly spentDiscounted: number;
  /** By line: loss without, loss with; null is not known. */
  readonly lines: readonly {
    readonly lineId: string;
    readonly without: number | null;
    readonly with: number | null;
  }[];
}

/** Days that follow from a choice. */
export interface ChoiceDates {
  readonly choice: PlanChoice;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  /** Last day to order; null when the lead time is not known. */
  readonly orderBy: IsoDate | null;
  /** Last day to start the project. */
  readonly startBy: IsoDate;
  /** Next slot in which it could be done instead, and the worth lost by waiting for it; null when there is none. */
  readonly next: { readonly slotId: string; readonly worthLost: number } | null;
}

/** Value of a run that ended with a plan. */
export interface SolvedPlan {
  readonly choices: readonly PlanChoice[];
  readonly worth: PlanWorth;
  /**
   * The linearised model: what it took its own first plan to be worth, what no plan can exceed in it, and the share
   * between; both less what is asked of each EUR spent.
   */
  readonly model: { readonly objective: number; readonly bound: number; readonly gap: number };
  /** What was asked of each EUR spent; the model's figures are less that. Absent in runs kept before it was told. */
  readonly worthPerEuro?: number;
  /** True worth that exchange and corrected slopes added to the model's first plan, and how many rounds it took. */
  readonly exchangeGain: number;
  readonly rounds: number;
  /** "settled": nothing improves it any more · "time-limit": the ceiling came first · "cancelled". */
  readonly ended: "settled" | "time-limit" | "cancelled";
  /** Every limit with what is used of it, fullest first. */
  readonly limits: readonly LimitUse[];
  readonly dates: readonly ChoiceDates[];
  /** Lines nothing can be chosen for, and lines without a cost per hour. */
  readonly withoutOptions: readonly string[];
  readonly withoutWorth: readonly string[];
}

/** A line just below the funding line. */
export interface BelowLine {
  readonly choice: PlanChoice;
  readonly cost: number;
  /** True worth it would add to the plan as it is. */
  readonly addedWorth: number;
  /** What it would need. */
  readonly needs: readonly BrokenLimit[];
}

/** What stands beside a plan; each is a plan of its own, worth evaluated in the same way. */
export interface PlanCompanions {
  /** Spend the same budgets down the ranking by loss, each line's largest option in its first fitting slot. */
  readonly rankAndCut: { readonly choices: readonly PlanChoice[]; readonly worth: PlanWorth } | null;
  /** The same with no more money in all than the plan spends. Absent in runs kept before it was made. */
  readonly rankSameMoney?: { readonly choices: readonly PlanChoice[]; readonly worth: PlanWorth };
  /** Worth against money: all budgets at a share of what they are. */
  readonly curve: readonly {
    readonly budgetShare: number;
    readonly spent: number;
    readonly worth: number;
  }[];
  /** Worth of so much more group money in one year. */
  readonly moreMoney: readonly { readonly year: number; readonly amount: number; readonly worth: number }[];
  /** Worth lost by each pin and each ban. */
  readonly decisions: readonly {
    readonly kind: "pin" | "ban";
    readonly decision: PlanDecision;
    readonly worthLost: number;
  }[];
  /** EUR an hour at which a chosen line's share of the plan just pays its cost; null when no such cost does. */
  readonly breakEven: readonly {
    readonly lineId: string;
    readonly costPerHour: number;
    readonly atLeast: number | null;
    /** Worth of the plan less its worth without this line. */
    readonly marginalWorth: number;
  }[];
  readonly below: readonly BelowLine[];
}

/** How far a run is. */
export interface SolveProgress {
  readonly step: "reading" | "model" | "exchange" | "companions";
  /** In [0, 1] of the whole run, never falling. */
  readonly done: number;
  /** Best so far, EUR; null before the first. */
  readonly worth: number | null;
  readonly bound: number | null;
}

/** What a run gives. */
export type SolveOutcome =
  | { readonly kind: "plan"; readonly plan: SolvedPlan; readonly companions: PlanCompanions | null }
  | { readonly kind: "infeasible"; readonly conflict: PlanConflict }
  /** Time ran out, or it was cancelled, before any plan was found. */
  | { readonly kind: "none-found" };
