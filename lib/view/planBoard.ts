import type { IsoDate } from "@/lib/kernel/isoDate";
import type { OptionKind, PlanCost } from "@/lib/portfolio/planProblem";
import type { PlanChoice, PlanWorth } from "@/lib/portfolio/planResult";
import type { ScopeOption } from "@/lib/retrofit/scope/scopeOptions";
import type { Span } from "@/lib/risk/evaluation";
import type { DutyMark } from "@/lib/view/obligation";
import type { PlanInputs } from "@/lib/view/planInputs";

/** A stretch of time a way can be put into. */
export interface BoardSlot {
  readonly id: string;
  readonly name: string;
  readonly quarterId: string;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  /** Clock hours of work beyond what may be planned there; 0 fits. */
  readonly shortHours: number;
  /** Weeks it comes too early for its parts and preparation; 0 is in time. */
  readonly earlyWeeks: number;
}

/** A costed way to treat a line, with where it can be put. */
export interface BoardWay {
  readonly id: string;
  readonly kind: OptionKind;
  readonly name: string;
  readonly stage: number;
  readonly cost: Pick<PlanCost, "low" | "typical" | "high">;
  readonly windowHours: number;
  readonly engineerWeeks: number;
  readonly crewWeeks: number;
  /** Weeks from order to receipt with purchase and test; null is not known. */
  readonly orderWeeks: number | null;
  readonly projectWeeks: number;
  /** Units taken out and kept for a test. */
  readonly released: number;
  /** Names of ways one of which has to be over before. */
  readonly after: readonly string[];
  readonly slots: readonly BoardSlot[];
}

/** A way in its place. */
export interface Placed {
  readonly optionId: string;
  readonly name: string;
  readonly stage: number;
  readonly slotId: string;
  readonly slotName: string;
  readonly quarterId: string;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  readonly cost: Pick<PlanCost, "low" | "typical" | "high">;
  /** Null when a lead time is not known. */
  readonly orderBy: IsoDate | null;
  readonly startBy: IsoDate;
  /** Typical cost by quarter, EUR. */
  readonly phasing: readonly { readonly quarterId: string; readonly euros: number }[];
  /** Next place it could go to and the worth lost by waiting; null has none. */
  readonly next: { readonly slotName: string; readonly worthLost: number } | null;
}

export interface BoardAcceptance {
  readonly acceptedBy: string;
  readonly until: IsoDate;
}

export interface BoardLine {
  readonly lineId: string;
  readonly code: string;
  readonly name: string;
  readonly siteId: string;
  readonly rank: number;
  readonly stopLoss: Span | null;
  readonly pin: "in" | "out" | "none";
  readonly pinReason: string | null;
  readonly pinnedBy: string | null;
  readonly duties: readonly DutyMark[];
  readonly acceptance: BoardAcceptance | null;
  readonly ways: readonly BoardWay[];
  readonly placed: readonly Placed[];
  /** Loss over the horizon without and with the plan, EUR; null is not known. */
  readonly without: number | null;
  readonly with: number | null;
}

/** A line that is not planned, with what planning it as soon as can be would bring and need. */
export interface BelowRow {
  readonly lineId: string;
  readonly code: string;
  readonly rank: number;
  /** What would be done, where; null when no way can be finished within the plan. */
  readonly way: { readonly words: string; readonly cost: number; readonly addedWorth: number } | null;
  /** Limits it would break that are kept now. */
  readonly needs: readonly BrokenWords[];
}

/** A limit that is broken, in words. */
export interface BrokenWords {
  readonly what: string;
  /** How much is used of how much; null is a promise that is not kept. */
  readonly numbers: string | null;
  /** Lines it is about; empty is the plan as a whole. */
  readonly lineIds: readonly string[];
}

export interface UsedRow {
  readonly what: string;
  readonly quarterId: string;
  readonly used: number;
  readonly most: number | null;
}

export interface YearMoney {
  readonly year: number;
  /** What there is less the reserve, EUR; null is not stated. */
  readonly most: number | null;
  readonly budget: number | null;
  readonly spent: number;
}

export interface SiteMoney extends YearMoney {
  readonly siteId: string;
}

export interface QuarterCash {
  readonly quarterId: string;
  readonly euros: number;
  /** Money of each site's own currency at the budget rate. */
  readonly local: Readonly<Record<string, number>>;
}

/** A plan over years as every screen and document shows it; plain values, so that it can be kept as it stood. */
export interface BoardView {
  readonly asOf: IsoDate;
  readonly engine: string;
  readonly dataVersion: number;
  readonly assumptions: string;
  readonly quarters: readonly { readonly id: string; readonly year: number; readonly startsOn: IsoDate }[];
  readonly inputs: PlanInputs;
  readonly lines: readonly BoardLine[];
  /** Lines no way can be chosen for, with the reason. */
  readonly unplannable: readonly { readonly code: string; readonly name: string; readonly why: string }[];
  readonly worth: Omit<PlanWorth, "lines">;
  readonly choices: readonly PlanChoice[];
  readonly broken: readonly BrokenWords[];
  readonly years: readonly YearMoney[];
  readonly sites: readonly SiteMoney[];
  readonly cash: readonly QuarterCash[];
  readonly engineers: readonly UsedRow[];
  readonly crews: readonly UsedRow[];
  readonly reserveShare: number;
  readonly horizonMonths: number;
  readonly discountRate: number;
  readonly windowFill: number;
}

/** A plan with what is said of it. */
export interface BoardPage {
  readonly id: string;
  readonly name: string;
  readonly version: number;
  readonly status: "draft" | "put_forward" | "funded" | "declined";
  readonly issue: number;
  readonly former: { readonly id: string; readonly issue: number } | null;
  readonly createdBy: string;
  readonly createdOn: IsoDate;
  /** Day it was put forward; null while it can be changed. */
  readonly frozenOn: IsoDate | null;
  readonly view: BoardView;
  /** Both are worked out where they are shown, and when the plan is put forward. */
  readonly below: readonly BelowRow[];
  readonly considered: readonly Considered[];
}

/** The ways to treat a planned line, from doing nothing on, as the scope of its retrofit costs them. */
export interface Considered {
  readonly lineId: string;
  readonly options: readonly ScopeOption[];
}

/** Whether a day of a placed way has been missed already. */
export function missedDays({ orderBy, startBy }: Pick<Placed, "orderBy" | "startBy">, asOf: IsoDate) {
  return { order: orderBy !== null && orderBy < asOf, start: startBy < asOf };
}

/** All that is spent on a line, typical; 0 when nothing is placed. */
export const costOfLine = ({ placed }: BoardLine): number =>
  placed.reduce((sum, { cost }) => sum + cost.typical, 0);
