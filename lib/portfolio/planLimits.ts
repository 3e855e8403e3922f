import { daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import type { PlanDecision, PlanOption, PlanProblem } from "@/lib/portfolio/planProblem";
import type { BrokenLimit, LimitName, LimitUnit, LimitUse } from "@/lib/portfolio/planResult";
import type { Candidate } from "@/lib/portfolio/planSlots";
import { byQuarter } from "@/lib/portfolio/planSpend";

/** A limit over candidates: the sum of what the chosen ones take is at most so much. */
export interface LimitRow {
  readonly limit: LimitName;
  readonly unit: LimitUnit;
  readonly most: number;
  /** What each candidate takes, by its index; negative gives. */
  readonly takes: ReadonlyMap<number, number>;
}

const DAYS_A_WEEK = 7;
const NO_WORK = new Set<PlanOption["kind"]>(["nothing", "care", "stock"]);

type Row = Omit<LimitRow, "takes">;

function rowOf(
  row: Row,
  candidates: readonly Candidate[],
  take: (candidate: Candidate) => number,
): LimitRow[] {
  const takes = new Map<number, number>();
  for (const candidate of candidates) {
    const amount = take(candidate);
    if (amount !== 0) takes.set(candidate.index, amount);
  }
  return takes.size === 0 && row.most >= 0 ? [] : [{ ...row, takes }];
}

/** What a candidate takes of something in the quarters asked for. */
function inQuarters(
  candidate: Candidate,
  asked: ReadonlySet<number>,
  [quantity, phases]: [number, Parameters<typeof byQuarter>[2]],
): number {
  return byQuarter(candidate, quantity, phases)
    .filter(({ quarter }) => asked.has(quarter))
    .reduce((sum, { part }) => sum + part, 0);
}

function budgetRows(problem: PlanProblem, candidates: readonly Candidate[]): LimitRow[] {
  const { budgets, quarters, reserveShare } = problem;
  const granted = budgets.filter(({ siteId }) => siteId === null).map(({ year }) => year);
  const years = [...new Set(quarters.map(({ year }) => year))];
  const none = granted.length === 0 ? [] : years.filter((year) => !granted.includes(year));
  const all = [...budgets, ...none.map((year) => ({ year, siteId: null, amount: 0 }))];
  return all.flatMap(({ year, siteId, amount }) => {
    const asked = new Set(quarters.flatMap((quarter, i) => (quarter.year === year ? [i] : [])));
    return rowOf(
      { limit: { kind: "budget", year, siteId }, unit: "EUR", most: amount * (1 - reserveShare) },
      candidates.filter(({ line }) => siteId === null || line.siteId === siteId),
      (one) => inQuarters(one, asked, [one.option.cost.typical, one.option.cost.phases]),
    );
  });
}

function engineerRows({ engineers, quarters }: PlanProblem, candidates: readonly Candidate[]): LimitRow[] {
  const regions = [...new Set(engineers.map(({ region }) => region))];
  return regions.flatMap((region) =>
    quarters.flatMap(({ id: quarterId }, i) => {
      const most = engineers
        .filter((one) => one.region === region && one.quarterId === quarterId)
        .reduce((sum, { weeks }) => sum + weeks, 0);
      const asked = new Set([i]);
      return rowOf(
        { limit: { kind: "engineers", region, quarterId }, unit: "engineer-weeks", most },
        candidates,
        (one) =>
          one.option.engineerWeeks
            .filter((need) => need.region === region)
            .reduce((sum, { weeks, phases }) => sum + inQuarters(one, asked, [weeks, phases]), 0),
      );
    }),
  );
}

type Days = { readonly startsOn: IsoDate; readonly endsOn: IsoDate };

function overlapDays(a: Days, b: Days): number {
  const [, from] = [a.startsOn, b.startsOn].sort() as [IsoDate, IsoDate];
  const [until] = [a.endsOn, b.endsOn].sort() as [IsoDate, IsoDate];
  return Math.max(0, daysBetween(from, until) + 1);
}

/** Crews at once: looked at on each day on which some work begins, since only then more are needed. */
function crewRows({ crews, quarters }: PlanProblem, candidates: readonly Candidate[]): LimitRow[] {
  const regions = [...new Set(crews.map(({ region }) => region))];
  return regions.flatMap((region) => {
    const using = candidates.filter(({ option }) => option.crew?.region === region);
    const there = crews.filter((limit) => limit.region === region);
    const begins = [...new Set(using.filter(({ slot }) => slot.window).map(({ slot }) => slot.startsOn))];
    const atOnce = begins.sort().flatMap((on) => {
      const most = there
        .filter(({ startsOn, endsOn }) => startsOn <= on && on <= endsOn)
        .reduce((sum, limit) => sum + limit.crews, 0);
      return rowOf(
        { limit: { kind: "crews", region, on }, unit: "crews", most },
        using,
        ({ slot, option }) =>
          slot.window && slot.startsOn <= on && on <= slot.endsOn ? (option.crew?.crews ?? 0) : 0,
      );
    });
    const weeks = quarters.flatMap((quarter, i) => {
      const most = there.reduce(
        (sum, limit) => sum + (limit.crews * overlapDays(limit, quarter)) / DAYS_A_WEEK,
        0,
      );
      const limit = { kind: "crew-weeks", region, quarterId: quarter.id } as const;
      return rowOf({ limit, unit: "crew-weeks", most }, using, ({ slot, option }) =>
        slot.quarter === i ? (option.crew?.weeks ?? 0) : 0,
      );
    });
    return [...atOnce, ...weeks];
  });
}

function windowRows({ windows, windowFill }: PlanProblem, candidates: readonly Candidate[]): LimitRow[] {
  return windows.flatMap((window) => {
    const here = candidates.filter(({ slot }) => slot.window === window);
    const lines = [...new Set(here.map(({ line }) => line.lineId))];
    return lines.flatMap((lineId) =>
      rowOf(
        {
          ...{ limit: { kind: "window", lineId, windowId: window.id }, unit: "hours" },
          most: windowFill * (window.usableHours ?? 0),
        },
        here.filter(({ line }) => line.lineId === lineId),
        ({ option }) => option.windowHours,
      ),
    );
  });
}

/** Weeks a slot begins too early for the parts to be there or the project to be ready; an unknown lead time asks nothing. */
export function weeksTooEarly({ option, slot }: Candidate, asOf: IsoDate): number {
  const needed = Math.max(option.orderWeeks ?? 0, option.projectWeeks);
  // Work of a quarter can wait until its end.
  const start = slot.window ? slot.startsOn : slot.endsOn;
  return Math.max(0, needed - daysBetween(asOf, start) / DAYS_A_WEEK);
}

const matches = ({ lineId, optionId, slotId }: PlanDecision, { line, option, slot }: Candidate): boolean =>
  line.lineId === lineId &&
  (optionId === null || optionId === option.id) &&
  (slotId === null || slotId === slot.id);

function fulfils({ line: { mustDo }, option, slot }: Candidate): boolean {
  if (!mustDo || slot.endsOn > mustDo.by) return false;
  return mustDo.optionIds.length > 0 ? mustDo.optionIds.includes(option.id) : !NO_WORK.has(option.kind);
}

function decisionRows(
  { lines, pins, bans, asOf }: PlanProblem,
  candidates: readonly Candidate[],
): LimitRow[] {
  const one = { unit: "choices", most: -1 } as const;
  const of = (lineId: string) => candidates.filter(({ line }) => line.lineId === lineId);
  return [
    ...lines.flatMap(({ lineId }) =>
      rowOf({ limit: { kind: "lead-time", lineId }, unit: "weeks", most: 0 }, of(lineId), (candidate) =>
        weeksTooEarly(candidate, asOf),
      ),
    ),
    ...lines.flatMap(({ lineId, mustDo }) =>
      mustDo
        ? rowOf({ limit: { kind: "must-do", lineId, by: mustDo.by }, ...one }, of(lineId), (candidate) =>
            fulfils(candidate) ? -1 : 0,
          )
        : [],
    ),
    ...pins.flatMap((pin) =>
      rowOf({ limit: { kind: "pin", ...pin }, ...one }, candidates, (candidate) =>
        matches(pin, candidate) ? -1 : 0,
      ),
    ),
    ...bans.flatMap((ban) =>
      rowOf({ limit: { kind: "ban", ...ban }, unit: "choices", most: 0 }, candidates, (candidate) =>
        matches(ban, candidate) ? 1 : 0,
      ),
    ),
  ];
}

/** One option of a line and stage; what must be done before, and what must follow. */
function orderRows({ lines }: PlanProblem, candidates: readonly Candidate[]): LimitRow[] {
  const byOption = new Map<string, Candidate[]>();
  for (const candidate of candidates) {
    const { id } = candidate.option;
    byOption.set(id, [...(byOption.get(id) ?? []), candidate]);
  }
  const named = (ids: readonly string[]) => ids.flatMap((id) => byOption.get(id) ?? []);
  const needing = (
    { index, line, option }: Candidate,
    kind: "after" | "commits-to",
    partners: readonly Candidate[],
  ): LimitRow => ({
    limit: { kind, lineId: line.lineId, optionId: option.id },
    ...{ unit: "choices", most: 0 },
    takes: new Map([[index, 1], ...partners.map((one): [number, number] => [one.index, -1])]),
  });
  const links = candidates.flatMap((candidate) => {
    const { option, slot } = candidate;
    const before = named(option.after).filter((one) => one.slot.endsOn < slot.startsOn);
    const later = named(option.commitsTo).filter((one) => one.slot.startsOn > slot.endsOn);
    return [
      ...(option.after.length > 0 ? [needing(candidate, "after", before)] : []),
      ...(option.commitsTo.length > 0 ? [needing(candidate, "commits-to", later)] : []),
    ];
  });
  const stages = lines.flatMap(({ lineId, options }) =>
    [...new Set(options.map(({ stage }) => stage))].flatMap((stage) =>
      rowOf(
        { limit: { kind: "one-per-stage", lineId, stage }, unit: "choices", most: 1 },
        candidates.filter(({ line }) => line.lineId === lineId),
        ({ option }) => (option.stage === stage ? 1 : 0),
      ),
    ),
  );
  return [...stages, ...links];
}

/** Every limit of a plan, over its candidates. */
export function limitRows(problem: PlanProblem, candidates: readonly Candidate[]): LimitRow[] {
  return [
    ...budgetRows(problem, candidates),
    ...engineerRows(problem, candidates),
    ...crewRows(problem, candidates),
    ...windowRows(problem, candidates),
    ...decisionRows(problem, candidates),
    ...orderRows(problem, candidates),
  ];
}

/** What rounding may add to a sum without breaking a limit. */
export const slackOf = (most: number): number => 1e-7 * Math.max(1, Math.abs(most));

/** How far each limit is used by the chosen candidates; a promise not kept is used 0 of 1. */
export function usesOf(rows: readonly LimitRow[], chosen: readonly number[]): LimitUse[] {
  return rows.map(({ limit, unit, most, takes }) => {
    const used = chosen.reduce((sum, index) => sum + (takes.get(index) ?? 0), 0);
    return { limit, unit, used, most };
  });
}

/** The limits the chosen candidates break. */
export function brokenBy(rows: readonly LimitRow[], chosen: readonly number[]): BrokenLimit[] {
  return usesOf(rows, chosen)
    .filter(({ used, most }) => used > most + slackOf(most))
    .map((use) => ({ ...use, by: use.used - use.most }));
}
