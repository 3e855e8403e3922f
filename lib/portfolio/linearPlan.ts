import type { Column, MixedModel, SumRow } from "@/lib/portfolio/mixedModel";
import { sharedNeeds } from "@/lib/portfolio/orderCuts";
import { type LimitRow, slackOf } from "@/lib/portfolio/planLimits";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";
import {
  chanceIn,
  monthWeight,
  type PoolShortage,
  type PoolStep,
  type Touch,
} from "@/lib/portfolio/shortage";
import { partAfter, type StepLoss, sharesIn, stepAt } from "@/lib/portfolio/shortageCuts";

/** Everything the linear model is made from; the same for all its rounds. */
export interface LinearTerms {
  readonly evaluator: PlanEvaluator;
  readonly shortages: readonly PoolShortage[];
  readonly limits: readonly LimitRow[];
  /** What each candidate adds by itself, EUR: stops with a spare that go, less what it brings with it. */
  readonly gains: readonly number[];
  /** Whether a candidate can be chosen at all. */
  readonly open: readonly boolean[];
}

/** A weighted sum of columns and a constant. */
interface Sum {
  readonly constant: number;
  readonly takes: readonly (readonly [number, number])[];
}

/** Corrections of one pool in one step. */
export interface Slope {
  /** What its chances are multiplied by. */
  readonly factor: number;
  /** At what chance units that go are counted. */
  readonly chance: number;
}

/** By pool and step. */
export type Slopes = (pool: PoolShortage, step: PoolStep) => Slope;

/** A linear model of the worth of plans. */
export interface LinearPlan {
  /** Its objective is the worth of a plan in `UNIT`. */
  readonly model: MixedModel;
  /** The shortages of its pools step by step. */
  readonly losses: readonly StepLoss[];
  /** Values of all columns for a plan: what the solver can start from. */
  valuesOf(chosen: readonly number[]): number[];
  /** Worth of a plan by the model, EUR. */
  worthOf(chosen: readonly number[]): number;
  /** Pieces more on the shelf of a pool in a step under a plan, as the model counts them. */
  reliefOf(values: readonly number[], pool: PoolShortage, step: PoolStep): number;
}

/** The model counts in thousands of EUR, nearer to its other figures. */
export const UNIT = 1000;

/** Stops with a spare that go when units leave, EUR of today. */
function baseGain(
  { month, base }: Touch,
  { months, discountRate }: { months: number; discountRate: number },
) {
  let sum = 0;
  for (let m = Math.floor(month); m < months; m += 1)
    sum += Math.min(1, m + 1 - month) * monthWeight(m, discountRate);
  return base * sum;
}

/** What each candidate adds by itself. */
export function ownGains(evaluator: PlanEvaluator, shortages: readonly PoolShortage[]): number[] {
  const { problem, staged, money } = evaluator;
  const gains = evaluator.candidates.map(
    ({ index }) => -evaluator.side(index) - problem.worthPerEuro * (money[index]?.spentDiscounted ?? 0),
  );
  for (const { touches } of shortages)
    for (const touch of touches)
      gains[touch.index] = (gains[touch.index] as number) + baseGain(touch, staged.ground.assumptions);
  return gains;
}

/** Candidates that break a limit all alone, where nothing could make room for them. */
export function openCandidates({ candidates }: PlanEvaluator, limits: readonly LimitRow[]): boolean[] {
  const open = candidates.map(() => true);
  for (const { takes, most } of limits) {
    if ([...takes.values()].some((amount) => amount < 0)) continue;
    for (const [index, amount] of takes) if (amount > most + slackOf(most)) open[index] = false;
  }
  return open;
}

/** The first slopes: units that go are counted at the chance without a plan, so that no plan is worth more. */
export const firstSlopes: Slopes = (_, { chance }) => ({ factor: 1, chance });

