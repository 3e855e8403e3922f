import type { AddedUnits, Phase, PlanOption, RemovedUnits } from "@/lib/portfolio/planProblem";
import type { Norm } from "@/lib/retrofit/costNorm";
import type { Scope } from "@/lib/retrofit/scope/buildScope";
import type { ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";
import {
  addUp,
  controllerRows,
  goodsRows,
  hourRows,
  hours,
  type ScopeMoney,
} from "@/lib/retrofit/scope/scopeMoney";
import { personsAtWork, type ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { enoughInFourOfFive, sum, times } from "@/lib/retrofit/scope/spread";

/** What the ways to treat a line are built from. */
export interface LineOptionTerms {
  readonly facts: ScopeFacts;
  readonly norms: ScopeNorms;
  /** Engineers' region: the site. */
  readonly site: string;
  /** Region of the integrator's crews; null has none stated. */
  readonly crewRegion: string | null;
  /** Largest usable hours of one window of the line, clock hours; null has none that is known. */
  readonly windowHours: number | null;
  /** Usable clock hours of a weekend; null is not stated. */
  readonly weekendHours: number | null;
  /** Parts the group's evaluation knows. */
  readonly pools: ReadonlySet<string>;
  /** Requests above this, EUR, wait so many weeks for a signature; null is not stated. */
  readonly signOff: { readonly above: number; readonly weeks: number } | null;
}

/** What every way of one line is made from. */
export interface Making {
  readonly terms: LineOptionTerms;
  readonly full: Scope;
  /** Controllers are swapped first, so they are in none of these. */
  readonly swaps: boolean;
  readonly after: readonly string[];
}

/** Weekends of a quarter that can be planned. */
export const WEEKENDS = 12;
const HOURS_A_WEEK = 40;
const DAYS_A_WEEK = 5;
/** Share of the hours the site's own engineers do themselves: common practice, no source. */
const OWN = { survey: 1, engineering: 0.25, proving: 0.5 } as const;
/** A guess: hours of production lost while a line comes back to its rate. */
const RAMP_UP_HOURS = 8;
/** Common practice, no source: 30 to 100 % more stops for two or three months. */
const EARLY = { months: 3, extraShare: 0.5 } as const;
/** A guess where a successor is in no pool: new drives fail about half as often. */
const NEW_SHARE = 0.5;
/** Common practice, no source: a third is paid with the order, the rest before and with the work. */
const MONEY_PHASES: readonly Phase[] = [
  { quartersBefore: 2, share: 0.3 },
  { quartersBefore: 1, share: 0.3 },
  { quartersBefore: 0, share: 0.4 },
];
const HAND_PHASES: readonly Phase[] = [
  { quartersBefore: 2, share: 0.3 },
  { quartersBefore: 1, share: 0.4 },
  { quartersBefore: 0, share: 0.3 },
];

const costOf = ([low, typical, high]: Norm) => ({ low, typical, high, phases: MONEY_PHASES });

/** Id of a way of a line. */
export const idOf = ({ facts }: LineOptionTerms, key: string) => `${facts.lineCode}:${key}`;

type Given = Pick<PlanOption, "kind" | "name"> & { readonly key: string };

/** The way that converts some axes, costed and with what it takes and gives. */
export function option(make: Making, scope: Scope, { key, kind, name }: Given): PlanOption {
  const { terms, swaps, after } = make;
  const { norms, site, crewRegion } = terms;
  const money = swaps ? withoutControllers(scope, norms) : scope.money;
  const { planned } = scope.work;
  return {
    ...{ id: idOf(terms, key), kind, name, stage: swaps ? 2 : 1, after, commitsTo: [] },
    ...{ cost: costOf(money.cost), yearlyCost: 0, windowHours: planned },
    ...{ extraStopHours: 0, rampUpHours: RAMP_UP_HOURS, earlyFailures: EARLY, buys: [] },
    engineerWeeks: [{ region: site, weeks: ownWeeks(scope, norms), phases: HAND_PHASES }],
    crew: crewRegion === null ? null : { region: crewRegion, crews: 1, weeks: weeksAtWork(planned, norms) },
    orderWeeks: orderWeeks(scope, norms),
    projectWeeks: scope.beforeWindow[1] / DAYS_A_WEEK + signWeeks(money.cost[1], terms),
    removes: scope.released.flatMap(({ part, units }): RemovedUnits[] =>
      part && terms.pools.has(part.id) ? [{ poolId: part.id, units, fate: "kept", works: null }] : [],
    ),
    ...putIn(scope, terms.pools),
  };
}

/** The new drives by pool; where a successor is in no pool, its loss as a share of the old. */
function putIn({ axes }: Scope, pools: ReadonlySet<string>): Pick<PlanOption, "adds" | "residualShare"> {
  const units = new Map<string, number>();
  for (const { successor } of axes) {
    const id = successor?.part.id;
    if (id !== undefined && pools.has(id)) units.set(id, (units.get(id) ?? 0) + 1);
  }
  const adds = [...units].map(([poolId, count]): AddedUnits => ({ poolId, units: count }));
  const known = adds.reduce((all, one) => all + one.units, 0);
  return { adds, residualShare: NEW_SHARE * (1 - known / axes.length) };
}

function withoutControllers({ counts, axes }: Scope, norms: ScopeNorms): ScopeMoney {
  return addUp([...hourRows(counts, norms), ...goodsRows(counts, axes, norms)], norms);
}

function ownWeeks({ counts: { axes, machines } }: Scope, { spans }: ScopeNorms): number {
  const survey = axes * spans.surveyPerAxis[1] + machines * spans.surveyPerMachine[1];
  const engineering = axes * spans.engineeringPerAxis[1] + machines * spans.engineeringPerMachine[1];
  const proving = axes * spans.commissioningPerAxis[1] + machines * spans.validationPerMachine[1];
  return (OWN.survey * survey + OWN.engineering * engineering + OWN.proving * proving) / HOURS_A_WEEK;
}

const weeksAtWork = (clockHours: number, { plain }: ScopeNorms) =>
  clockHours / (plain.hoursPerDay * DAYS_A_WEEK);

const signWeeks = (cost: number, { signOff }: LineOptionTerms) =>
  signOff !== null && cost > signOff.above ? signOff.weeks : 0;

/** Slowest known lead time with purchase, transport and receiving; null when none is known. */
function orderWeeks({ orders }: Scope, { plain }: ScopeNorms): number | null {
  const leads = orders.flatMap(({ leadWeeks }) => leadWeeks ?? []);
  if (leads.length === 0) return null;
  return Math.max(...leads) + plain.purchaseWeeks + plain.transportWeeks + plain.incomingWeeks;
}

/** Controllers swapped and raised while the old drives run on: proving by machine is what needs the window. */
export function controllerOption(full: Scope, terms: LineOptionTerms): PlanOption {
  const { norms, site, crewRegion } = terms;
  const { spans } = norms;
  const { swapped, raised, machines } = full.counts;
  const validation = times(spans.validationPerMachine, machines);
  const fitting = times(spans.raisePerController, sum([swapped, raised]));
  const clock = enoughInFourOfFive(times(sum([validation, fitting]), 1 / personsAtWork(norms)));
  const weekends = overWeekends(clock, machines, terms);
  const planned = weekends ? 0 : clock;
  const money = addUp(
    [...controllerRows(full.counts, norms), hours("Validation", machines, spans.validationPerMachine)],
    norms,
  );
  const conversion = swapped[1] * spans.conversionPerController[1];
  const lead = full.orders.find(({ label }) => label === "Controllers")?.leadWeeks ?? null;
  const { purchaseWeeks, transportWeeks, incomingWeeks } = norms.plain;
  return {
    ...{
      id: idOf(terms, "controller"),
      kind: "controller",
      name: `Controllers first: ${swapped[0]} swapped${weekends ? ", one machine a weekend" : ""}`,
      stage: 1,
    },
    ...{ cost: costOf(money.cost), yearlyCost: 0, windowHours: planned },
    ...{ extraStopHours: 0, rampUpHours: RAMP_UP_HOURS, residualShare: 0 },
    engineerWeeks: [
      {
        region: site,
        weeks: (OWN.engineering * conversion + OWN.proving * validation[1]) / HOURS_A_WEEK,
        phases: HAND_PHASES,
      },
    ],
    crew:
      crewRegion === null
        ? null
        : { region: crewRegion, crews: 1, weeks: weekends ? machines : weeksAtWork(clock, norms) },
    orderWeeks: lead === null ? null : lead + purchaseWeeks + transportWeeks + incomingWeeks,
    projectWeeks: conversion / (HOURS_A_WEEK * personsAtWork(norms)) + signWeeks(money.cost[1], terms),
    ...{
      removes: [],
      adds: [],
      buys: [],
      earlyFailures: { months: 0, extraShare: 0 },
      after: [],
      commitsTo: [],
    },
  };
}

/** Whether the controllers fit into no window at once, but each machine into a weekend. */
function overWeekends(clock: number, machines: number, terms: LineOptionTerms): boolean {
  const { norms, windowHours, weekendHours } = terms;
  const share = norms.plain.windowShare;
  const fitsWindow = clock <= (windowHours ?? 0) * share;
  return !fitsWindow && machines <= WEEKENDS && clock / machines <= (weekendHours ?? 0) * share;
}
