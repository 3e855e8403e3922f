import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Evidence } from "@/lib/risk/evaluation";
import { isMoney, isShare, type PlanFigureKind } from "@/lib/schema/planInputs";
import { plainNumber } from "@/lib/view/number";

/** Which figure: what it states, where, and for which year; null holds for all. */
export interface FigureKey {
  readonly kind: PlanFigureKind;
  readonly siteId: string | null;
  readonly regionId: string | null;
  readonly obligationId: string | null;
  readonly year: number | null;
}

/** A figure as somebody stated it. */
export interface PlanFigure extends FigureKey {
  readonly id: string;
  /** Shares in [0, 1]; money in the currency. */
  readonly value: number;
  readonly currency: string | null;
  /** Money in EUR at the budget rate; null is not money, or no rate is on record. */
  readonly euros: number | null;
  readonly source: string;
  readonly owner: string;
  readonly evidence: Evidence;
  readonly statedOn: IsoDate;
  readonly version: number;
}

export interface BudgetRate {
  readonly currency: string;
  readonly perEuro: number;
  readonly validFrom: IsoDate;
}

export interface InputSite {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly currency: string;
  readonly regionId: string | null;
  /** The person may write figures of the site. */
  readonly writes: boolean;
}

export interface CrewRegion {
  readonly id: string;
  readonly name: string;
  /** Codes of the sites the person may see. */
  readonly sites: readonly string[];
}

export interface InputWindow {
  readonly id: string;
  readonly siteId: string;
  readonly siteCode: string;
  readonly name: string;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  /** Null is not known. */
  readonly usableHours: number | null;
  readonly note: string | null;
  readonly version: number;
}

export interface Freeze {
  readonly id: string;
  readonly name: string;
  readonly freezesOn: IsoDate;
  readonly coversFrom: IsoDate;
  readonly coversTo: IsoDate;
  readonly source: string;
  readonly owner: string;
  readonly version: number;
}

export interface Precedence {
  readonly id: string;
  readonly first: { readonly id: string; readonly code: string };
  readonly following: { readonly id: string; readonly code: string };
  readonly reason: string;
  readonly source: string;
  readonly owner: string;
  readonly version: number;
}

/** A safety or legal duty that is open, with the project that is at it. */
export interface InputDuty {
  readonly id: string;
  readonly lineCode: string | null;
  readonly siteCode: string;
  readonly siteId: string;
  readonly title: string;
  readonly kind: "safety" | "legal";
  readonly dueOn: IsoDate;
  /** Code of a project on the line that is not closed; null has none. */
  readonly project: string | null;
}

/** Everything plans are made with, as far as the person may see it. */
export interface PlanInputs {
  readonly years: readonly number[];
  readonly sites: readonly InputSite[];
  readonly regions: readonly CrewRegion[];
  readonly figures: readonly PlanFigure[];
  readonly rates: readonly BudgetRate[];
  readonly windows: readonly InputWindow[];
  readonly freezes: readonly Freeze[];
  readonly precedences: readonly Precedence[];
  readonly duties: readonly InputDuty[];
  /** The person may see the group's money, and write what holds for the group. */
  readonly seesGroup: boolean;
  readonly writesGroup: boolean;
}

interface KindWords {
  readonly name: string;
  readonly unit: string;
  /** What follows while nobody has stated it. */
  readonly missing: string;
}

const WORDS: Readonly<Record<PlanFigureKind, KindWords>> = {
  budget: { name: "Budget", unit: "a year", missing: "not stated" },
  site_cap: { name: "Most of a year's budget for one site", unit: "%", missing: "not stated: no cap" },
  reserve: { name: "Kept back for emergencies", unit: "%", missing: "not stated: nothing is kept back" },
  discount: { name: "Discount rate", unit: "% a year", missing: "not stated: no plan can be judged" },
  horizon: {
    name: "Years of loss a plan is judged over",
    unit: "years",
    missing: "not stated: no plan can be judged",
  },
  engineer_weeks: { name: "Engineer-weeks for projects", unit: "weeks", missing: "not stated" },
  crews: { name: "Integrator crews at work at once", unit: "crews", missing: "not stated: not limited" },
  weekend_hours: { name: "Usable hours of a weekend", unit: "h", missing: "not stated: no weekend work" },
  sign_off_above: {
    name: "Requests that need the group's signature",
    unit: "and more",
    missing: "not stated",
  },
  sign_off_weeks: { name: "Time the group's signature takes", unit: "weeks", missing: "not stated" },
  worth_per_euro: {
    name: "Worth each euro spent must bring",
    unit: "EUR",
    missing: "not stated: taken as 1",
  },
  duty_cost: { name: "Cost", unit: "", missing: "not stated" },
  duty_hours: { name: "Hours in a shutdown", unit: "h", missing: "not stated" },
  duty_weeks: { name: "Weeks until its parts are here", unit: "weeks", missing: "not stated" },
};

export const kindWords = (kind: PlanFigureKind): KindWords => WORDS[kind];

/** The figure with a key, if somebody stated it. */
export function figureAt(figures: readonly PlanFigure[], key: Partial<FigureKey>): PlanFigure | null {
  const wanted = { siteId: null, regionId: null, obligationId: null, year: null, ...key };
  return (
    figures.find((one) =>
      (["kind", "siteId", "regionId", "obligationId", "year"] as const).every(
        (name) => one[name] === wanted[name],
      ),
    ) ?? null
  );
}

/** A figure's number as it is typed: percent for shares. */
export function typedFigure({ kind, value }: Pick<PlanFigure, "kind" | "value">): string {
  return String(isShare(kind) ? Number((value * 100).toFixed(4)) : value);
}

/** A figure's number as it is read: digits in threes. */
export function figureWords(figure: Pick<PlanFigure, "kind" | "value" | "currency">): string {
  const shown = isShare(figure.kind) ? figure.value * 100 : figure.value;
  const places = Number.isInteger(shown) ? 0 : isMoney(figure.kind) ? 2 : 1;
  const number = plainNumber(shown, places);
  return figure.currency === null ? number : `${figure.currency} ${number}`;
}

/** What no plan can do without and nobody has stated. */
export function missingInputs({ figures, years }: Pick<PlanInputs, "figures" | "years">): string[] {
  const lacks = (key: Partial<FigureKey>) => figureAt(figures, key) === null;
  return [
    ...(years.length === 0 ? ["No budget is stated for a coming year."] : []),
    ...(lacks({ kind: "discount" }) ? ["The discount rate is not stated."] : []),
    ...(lacks({ kind: "horizon" }) ? ["The years of loss a plan is judged over are not stated."] : []),
  ];
}