function sumOf({ constant, takes }: Sum, values: readonly number[]): number {
  let sum = constant;
  for (const [column, weight] of takes) sum += weight * (values[column] as number);
  return sum;
}

/** A part of the model under construction: columns that are sums of others, and columns above several sums. */
interface Draft {
  readonly columns: Column[];
  readonly equal: { readonly column: number; readonly of: Sum }[];
  readonly above: { readonly column: number; readonly of: readonly Sum[] }[];
  readonly relief: Map<PoolStep, Sum>;
  readonly losses: StepLoss[];
}

function addColumn({ columns }: Draft, gain: number, least: number): number {
  columns.push({ gain, least, most: Number.POSITIVE_INFINITY, whole: false });
  return columns.length - 1;
}

/** The chance of a step by its edges. */
function chanceAt({ edges }: PoolStep, pieces: number): number {
  let top = Number.NEGATIVE_INFINITY;
  for (const { at, slope } of edges) top = Math.max(top, at + slope * pieces);
  return top;
}

/** A running sum: what it was, and what the candidates of the step add to it. */
function carry(draft: Draft, before: number | null, more: Sum["takes"]): number | null {
  const takes = [...(before === null ? [] : [[before, 1] as const]), ...more];
  if (takes.length === 0) return null;
  const column = addColumn(draft, 0, Number.NEGATIVE_INFINITY);
  draft.equal.push({ column, of: { constant: 0, takes } });
  return column;
}

const times = (column: number | null, weight: number): Sum["takes"] =>
  column === null || weight === 0 ? [] : [[column, weight]];

const amounts = (touches: readonly Touch[], of: (touch: Touch) => number): Sum["takes"] =>
  touches.flatMap((touch): Sum["takes"] => (of(touch) === 0 ? [] : [[touch.index, of(touch)]]));

const joined = (takes: Sum["takes"]): Sum["takes"] => {
  const out = new Map<number, number>();
  for (const [column, weight] of takes) out.set(column, (out.get(column) ?? 0) + weight);
  return [...out];
};

const scaled = (takes: Sum["takes"], by: number): Sum["takes"] =>
  takes.map(([column, weight]) => [column, weight * by] as const);

interface Made {
  readonly terms: LinearTerms;
  readonly slopes: Slopes;
}

/** The shortage of a pool step by step: above each edge of its chance, less what the units that go no longer lose. */
function addPool(draft: Draft, pool: PoolShortage, { terms, slopes }: Made): void {
  const { open, evaluator } = terms;
  let pieces: number | null = null;
  let units: number | null = null;
  let short: number | null = null;
  for (const [i, step] of pool.steps.entries()) {
    const now = pool.touches.filter(({ month }) => stepAt(pool.steps, month) === i);
    const part = (of: (touch: Touch) => number) =>
      amounts(now, (touch) => of(touch) * partAfter(step, touch.month));
    const relief: Sum = {
      constant: 0,
      takes: [...times(pieces, 1), ...times(units, step.wear / 2), ...part((touch) => touch.pieces)],
    };
    draft.relief.set(step, relief);
    const { factor, chance } = slopes(pool, step);
    const gone = scaled(
      [...times(short, 1), ...part((touch) => touch.short)],
      (-chance * step.weight) / UNIT,
    );
    const column = addColumn(draft, -1, 0);
    const whole = (factor * step.whole) / UNIT;
    draft.above.push({
      column,
      of: step.edges.map(({ at, slope }) => ({
        constant: whole * at,
        takes: joined([...scaled(relief.takes, whole * slope), ...gone]),
      })),
    });
    draft.losses.push({
      column,
      shares: sharesIn(pool, i, { candidates: evaluator.candidates, open, chance: chance / UNIT }),
      loss: (more, gone) => Math.max(0, whole * chanceAt(step, more) - gone),
    });
    pieces = carry(draft, pieces, [...times(units, step.wear), ...amounts(now, (touch) => touch.pieces)]);
    units = carry(
      draft,
      units,
      amounts(now, (touch) => touch.units),
    );
    short = carry(
      draft,
      short,
      amounts(now, (touch) => touch.short),
    );
  }
}

