import { addDays, addMonths, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import type { ListedProject } from "@/lib/view/projectList";

/** What was paid in one quarter, in one currency. */
export interface PaidQuarter {
  /** First day of the quarter. */
  readonly from: IsoDate;
  readonly currency: string;
  readonly amount: number;
}

/** One quarter of all projects together, EUR at the budget rate. */
export interface CashQuarter {
  /** As 2026 Q4. */
  readonly label: string;
  readonly paid: number;
  /** Still to be paid, spread evenly to the planned end of each project: an assumption. */
  readonly expected: number;
}

/** Budget against what it will cost, over projects, EUR at the budget rate. */
export interface CashTotals {
  readonly projects: number;
  readonly budget: number;
  readonly paid: number;
  readonly open: number;
  /** The lead's forecast, else the trend, else the budget. */
  readonly end: number;
  /** Projects whose currency has no budget rate: in none of the sums. */
  readonly unrated: readonly string[];
}

const RUNNING = new Set(["funded", "in_work", "proving", "accepted"]);
const QUARTER_MONTHS = 3;

const quarterOf = (day: IsoDate): IsoDate => {
  const month = Number(day.slice(5, 7));
  const first = month - ((month - 1) % QUARTER_MONTHS);
  return `${day.slice(0, 4)}-${String(first).padStart(2, "0")}-01`;
};
const labelOf = (from: IsoDate) =>
  `${from.slice(0, 4)} Q${Math.ceil(Number(from.slice(5, 7)) / QUARTER_MONTHS)}`;

/** What a project will cost in the end: as its lead states, else at the trend, else its budget. */
const endOf = ({ forecast, trend, budget }: ListedProject) => Number(forecast ?? trend ?? budget);

/** Projects that run and those closed or parked, summed up in euros. */
export function cashTotals(projects: readonly ListedProject[]): CashTotals {
  const rated = projects.filter(({ perEuro }) => perEuro !== null);
  const sum = (of: (project: ListedProject) => number) =>
    rated.reduce((all, project) => all + of(project) / (project.perEuro ?? 1), 0);
  return {
    projects: rated.length,
    budget: sum(({ budget }) => Number(budget)),
    paid: sum(({ paid }) => Number(paid)),
    open: sum(({ open }) => Number(open)),
    end: sum((project) => (RUNNING.has(project.status) ? endOf(project) : Number(project.paid))),
    unrated: projects.filter(({ perEuro }) => perEuro === null).map(({ code }) => code),
  };
}

/**
 * Money of all projects by quarter: paid up to the day, and the rest of each running project spread evenly over the days
 * from there to its planned end, or within the quarter after the day when that is past or not planned.
 */
export function cashByQuarter(
  projects: readonly ListedProject[],
  paid: readonly PaidQuarter[],
  asOf: IsoDate,
): CashQuarter[] {
  const quarters = new Map<IsoDate, { paid: number; expected: number }>();
  const at = (from: IsoDate) => {
    const known = quarters.get(from) ?? { paid: 0, expected: 0 };
    quarters.set(from, known);
    return known;
  };
  const rates = new Map(projects.map(({ currency, perEuro }) => [currency, perEuro]));
  for (const { from, currency, amount } of paid) {
    const perEuro = rates.get(currency);
    if (perEuro) at(from).paid += amount / perEuro;
  }
  for (const { from, euros } of projects.flatMap((project) => restOf(project, asOf)))
    at(from).expected += euros;
  return [...quarters]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([from, money]) => ({ label: labelOf(from), ...money }));
}

/** What a running project still costs, by quarter. */
function restOf(project: ListedProject, asOf: IsoDate): { readonly from: IsoDate; readonly euros: number }[] {
  const { perEuro, status, endsOn } = project;
  if (perEuro === null || !RUNNING.has(status)) return [];
  const rest = Math.max(0, endOf(project) - Number(project.paid)) / perEuro;
  const last = endsOn !== null && endsOn > asOf ? endsOn : addMonths(asOf, QUARTER_MONTHS);
  return spread(asOf, last).map(({ from, share }) => ({ from, euros: rest * share }));
}

/** Quarters after a day up to another, with the share of the days in each. */
function spread(asOf: IsoDate, last: IsoDate): { readonly from: IsoDate; readonly share: number }[] {
  const days = daysBetween(asOf, last);
  const found: { from: IsoDate; share: number }[] = [];
  for (let day = addDays(asOf, 1); day <= last; ) {
    const from = quarterOf(day);
    const next = addMonths(from, QUARTER_MONTHS);
    const until = next <= last ? next : addDays(last, 1);
    found.push({ from, share: daysBetween(day, until) / days });
    day = until;
  }
  return found;
}
