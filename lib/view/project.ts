import { placesOf } from "@/lib/kernel/currency";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Amount } from "@/lib/kernel/money";
import { earnedValue } from "@/lib/projects/earnedValue";
import {
  type BudgetChange,
  type ClassAmount,
  type Ledger,
  type LedgerEntry,
  ledger,
} from "@/lib/projects/ledger";
import { type Overrun, overrun } from "@/lib/projects/overrun";
import { type AxisCount, type Progress, progress } from "@/lib/projects/progress";
import type { AxisStepKind } from "@/lib/schema/axisStep";

export type ProjectStatus = "funded" | "in_work" | "proving" | "accepted" | "closed" | "parked";

export interface ProjectMilestone {
  readonly id: string;
  readonly sequence: number;
  readonly name: string;
  /** Percent of the budget it earns, or any weight; only shares of the sum matter. */
  readonly weight: number;
  readonly dueOn: IsoDate | null;
  readonly doneOn: IsoDate | null;
  /** Step of its axes it is earned by, and how many have done it; null is earned whole. */
  readonly axisStep: AxisStepKind | null;
  readonly axes: AxisCount | null;
}

/** What an entry was in its own currency, and the dated rate it was converted at. */
export interface OwnMoney {
  readonly amount: Amount;
  readonly currency: string;
  /** Units of the project's currency for one of its own. */
  readonly rate: string;
  readonly ratedOn: IsoDate;
  readonly source: string;
}

/** An order or a payment. */
export interface ProjectCost extends LedgerEntry {
  readonly id: string;
  readonly text: string;
  /** Null is in the project's currency already. */
  readonly own: OwnMoney | null;
}

/** A change of the budget, asked for and decided. */
export interface ProjectChange extends BudgetChange {
  readonly id: string;
  readonly number: number;
  readonly what: string;
  readonly why: string;
  readonly askedBy: string;
  readonly decidedBy: string | null;
  readonly decisionWhy: string | null;
  readonly version: number;
}

/** What a class still needs beyond what is paid and ordered, as somebody stated it. */
export interface StatedRest extends ClassAmount {
  readonly statedOn: IsoDate;
  readonly statedBy: string;
}

/** A project as kept; amounts in its own currency. */
export interface ProjectFile {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly status: ProjectStatus;
  readonly siteId: string;
  readonly siteCode: string;
  readonly siteName: string;
  readonly lineCode: string;
  readonly lineName: string;
  readonly planId: string | null;
  readonly currency: string;
  /** Original budget. */
  readonly budget: Amount;
  /** Units of the currency for one EUR by which the budget was made, and the first day of that rate. */
  readonly budgetRate: { readonly perEuro: string; readonly on: IsoDate } | null;
  /** The original budget by class; empty is not split. */
  readonly items: readonly ClassAmount[];
  /** In the order they were asked for. */
  readonly changes: readonly ProjectChange[];
  readonly toOrder: readonly StatedRest[];
  /** What the project lead expects in the end; null is not stated. */
  readonly forecast: Amount | null;
  readonly startsOn: IsoDate | null;
  readonly endsOn: IsoDate | null;
  readonly cause: string | null;
  readonly version: number;
  readonly milestones: readonly ProjectMilestone[];
  /** Newest first. */
  readonly costs: readonly ProjectCost[];
}

export interface ProjectFigures extends Progress {
  /** Original budget with the changes approved by the day. */
  readonly budget: Amount;
  /** Paid. */
  readonly actual: Amount;
  /** Ordered and not yet paid. */
  readonly committed: Amount;
  /** Paid and ordered together. */
  readonly bound: Amount;
  readonly ledger: Ledger;
  /** Value planned and earned by the day, in money; null without milestones. */
  readonly plannedValue: number | null;
  readonly earnedValue: number | null;
  /** Indices and forecasts; null without milestones. */
  readonly control: ReturnType<typeof earnedValue> | null;
  /** Lowest and highest of the three forecasts; null when none is defined. */
  readonly eacSpan: { readonly low: number; readonly high: number } | null;
  /** Whether even the lowest forecast passes the budget less contingency; null without milestones. */
  readonly overrun: Overrun | null;
}

/** What a project's milestones and ledger say on a day; entries, decisions and deeds after it are left out. */
export function projectFigures(project: ProjectFile, asOf: IsoDate): ProjectFigures {
  const { budget, items, changes, costs: entries, toOrder, currency } = project;
  const book = ledger({ budget, items, changes, entries, toOrder, places: placesOf(currency) }, asOf);
  const { total } = book;
  const done = progress(project, asOf);
  return {
    ...done,
    ...{ budget: total.budget, actual: total.paid, committed: total.open, bound: total.bound, ledger: book },
    ...controlOf(done, book),
  };
}

/** Earned value of the paid money against the budget; nothing of it without milestones. */
export function controlOf(
  { planned, earned }: Pick<Progress, "planned" | "earned">,
  {
    total,
    contingencyLeft,
  }: Pick<Ledger, "contingencyLeft"> & {
    readonly total: Pick<Ledger["total"], "budget" | "paid">;
  },
): Pick<ProjectFigures, "plannedValue" | "earnedValue" | "control" | "eacSpan" | "overrun"> {
  if (planned === null || earned === null)
    return { plannedValue: null, earnedValue: null, control: null, eacSpan: null, overrun: null };
  const [budget, paid] = [Number(total.budget), Number(total.paid)];
  const value = { plannedValue: planned * budget, earnedValue: earned * budget };
  const control = earnedValue({
    ...{ budgetAtCompletion: budget, planned: value.plannedValue, earned: value.earnedValue, actual: paid },
  });
  const left = Math.min(budget, Math.max(0, Number(contingencyLeft ?? 0)));
  return {
    ...{ ...value, control, eacSpan: spanOf(Object.values(control.eac)) },
    overrun: overrun({ budget, contingencyLeft: left, planned, earned, paid }),
  };
}

function spanOf(forecasts: readonly (number | null)[]): { low: number; high: number } | null {
  const known = forecasts.filter((one) => one !== null);
  return known.length === 0 ? null : { low: Math.min(...known), high: Math.max(...known) };
}

const STATUS_WORDS = {
  funded: "Funded, not started",
  in_work: "In work",
  proving: "Proving",
  accepted: "Accepted",
  closed: "Closed",
  parked: "Parked",
} satisfies Record<ProjectStatus, string>;

/** The states of a project in the order they are passed, with their words. */
export const projectStatuses = Object.entries(STATUS_WORDS).map(([value, label]) => ({ value, label }));

/** The state of a project in words. */
export function projectStatusWords(status: ProjectStatus): string {
  return STATUS_WORDS[status];
}