function rowsOf({ equal, above }: Draft, limits: readonly LimitRow[]): SumRow[] {
  const free = { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY };
  const minus = (column: number, { takes }: Sum): SumRow["takes"] =>
    joined([[column, 1], ...scaled(takes, -1)]);
  return [
    ...limits.map(({ takes, most }) => ({ ...free, takes: [...takes], most })),
    ...equal.map(({ column, of }) => ({
      ...{ takes: minus(column, of), least: of.constant, most: of.constant },
    })),
    ...above.flatMap(({ column, of }) =>
      of.map((sum) => ({ ...free, takes: minus(column, sum), least: sum.constant })),
    ),
  ];
}

/**
 * A mixed-integer model of the worth of plans: each candidate adds its own gain, each pool loses its shortage.
 *
 * The chance of an empty shelf falls with the pieces a plan brings or spares and is replaced by its lower hull, so the
 * shortage needs no whole variables: one column a pool and step above a few straight lines.
 */
export function linearPlan(terms: LinearTerms, slopes: Slopes): LinearPlan {
  const { shortages, gains, open } = terms;
  const limits = sharedNeeds(terms.limits, terms.evaluator.candidates);
  const draft: Draft = {
    columns: gains.map((gain, i) => ({ gain: gain / UNIT, least: 0, most: open[i] ? 1 : 0, whole: true })),
    ...{ equal: [], above: [], relief: new Map(), losses: [] },
  };
  for (const pool of shortages) addPool(draft, pool, { terms, slopes });
  // What a shortage loses without a plan is a column that is always there, so that the gap is one of the worth.
  const without = shortages
    .flatMap(({ steps }) => steps)
    .reduce((sum, { whole, chance }) => sum + whole * chance, 0);
  draft.columns.push({ gain: without / UNIT, least: 1, most: 1, whole: false });
  const always = draft.columns.length - 1;
  const valuesOf = (chosen: readonly number[]): number[] => {
    const values = new Array<number>(draft.columns.length).fill(0);
    for (const index of [...chosen, always]) values[index] = 1;
    for (const { column, of } of draft.equal) values[column] = sumOf(of, values);
    for (const { column, of } of draft.above) {
      let top = 0;
      for (const sum of of) top = Math.max(top, sumOf(sum, values));
      values[column] = top;
    }
    return values;
  };
  return {
    ...{ valuesOf, model: { columns: draft.columns, rows: rowsOf(draft, limits) }, losses: draft.losses },
    worthOf: (chosen) => {
      const values = valuesOf(chosen);
      return UNIT * draft.columns.reduce((sum, { gain }, i) => sum + gain * (values[i] as number), 0);
    },
    reliefOf: (values, _, step) => sumOf(draft.relief.get(step) as Sum, values),
  };
}

const LEAST_FACTOR = 0.1;
const MOST_FACTOR = 10;

/** Slopes at a plan: the chances its own evaluation gives, and the model's curve moved through them. */
export function slopesAt(
  { evaluator, shortages }: LinearTerms,
  plan: LinearPlan,
  chosen: readonly number[],
): Slopes {
  const values = plan.valuesOf(chosen);
  const known = new Map<PoolStep, Slope>();
  for (const pool of shortages) {
    const result = evaluator.pool(pool.poolId, chosen);
    for (const step of pool.steps) {
      const relief = plan.reliefOf(values, pool, step);
      const modelled = chanceAt(step, relief);
      const chance = chanceIn(result, step);
      const factor = modelled > 1e-12 ? chance / modelled : 1;
      known.set(step, { chance, factor: Math.min(MOST_FACTOR, Math.max(LEAST_FACTOR, factor)) });
    }
  }
  return (_, step) => known.get(step) as Slope;
}
