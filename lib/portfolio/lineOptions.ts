import {
  controllerOption,
  idOf,
  type LineOptionTerms,
  type Making,
  option,
  WEEKENDS,
} from "@/lib/portfolio/costedWay";
import type { PlanOption } from "@/lib/portfolio/planProblem";
import { buildScope, type Scope } from "@/lib/retrofit/scope/buildScope";
import type { ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";
import { targetChoices } from "@/lib/retrofit/scope/targetChoices";
/** The ways a plan may choose for a line, or why there is none. */
export interface LineOptions {
  readonly options: readonly PlanOption[];
  /** Ids of those after any of which the line is converted. */
  readonly last: readonly string[];
  /** Null when there are options. */
  readonly none: string | null;
}

const MOST_PARTS = 4;

/**
 * The ways a plan may choose for a line: the whole line in one window, machine by machine over weekends, or in parts
 * over as many windows as it takes; the controllers before the drives where they have to be swapped.
 *
 * A ring is never split between two parts; over weekends the new network has to run beside the old one. Care, spares, repair and pooling are costed elsewhere: what they change is
 * not modelled here, so no plan chooses them by itself.
 */
export function lineOptions(terms: LineOptionTerms): LineOptions {
  const { facts, norms } = terms;
  const target = targetChoices(facts)[0]?.family;
  const built = target === undefined ? null : buildScope(facts, { target, norms });
  if (built === null || (!built.ok && built.error.kind === "nothing"))
    return { options: [], last: [], none: "every drive is in open supply" };
  if (!built.ok) return { options: [], last: [], none: "its parts follow themselves; correct the register" };
  const full = built.value;
  const swaps = full.counts.swapped[0] > 0;
  const first = swaps ? [controllerOption(full, terms)] : [];
  const make = { terms, full, swaps, after: first.map(({ id }) => id) };
  const ways = [inOne(make), overWeekends(make), inParts(make, ringGroups(full))].filter(
    (way) => way.length > 0,
  );
  return {
    options: [...first, ...ways.flat()],
    last: ways.flatMap((way) => way.at(-1)?.id ?? []),
    none: ways.length > 0 ? null : noneWords(full, terms),
  };
}

function noneWords(full: Scope, { windowHours }: LineOptionTerms): string {
  const needs = `the whole line needs ${Math.round(full.work.planned)} hours`;
  return windowHours === null
    ? `${needs}, and no window of the line has known hours`
    : `${needs}, and neither a part of it fits into a window nor a machine into a weekend`;
}

const room = ({ windowHours, norms }: LineOptionTerms) => (windowHours ?? 0) * norms.plain.windowShare;

function inOne(make: Making): PlanOption[] {
  const { full, terms } = make;
  if (full.work.planned > room(terms)) return [];
  return [option(make, full, { key: "full", kind: "full", name: `Whole line to ${full.target}` })];
}

/**
 * Machine by machine over the weekends of a quarter, which has 13; machines too large for one follow in windows.
 *
 * Until the last is done the new network runs beside the old one: whether the controllers bear that is for their maker
 * to say, and what it costs is not in the figure.
 */
function overWeekends(make: Making): PlanOption[] {
  const { terms, full } = make;
  if (terms.weekendHours === null) return [];
  const most = terms.weekendHours * terms.norms.plain.windowShare;
  const apart = { ...make, terms: { ...terms, facts: withoutRings(terms.facts) } };
  const scopes = machineAxes(full).map((only) => ({ only, hours: scopeOf(apart, only)?.work.planned ?? 0 }));
  const small = scopes.filter(({ hours }) => hours <= most);
  const large = scopes.filter(({ hours }) => hours > most).map(({ only }) => only);
  const begun = scopeOf(apart, new Set(small.flatMap(({ only }) => [...only])));
  if (begun === null || small.length > WEEKENDS) return [];
  const name = `${begun.axes.length} axes on ${count(small.length)} to ${full.target}, one machine a weekend`;
  const way = option(make, begun, { key: "weekends", kind: large.length > 0 ? "partial" : "full", name });
  const crew = way.crew && { ...way.crew, weeks: small.length };
  const first = { ...way, windowHours: 0, crew };
  if (large.length === 0) return [first];
  const rest = parted(apart, large, { from: 1, key: "after-weekends" });
  const [next] = rest;
  if (!next) return [];
  return [
    { ...first, commitsTo: [next.id] },
    ...rest.map((one, i) => ({ ...one, stage: one.stage + 1, after: i === 0 ? [first.id] : one.after })),
  ];
}

const withoutRings = (facts: ScopeFacts): ScopeFacts => ({
  ...facts,
  axes: facts.axes.map((axis) => ({ ...axis, ring: null })),
});

function machineAxes({ axes }: Scope): ReadonlySet<string>[] {
  const machines = new Map<string, Set<string>>();
  for (const { axis } of axes)
    machines.set(axis.machine, (machines.get(axis.machine) ?? new Set<string>()).add(axis.id));
  return [...machines.values()];
}

/** In as few parts as fit into the largest window, where the whole does not. */
function inParts(make: Making, groups: readonly ReadonlySet<string>[]): PlanOption[] {
  const { terms, full } = make;
  return full.work.planned <= room(terms) ? [] : parted(make, groups, { from: 2, key: "part" });
}

interface PartGiven {
  /** Fewest parts to try. */
  readonly from: number;
  readonly key: string;
}

/** Groups of axes in as few windows as hold them, each part obliging to the next. */
function parted(
  make: Making,
  groups: readonly ReadonlySet<string>[],
  { from, key }: PartGiven,
): PlanOption[] {
  const { terms, full, after } = make;
  for (let parts = from; parts <= Math.min(MOST_PARTS, groups.length); parts += 1) {
    const scopes = shareOut(groups, parts).map((only) => scopeOf(make, only));
    if (!scopes.every((scope) => scope !== null && scope.work.planned <= room(terms))) continue;
    const keyOf = (part: number) => `${key}-${part}-of-${parts}`;
    return scopes.flatMap((scope, i) => {
      if (scope === null) return [];
      const machines = new Set(scope.axes.map(({ axis }) => axis.machine)).size;
      const name = `Part ${i + 1} of ${parts}: ${scope.axes.length} axes on ${count(machines)} to ${full.target}`;
      const way = option(make, scope, { key: keyOf(i + 1), kind: "partial", name });
      return [
        {
          ...way,
          stage: way.stage + i,
          after: i === 0 ? after : [idOf(terms, keyOf(i))],
          commitsTo: i + 1 < parts ? [idOf(terms, keyOf(i + 2))] : [],
        },
      ];
    });
  }
  return [];
}

const count = (machines: number) => (machines === 1 ? "1 machine" : `${machines} machines`);

function scopeOf({ terms: { facts, norms }, full }: Making, only: ReadonlySet<string>): Scope | null {
  const built = buildScope(facts, { target: full.target, norms, only });
  return built.ok ? built.value : null;
}

/** Axes that are converted at once: those of a ring; outside rings, those of a machine. */
export function ringGroups({ axes }: Pick<Scope, "axes">): ReadonlySet<string>[] {
  const groups = new Map<string, Set<string>>();
  for (const { axis } of axes) {
    const key = axis.ring === null ? `machine ${axis.machine}` : `ring ${axis.ring}`;
    groups.set(key, (groups.get(key) ?? new Set<string>()).add(axis.id));
  }
  return [...groups.values()];
}

/** Groups shared out over some parts, the largest first into the emptiest. */
function shareOut(groups: readonly ReadonlySet<string>[], parts: number): ReadonlySet<string>[] {
  const bins = Array.from({ length: parts }, () => new Set<string>());
  for (const group of [...groups].sort((a, b) => b.size - a.size)) {
    const emptiest = bins.reduce((least, bin) => (bin.size < least.size ? bin : least));
    for (const id of group) emptiest.add(id);
  }
  return bins;
}
