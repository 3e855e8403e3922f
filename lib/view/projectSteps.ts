import { daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import { percent } from "@/lib/view/chance";
import { NOT_KNOWN, plainNumber } from "@/lib/view/number";
import type { ProjectFigures, ProjectFile } from "@/lib/view/project";
import { index, localMoney } from "@/lib/view/projectMoney";
import { day } from "@/lib/view/time";

/** One line of a project's arithmetic, with the numbers put in. */
export interface ProjectStep {
  readonly label: string;
  readonly formula: string;
  readonly value: string;
}

/** The indices and the three forecasts of a project, step by step; empty without milestones. */
export function projectSteps(project: ProjectFile, figures: ProjectFigures, asOf: IsoDate): ProjectStep[] {
  const { control, planned, earned, plannedValue, earnedValue } = figures;
  if (control === null || plannedValue === null || earnedValue === null) return [];
  const { currency } = project;
  const whole = Number(figures.budget);
  const paid = Number(figures.actual);
  const amount = (value: number | null) => localMoney(value, currency);
  const [BAC, PV, EV, AC] = [whole, plannedValue, earnedValue, paid].map((value) => bare(value));
  const rest = `${BAC} − ${EV}`;
  return [
    { label: "Planned value", formula: `${percent(planned)} of ${BAC}`, value: amount(plannedValue) },
    { label: "Earned value", formula: `${percent(earned)} of ${BAC}`, value: amount(earnedValue) },
    { label: "Cost variance", formula: `${EV} − ${AC}`, value: amount(control.cv) },
    { label: "Schedule variance", formula: `${EV} − ${PV}`, value: amount(control.sv) },
    { label: "Cost index (CPI)", formula: `${EV} ÷ ${AC}`, value: index(control.cpi) },
    { label: "Schedule index (SPI)", formula: `${EV} ÷ ${PV}`, value: index(control.spi) },
    {
      label: "Cost at the end, rest as planned",
      formula: `${AC} + (${rest})`,
      value: amount(control.eac.plannedRest),
    },
    {
      label: "Cost at the end, trend",
      formula: `${BAC} ÷ (${EV} ÷ ${AC})`,
      value: amount(control.eac.trend),
    },
    {
      label: "Cost at the end, cost and schedule",
      formula: `${AC} + (${rest}) ÷ (${fine(control.cpi)} × ${fine(control.spi)})`,
      value: amount(control.eac.costAndSchedule),
    },
    {
      label: "Budget less cost at the end, trend",
      formula: `${BAC} − cost at the end`,
      value: amount(control.vac),
    },
    {
      label: "Index the rest must earn to keep the budget (TCPI)",
      formula: `(${rest}) ÷ (${BAC} − ${AC})`,
      value: index(control.tcpi),
    },
    ...boundSteps(figures, currency),
    ...timeSteps(project, figures, asOf),
  ];
}

/** The same with what is ordered counted as spent: money that is bound whether it is paid or not. */
function boundSteps({ bound, budget, earnedValue: earned }: ProjectFigures, currency: string): ProjectStep[] {
  if (earned === null) return [];
  const [EV, AC, BAC] = [earned, Number(bound), Number(budget)].map((value) => bare(value));
  const ratio = Number(bound) === 0 ? null : earned / Number(bound);
  return [
    { label: "Earned for each unit paid or ordered", formula: `${EV} ÷ ${AC}`, value: index(ratio) },
    {
      label: "Budget not yet bound",
      formula: `${BAC} − ${AC}`,
      value: localMoney(Number(budget) - Number(bound), currency),
    },
  ];
}

/** Earned schedule: the time at which the plan would have earned what is earned, against the time gone. */
function timeSteps({ startsOn }: ProjectFile, figures: ProjectFigures, asOf: IsoDate): ProjectStep[] {
  const { earnedDays, forecastEndOn } = figures;
  if (startsOn === null || earnedDays === null || asOf <= startsOn) return [];
  const gone = daysBetween(startsOn, asOf);
  return [
    {
      label: "Earned schedule",
      formula: "day of the plan on which it would have earned the same, straight between milestones",
      value: `day ${plainNumber(earnedDays)}`,
    },
    {
      label: "Time index",
      formula: `${plainNumber(earnedDays)} ÷ ${plainNumber(gone)} days gone`,
      value: index(earnedDays / gone),
    },
    {
      label: "End at the pace so far",
      formula: "start + planned days ÷ time index",
      value: day(forecastEndOn),
    },
  ];
}

/** An index inside a formula, fine enough that the result can be followed. */
function fine(value: number | null): string {
  return value === null ? "not defined" : plainNumber(value, 4);
}

/** A number of a formula, in thousands from a million so that the line stays short. */
function bare(value: number): string {
  if (!Number.isFinite(value)) return NOT_KNOWN;
  return value >= 1_000_000 ? `${plainNumber(value / 1_000)} k` : plainNumber(value);
}
