import { addDays, addMonths, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import { sumAmounts } from "@/lib/kernel/money";
import { progress } from "@/lib/projects/progress";
import type { ProjectFigures, ProjectFile } from "@/lib/view/project";
import { type ChartPoint, roundTicks, type SpanChart } from "@/lib/view/spanChart";
import { month as monthWords } from "@/lib/view/time";

/** Cumulative money at the end of one month, or at the as-of day in its month; null lies ahead or is not known. */
export interface CurvePoint {
  /** YYYY-MM. */
  readonly month: string;
  readonly planned: number | null;
  readonly earned: number | null;
  readonly paid: number | null;
  /** Lowest and highest forecast of what will have been paid. */
  readonly forecast: readonly [number, number] | null;
}

/** A curve of more months than this is no project. */
const MOST_MONTHS = 120;
const THOUSAND = 1000;
/** Of any currency. */
const MOST_PLACES = 4;

const monthOf = (day: IsoDate) => day.slice(0, 7);
const endOf = (month: string): IsoDate => addDays(addMonths(`${month}-01`, 1), -1);

/**
 * Planned, earned and paid by month, and the span of forecasts from the as-of day to the end.
 *
 * Planned and earned are `progress` at the end of each month times the budget. The forecast goes straight from what is
 * paid to the lowest and highest of the three estimates at completion, on the day the work ends at the pace so far, or
 * the planned end where that cannot be told: an assumption.
 *
 * @returns by month; empty where the project has no start, no end or no milestones.
 */
export function projectCurve(project: ProjectFile, figures: ProjectFigures, asOf: IsoDate): CurvePoint[] {
  const { startsOn, endsOn, costs } = project;
  if (startsOn === null || endsOn === null || figures.planned === null) return [];
  const endsAt = figures.forecastEndOn ?? endsOn;
  const last = monthOf([endsOn, endsAt, asOf].sort().at(-1) ?? endsOn);
  const budget = Number(figures.budget);
  return monthsFrom(monthOf(startsOn), last).map((month) => {
    const at = month === monthOf(asOf) ? asOf : endOf(month);
    const seen = at <= asOf ? progress(project, at) : null;
    return {
      month,
      planned: money(progress(project, endOf(month)).planned, budget),
      earned: seen && money(seen.earned, budget),
      paid: seen && paidUntil(at, costs),
      forecast: at < asOf ? null : forecastAt(endOf(month), { figures, asOf, endsAt }),
    };
  });
}

const money = (share: number | null, budget: number) => (share === null ? null : share * budget);

function monthsFrom(first: string, last: string): string[] {
  const months: string[] = [];
  let month = first;
  while (month <= last && months.length < MOST_MONTHS) {
    months.push(month);
    month = monthOf(addMonths(`${month}-01`, 1));
  }
  return months;
}

function paidUntil(day: IsoDate, costs: ProjectFile["costs"]): number {
  const paid = costs.filter(({ kind, spentOn }) => kind === "actual" && spentOn <= day);
  return Number(
    sumAmounts(
      paid.map(({ amount }) => amount),
      MOST_PLACES,
    ),
  );
}

interface Forecasting {
  readonly figures: ProjectFigures;
  readonly asOf: IsoDate;
  readonly endsAt: IsoDate;
}

/** Straight from what is paid on the as-of day to the two bounds at the end. */
function forecastAt(day: IsoDate, { figures, asOf, endsAt }: Forecasting): [number, number] | null {
  const { eacSpan, actual } = figures;
  if (eacSpan === null) return null;
  const paid = Number(actual);
  if (monthOf(day) === monthOf(asOf)) return [paid, paid];
  const whole = daysBetween(asOf, endsAt);
  const gone = whole <= 0 ? 1 : Math.min(1, daysBetween(asOf, day) / whole);
  return [paid + gone * (eacSpan.low - paid), paid + gone * (eacSpan.high - paid)];
}

/** The curve as a chart, in thousands of the project's currency; null where there is none. */
export function curveChart(points: readonly CurvePoint[], currency: string, asOf: IsoDate): SpanChart | null {
  if (points.length === 0) return null;
  const thousands = (value: number | null) => (value === null ? null : value / THOUSAND);
  const shown = points.map(
    ({ month, planned, earned, paid, forecast }): ChartPoint => ({
      label: monthWords(`${month}-01`),
      band: forecast === null ? null : [forecast[0] / THOUSAND, forecast[1] / THOUSAND],
      values: { planned: thousands(planned), earned: thousands(earned), paid: thousands(paid) },
    }),
  );
  const highest = Math.max(
    ...shown.flatMap(({ band, values }) =>
      [...Object.values(values), ...(band ?? [])].map((one) => one ?? 0),
    ),
  );
  const ticks = roundTicks(highest);
  return {
    title: "Planned, earned and paid by month",
    xLabel: "Month",
    unit: `thousand ${currency}`,
    bandName: "Forecast, lowest to highest",
    lines: [
      { key: "planned", name: "Planned, by due days", look: "second" },
      { key: "earned", name: "Earned", look: "main" },
      { key: "paid", name: "Paid", look: "third" },
    ],
    points: shown,
    domain: [0, ticks.at(-1) ?? highest],
    ticks,
    marks: points.some(({ month }) => month === monthOf(asOf))
      ? [{ at: monthWords(asOf), label: "as-of day" }]
      : [],
  };
}
