import type { IsoDate } from "@/lib/kernel/isoDate";

/** Ways to treat a line, from doing nothing to replacing it. */
export type OptionKind =
  | "nothing"
  | "care"
  | "stock"
  | "repair"
  | "pool"
  | "controller"
  | "partial"
  | "full"
  | "replace";

/** Units of one pool (part) of the group that an option takes out of its line. */
export interface RemovedUnits {
  readonly poolId: string;
  /** Whole, >= 0; never more than the line has. */
  readonly units: number;
  /**
   * What becomes of them: "kept" are tested and reach the shelf on the day the work ends, each working with chance
   * `works`; "unproven" reach it untested, each counting as the assumptions say of unproven pieces; "scrapped" are gone.
   */
  readonly fate: "kept" | "unproven" | "scrapped";
  /** Chance that a kept unit passes its test, in [0, 1]; null is the group's assumption. */
  readonly works: number | null;
}

/** Units of one pool that an option puts into its line. The pool is one of the group input, with units or without. */
export interface AddedUnits {
  readonly poolId: string;
  /** Whole, >= 0. */
  readonly units: number;
}

/** Spares an option brings to the shelf of a pool on the day its work ends. */
export interface BoughtSpares {
  readonly poolId: string;
  /** Whole, >= 0. */
  readonly pieces: number;
  /** Chance that each works, in [0, 1]. */
  readonly works: number;
}

/** Part of a quantity that falls so many quarters before the quarter in which the work starts; 0 is that quarter. */
export interface Phase {
  readonly quartersBefore: number;
  /** In [0, 1]; the shares of one quantity add up to 1. A quarter before the first of the plan counts as the first. */
  readonly share: number;
}

/** What an option costs, EUR at the budget rate; the plan holds `typical` against the budgets. */
export interface PlanCost {
  readonly low: number;
  readonly typical: number;
  readonly high: number;
  /** When the money is spent; absent is all in the quarter of the work. */
  readonly phases?: readonly Phase[];
}

/** One costed way to treat one line (or one stage of it). */
export interface PlanOption {
  /** Unique in the plan. */
  readonly id: string;
  readonly kind: OptionKind;
  readonly name: string;
  /**
   * Of one line at most one option of each stage is chosen: 1 unless the line is treated in steps ("controller first"
   * is stage 1, "drives after it" stage 2).
   */
  readonly stage: number;
  readonly cost: PlanCost;
  /** EUR a year from the day the work ends; 0 for none. */
  readonly yearlyCost: number;
  /** Clock hours of work in a shutdown, careful end; 0 needs none and can be done in any quarter. */
  readonly windowHours: number;
  /** Hours the line stands beyond the window, and hours of production lost while it is run up again. */
  readonly extraStopHours: number;
  readonly rampUpHours: number;
  /** Engineer-weeks by region, and when they fall; absent phases are the quarter of the work. */
  readonly engineerWeeks: readonly {
    readonly region: string;
    readonly weeks: number;
    readonly phases?: readonly Phase[];
  }[];
  /** Crew on site: so many at once while the work lasts, and crew-weeks in all; null needs none. */
  readonly crew: { readonly region: string; readonly crews: number; readonly weeks: number } | null;
  /** Weeks from the order of the slowest part to its receipt (careful), with purchase and test; null is not known. */
  readonly orderWeeks: number | null;
  /** Weeks of engineering, panel building and staging before the work starts. */
  readonly projectWeeks: number;
  readonly removes: readonly RemovedUnits[];
  readonly adds: readonly AddedUnits[];
  readonly buys: readonly BoughtSpares[];
  /**
   * For what is put in but is in no pool of `adds`: its loss as a share of what the removed units would lose with a
   * spare always at hand, in [0, 1]. 0 when `adds` names everything.
   */
  readonly residualShare: number;
  /** For so many months after the work, what was put in fails so much more often (0.5 is half as often again). */
  readonly earlyFailures: { readonly months: number; readonly extraShare: number };
  /** May be chosen only when one of these options is done before it starts; empty needs nothing. */
  readonly after: readonly string[];
  /** Choosing it obliges the plan to one of these as well, to start later; empty obliges to nothing. */
  readonly commitsTo: readonly string[];
}

/** A duty by law or for safety; money is not weighed against it. */
export interface MustDo {
  /** Last day on which the work may end. */
  readonly by: IsoDate;
  /** Options that fulfil it; empty is any but "nothing", "care" and "stock". */
  readonly optionIds: readonly string[];
  readonly reason: string;
}

/** A line with its options; doing nothing is always possible and needs no option of its own. */
export interface PlanLineInput {
  readonly lineId: string;
  readonly code: string;
  readonly siteId: string;
  readonly options: readonly PlanOption[];
  readonly mustDo: MustDo | null;
}

/** A quarter of the plan. */
export interface PlanQuarter {
  /** Such as "2027-Q1"; unique. */
  readonly id: string;
  /** Budget year. */
  readonly year: number;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
}

/** A shutdown in which work can be done. */
export interface PlanWindow {
  readonly id: string;
  readonly name: string;
  readonly siteId: string;
  /** Null is the whole site. */
  readonly lineId: string | null;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  /** Clock hours of work possible on each line; null is not known, and then nothing is planned into it. */
  readonly usableHours: number | null;
}

/** Money of a year for the group (site null) or at most so much of it for one site. */
export interface PlanBudget {
  readonly year: number;
  readonly siteId: string | null;
  /** EUR at the budget rate, >= 0. */
  readonly amount: number;
  /** As it was granted, when in another currency; shown, not computed with. */
  readonly granted?: { readonly amount: string; readonly currency: string; readonly perEuro: number };
}

/** Engineer-weeks there are in a region in a quarter; a quarter not named has none. Regions never named are unlimited. */
export interface EngineerLimit {
  readonly region: string;
  readonly quarterId: string;
  readonly weeks: number;
}

/** Crews there are in a region from day to day, both included. Regions never named are unlimited. */
export interface CrewLimit {
  readonly region: string;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  readonly crews: number;
}

/** What a person decided: about a line, one of its options, or one of them in one slot. */
export interface PlanDecision {
  readonly lineId: string;
  /** Null is any option. */
  readonly optionId: string | null;
  /** Id of a window or a quarter; null is any. */
  readonly slotId: string | null;
}

/** Everything a multi-year plan is made from, as plain values; the group's engine input goes beside it. */
export interface PlanProblem {
  readonly asOf: IsoDate;
  readonly lines: readonly PlanLineInput[];
  /** In order of time, without gaps. */
  readonly quarters: readonly PlanQuarter[];
  readonly windows: readonly PlanWindow[];
  /** Share of a window's usable hours that may be planned, in (0, 1]; 0.8 by common practice. */
  readonly windowFill: number;
  readonly budgets: readonly PlanBudget[];
  /** Share of every budget kept back for emergencies, in [0, 1); 0.08 to 0.12 by common practice. */
  readonly reserveShare: number;
  readonly engineers: readonly EngineerLimit[];
  readonly crews: readonly CrewLimit[];
  /** At least one choice of each of these. */
  readonly pins: readonly PlanDecision[];
  /** No choice of any of these. */
  readonly bans: readonly PlanDecision[];
  /** Share a year a later loss or payment weighs less, >= 0. */
  readonly discountRate: number;
  /** Months from the as-of day over which losses count, at most those the assumptions compute. */
  readonly horizonMonths: number;
  /**
   * EUR of worth a plan must bring for each EUR spent: 0 takes whatever lowers the loss within the budgets, 1 only what
   * pays for itself within the horizon.
   */
  readonly worthPerEuro: number;
}
