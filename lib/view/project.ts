import type { IsoDate } from "@/lib/kernel/isoDate";
import { type Amount, compareAmounts, sumAmounts } from "@/lib/kernel/money";
import { earnedValue } from "@/lib/projects/earnedValue";
import { type Progress, progress } from "@/lib/projects/progress";

export type ProjectStatus = "funded" | "in_work" | "proving" | "accepted" | "closed" | "parked";

export interface ProjectMilestone {
  readonly id: string;
  readonly sequence: number;
  readonly name: string;
  /** Percent of the budget it earns, or any weight; only shares of the sum matter. */
  readonly weight: number;
  readonly dueOn: IsoDate | null;
  readonly doneOn: IsoDate | null;
}

export interface ProjectCost {
  readonly id: string;
  /** Ordered and not yet paid, or paid. */
  readonly kind: "committed" | "actual";
  readonly amount: Amount;
  readonly spentOn: IsoDate;
  readonly text: string;
  readonly reference: string;
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
  readonly budget: Amount;
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
  readonly actual: Amount;
  readonly committed: Amount;
  /** Paid and ordered together. */
  readonly bound: Amount;
  /** Value planned and earned by the day, in money; null without milestones. */
  readonly plannedValue: number | null;
  readonly earnedValue: number | null;
  /** Indices and forecasts; null without milestones. */
  readonly control: ReturnType<typeof earnedValue> | null;
  /** Lowest and highest of the three forecasts; null when none is defined. */
  readonly eacSpan: { readonly low: number; readonly high: number } | null;
}

/** What a project's milestones and ledger say on a day; entries and deeds after it are left out. */
export function projectFigures(project: ProjectFile, asOf: IsoDate): ProjectFigures {
  const { costs, budget } = project;
  const sum = (kind: ProjectCost["kind"]) =>
    sumAmounts(costs.filter((one) => one.kind === kind && one.spentOn <= asOf).map(({ amount }) => amount));
  const actual = sum("actual");
  const committed = sum("committed");
  const done = progress(project, asOf);
  const whole = Number(budget);
  const plannedValue = done.planned === null ? null : done.planned * whole;
  const earned = done.earned === null ? null : done.earned * whole;
  const control =
    plannedValue === null || earned === null
      ? null
      : earnedValue({ budgetAtCompletion: whole, planned: plannedValue, earned, actual: Number(actual) });
  return {
    ...done,
    ...{
      actual,
      committed,
      bound: sumAmounts([actual, committed]),
      plannedValue,
      earnedValue: earned,
      control,
    },
    eacSpan: control === null ? null : spanOf(Object.values(control.eac)),
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

/** What the forecasts and the ledger say that somebody must act on; empty when nothing. */
export function projectWarnings(project: ProjectFile, figures: ProjectFigures): string[] {
  const { control, bound, overdue, unscheduled } = figures;
  const late = `${overdue.length} ${overdue.length === 1 ? "milestone is" : "milestones are"} overdue.`;
  return [
    compareAmounts(bound, project.budget) > 0 ? "Paid and ordered together are above the budget." : "",
    restWarning(control?.tcpi ?? null),
    overdue.length > 0 ? late : "",
    (unscheduled ?? 0) > 0
      ? "Milestones without a due day are never planned, so they cannot show as late."
      : "",
    control !== null && control.cpi === null ? "Nothing is paid yet, so there is no cost index." : "",
  ].filter((text) => text !== "");
}

/** Above this the rest of the budget has to earn more than work usually does; common practice, no source. */
const HARD_REST = 1.1;

function restWarning(tcpi: number | null): string {
  if (tcpi === null) return "";
  if (tcpi < 0) return "The budget is spent and work is left: the budget cannot be kept.";
  return tcpi > HARD_REST
    ? `To keep the budget, each unit of money still to be spent would have to earn ${tcpi.toFixed(2)}: hardly reachable.`
    : "";
}
