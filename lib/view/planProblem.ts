import { addDays, addMonths, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import type { LineOptions } from "@/lib/portfolio/lineOptions";
import type {
  CrewLimit,
  EngineerLimit,
  MustDo,
  PlanBudget,
  PlanDecision,
  PlanLineInput,
  PlanOption,
  PlanProblem,
  PlanQuarter,
  PlanWindow,
} from "@/lib/portfolio/planProblem";
import type { Span } from "@/lib/risk/evaluation";
import { figureAt, type InputDuty, type PlanInputs } from "@/lib/view/planInputs";

/** A line a plan may reach, with its costed ways. */
export interface PlannedLine {
  readonly id: string;
  readonly code: string;
  readonly siteId: string;
  readonly options: LineOptions;
}

/** A line a plan looks at. */
export interface GroundLine extends PlannedLine {
  readonly name: string;
  readonly siteCode: string;
  readonly rankByLoss: number | null;
  readonly rankByScore: number;
  readonly score: number;
  /** First-year stop loss with its drawn span, EUR; null is not known. */
  readonly stopLoss: Span | null;
  /** Code of a project that is at work on the line. */
  readonly project: string | null;
  /** Why no way can be chosen; null when one can. */
  readonly none: string | null;
}

export interface ProblemTerms {
  readonly asOf: IsoDate;
  readonly inputs: PlanInputs;
  readonly lines: readonly PlannedLine[];
  readonly windowFill: number;
  /** Most months the assumptions compute. */
  readonly months: number;
  readonly pins: readonly PlanDecision[];
  readonly bans: readonly PlanDecision[];
}

/** Where nobody has stated what there is of a thing, it does not bind. */
const UNSTATED = 1_000_000;
/** A duty stands beside every other stage of its line. */
const DUTY_STAGE = 9;

/** The quarters of some years, which follow each other. */
export function quartersOf(years: readonly number[]): PlanQuarter[] {
  const [first, last] = [Math.min(...years), Math.max(...years)];
  const quarters = years.length === 0 ? 0 : (last - first + 1) * 4;
  return Array.from({ length: quarters }, (_, i) => {
    const startsOn = addMonths(`${first}-01-01`, 3 * i);
    const year = Number(startsOn.slice(0, 4));
    return { id: `${year}-Q${(i % 4) + 1}`, year, startsOn, endsOn: addDays(addMonths(startsOn, 3), -1) };
  });
}

/** Everything a plan is made from, put together from what was stated and what the lines may choose. */
export function planProblem(terms: ProblemTerms): PlanProblem {
  const { asOf, inputs, lines, windowFill, months, pins } = terms;
  const quarters = quartersOf(inputs.years);
  const stated = (kind: "reserve" | "discount" | "horizon" | "worth_per_euro") =>
    figureAt(inputs.figures, { kind })?.value ?? null;
  return {
    ...{ asOf, quarters, windowFill, pins },
    lines: withOrder(lines, inputs).map((line) => withDuty(line, inputs)),
    windows: windowsOf(terms, quarters),
    budgets: budgetsOf(inputs),
    reserveShare: stated("reserve") ?? 0,
    engineers: engineersOf(inputs, quarters),
    crews: crewsOf(inputs, quarters),
    bans: [...terms.bans, ...frozenOut(terms, quarters)],
    discountRate: stated("discount") ?? 0,
    horizonMonths: Math.max(1, Math.min(months, Math.round(12 * (stated("horizon") ?? months / 12)))),
    worthPerEuro: stated("worth_per_euro") ?? 1,
  };
}

/** What a year's budgets come to: the group's, and for each site the least of its own and its share. */
export function budgetsOf({ figures, years, sites }: PlanInputs): PlanBudget[] {
  const cap = figureAt(figures, { kind: "site_cap" })?.value ?? null;
  return years.flatMap((year) => {
    const group = figureAt(figures, { kind: "budget", year });
    const whole = group?.euros ?? null;
    const bySite = sites.flatMap((site): PlanBudget[] => {
      const own = figureAt(figures, { kind: "budget", year, siteId: site.id });
      const caps = [own?.euros ?? null, cap === null || whole === null ? null : cap * whole].filter(
        (one) => one !== null,
      );
      if (caps.length === 0) return [];
      const granted =
        own?.currency && own.euros && own.currency !== "EUR"
          ? { granted: { amount: String(own.value), currency: own.currency, perEuro: own.value / own.euros } }
          : {};
      return [{ year, siteId: site.id, amount: Math.min(...caps), ...granted }];
    });
    return whole === null ? bySite : [{ year, siteId: null, amount: whole }, ...bySite];
  });
}

function engineersOf({ figures, sites }: PlanInputs, quarters: readonly PlanQuarter[]): EngineerLimit[] {
  return sites.flatMap(({ id, code }) => {
    const weeks = (year: number) =>
      figureAt(figures, { kind: "engineer_weeks", siteId: id, year })?.value ?? null;
    if (quarters.every(({ year }) => weeks(year) === null)) return [];
    return quarters.map(({ id: quarterId, year }) => {
      const stated = weeks(year);
      return { region: code, quarterId, weeks: stated === null ? UNSTATED : stated / 4 };
    });
  });
}

function crewsOf({ figures, regions }: PlanInputs, quarters: readonly PlanQuarter[]): CrewLimit[] {
  const [first, last] = [quarters[0], quarters.at(-1)];
  if (!first || !last) return [];
  return regions.flatMap(({ id, name }) => {
    const stated = figureAt(figures, { kind: "crews", regionId: id });
    return stated === null
      ? []
      : [{ region: name, startsOn: first.startsOn, endsOn: last.endsOn, crews: Math.floor(stated.value) }];
  });
}

const isShut = ({ asOf, inputs: { freezes } }: ProblemTerms, day: IsoDate) =>
  freezes.some(
    ({ freezesOn, coversFrom, coversTo }) => asOf > freezesOn && coversFrom <= day && day <= coversTo,
  );

/** Windows of the years, and for each quarter one weekend at sites where it is long enough for some work. */
function windowsOf(terms: ProblemTerms, quarters: readonly PlanQuarter[]): PlanWindow[] {
  const { inputs, lines, windowFill } = terms;
  const stated = inputs.windows.map(({ id, name, siteId, startsOn, endsOn, usableHours }): PlanWindow => {
    return { ...{ id, name, siteId, startsOn, endsOn, usableHours }, lineId: null };
  });
  const weekends = inputs.sites.flatMap(({ id: siteId }) => {
    const usableHours = figureAt(inputs.figures, { kind: "weekend_hours", siteId })?.value ?? 0;
    const fits = (option: PlanOption) =>
      option.windowHours > 0 && option.windowHours <= usableHours * windowFill;
    const duty = inputs.duties.some((one) => one.siteId === siteId && one.project === null);
    if (!(duty || lines.some((line) => line.siteId === siteId && line.options.options.some(fits)))) return [];
    return quarters.map(({ id, startsOn }): PlanWindow => {
      const saturday = middleSaturday(startsOn);
      return {
        ...{
          id: `weekend ${siteId} ${id}`,
          name: `A weekend in ${id.slice(5)} ${id.slice(0, 4)}`,
          siteId,
          lineId: null,
        },
        ...{ startsOn: saturday, endsOn: addDays(saturday, 1), usableHours },
      };
    });
  });
  return [...stated, ...weekends].filter(({ startsOn }) => !isShut(terms, startsOn));
}

/** The first Saturday after the middle of a quarter stands for its weekends. */
function middleSaturday(startsOn: IsoDate): IsoDate {
  const middle = addDays(startsOn, 45);
  // 2000-01-01 was a Saturday.
  return addDays(middle, (7 - (daysBetween("2000-01-01", middle) % 7)) % 7);
}

/** After a freeze nothing is put into the quarters it is for. */
function frozenOut(terms: ProblemTerms, quarters: readonly PlanQuarter[]): PlanDecision[] {
  const shut = quarters.filter(({ startsOn }) => isShut(terms, startsOn));
  return terms.lines.flatMap(({ id }) =>
    shut.map((quarter) => ({ lineId: id, optionId: null, slotId: quarter.id })),
  );
}

/** Lets the first steps of a line wait for the last of another, where somebody ordered it so. */
function withOrder(lines: readonly PlannedLine[], { precedences }: PlanInputs): PlanLineInput[] {
  const byId = new Map(lines.map((line) => [line.id, line]));
  return lines.map(({ id, code, siteId, options: { options } }) => {
    const waits = precedences.flatMap(({ first, following }) =>
      following.id === id ? [...(byId.get(first.id)?.options.last ?? [])] : [],
    );
    const ordered =
      waits.length === 0
        ? options
        : options.map((one) => (one.after.length > 0 ? one : { ...one, after: waits }));
    return { lineId: id, code, siteId, options: ordered, mustDo: null };
  });
}

/** A duty of the line without a project of its own, if somebody stated what fulfilling it takes. */
function withDuty(line: PlanLineInput, { duties, figures }: PlanInputs): PlanLineInput {
  const own = duties.filter(({ lineCode, project }) => lineCode === line.code && project === null);
  const ways = own.flatMap((duty): { duty: InputDuty; option: PlanOption }[] => {
    const stated = (kind: "duty_cost" | "duty_hours" | "duty_weeks") =>
      figureAt(figures, { kind, obligationId: duty.id });
    const euros = stated("duty_cost")?.euros ?? null;
    const hours = stated("duty_hours")?.value ?? null;
    if (euros === null || hours === null) return [];
    return [
      { duty, option: dutyOption(line, { duty, euros, hours, weeks: stated("duty_weeks")?.value ?? null }) },
    ];
  });
  const [soonest] = [...ways].sort((a, b) => (a.duty.dueOn < b.duty.dueOn ? -1 : 1));
  if (!soonest) return line;
  const mustDo: MustDo = {
    by: soonest.duty.dueOn,
    optionIds: [soonest.option.id],
    reason: soonest.duty.title,
  };
  return { ...line, options: [...line.options, ...ways.map(({ option }) => option)], mustDo };
}

interface DutyTerms {
  readonly duty: InputDuty;
  readonly euros: number;
  readonly hours: number;
  readonly weeks: number | null;
}

function dutyOption({ code }: PlanLineInput, { duty, euros, hours, weeks }: DutyTerms): PlanOption {
  return {
    ...{ id: `${code}:duty-${duty.id}`, kind: "care", name: duty.title, stage: DUTY_STAGE },
    cost: { low: euros, typical: euros, high: euros },
    ...{
      yearlyCost: 0,
      windowHours: hours,
      extraStopHours: 0,
      rampUpHours: 0,
      engineerWeeks: [],
      crew: null,
    },
    ...{ orderWeeks: weeks, projectWeeks: 0, removes: [], adds: [], buys: [], residualShare: 0 },
    ...{ earlyFailures: { months: 0, extraShare: 0 }, after: [], commitsTo: [] },
  };
}
