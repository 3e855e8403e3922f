import type { SumRow } from "@/lib/portfolio/mixedModel";
import type { Candidate } from "@/lib/portfolio/planSlots";
import type { PoolShortage, PoolStep, Touch } from "@/lib/portfolio/shortage";

/** What candidates do to the shortage of a pool in one step. */
export interface StepLoss {
  /** Column of the shortage. */
  readonly column: number;
  readonly shares: readonly StepShare[];
  /** The shortage, when the plan gives so many pieces and takes out units that lose so much; falls with both. */
  readonly loss: (pieces: number, gone: number) => number;
}

/** What one candidate does. */
interface StepShare {
  readonly index: number;
  /** Of one line and stage at most one candidate is chosen. */
  readonly group: string;
  readonly pieces: number;
  readonly gone: number;
}

/** Part of a step that lies behind the end of a work. */
export const partAfter = ({ from, until }: PoolStep, month: number) => (until - month) / (until - from);

export const stepAt = (steps: readonly PoolStep[], month: number) =>
  steps.findIndex(({ from, until }) => from <= month && month < until);

/** Pieces a candidate gives in a step, and the share of its units gone by then. */
function shareIn(steps: readonly PoolStep[], at: number, { month, pieces, units }: Touch) {
  const start = stepAt(steps, month);
  const step = steps[at] as PoolStep;
  if (start < 0 || start > at) return null;
  if (start === at) {
    const part = partAfter(step, month);
    return { pieces: pieces * part, part };
  }
  const worn = steps.slice(start + 1, at).reduce((sum, { wear }) => sum + wear, step.wear / 2);
  return { pieces: pieces + units * worn, part: 1 };
}

/** The shares of the candidates that can be chosen in a step of a pool; pieces a plan takes off a shelf are left out. */
export function sharesIn(
  { steps, touches }: PoolShortage,
  at: number,
  about: {
    readonly candidates: readonly Candidate[];
    readonly open: readonly boolean[];
    readonly chance: number;
  },
): StepShare[] {
  const weight = (steps[at] as PoolStep).weight * about.chance;
  return touches.flatMap((touch): StepShare[] => {
    const share = about.open[touch.index] ? shareIn(steps, at, touch) : null;
    if (!share) return [];
    const { line, option } = about.candidates[touch.index] as Candidate;
    const group = `${line.lineId}|${option.stage}`;
    const gone = Math.max(0, touch.short * share.part * weight);
    return [{ index: touch.index, group, pieces: Math.max(0, share.pieces), gone }];
  });
}

/** Shortage a cut must be short by before it is worth a row, in the model's unit. */
const LEAST_VIOLATION = 0.01;
const LEAST_PART = 1e-6;

/** By group the candidate most of which is taken, the fullest group first. */
function fullest({ shares }: StepLoss, values: readonly number[]): StepShare[] {
  const groups = new Map<string, { best: StepShare; mass: number }>();
  const part = ({ index }: StepShare) => values[index] as number;
  for (const share of shares) {
    const known = groups.get(share.group);
    const best = known && part(known.best) >= part(share) ? known.best : share;
    groups.set(share.group, { best, mass: (known?.mass ?? 0) + part(share) });
  }
  return [...groups.values()]
    .filter(({ mass }) => mass > LEAST_PART)
    .sort((a, b) => b.mass - a.mass)
    .map(({ best }) => best);
}

/**
 * The row that holds when some candidates are taken as given: shortage >= L(given) - sum of what each other candidate
 * would take off it there.
 *
 * A later piece never helps more than an earlier one, so the sum is never less than what a plan takes off.
 */
function rowAt({ column, shares, loss }: StepLoss, given: ReadonlyMap<string, StepShare>): SumRow {
  let [pieces, gone] = [0, 0];
  for (const one of given.values()) {
    pieces += one.pieces;
    gone += one.gone;
  }
  const least = loss(pieces, gone);
  const takes = shares.flatMap((share): [number, number][] => {
    const same = given.get(share.group);
    const more = Math.max(0, share.pieces - (same?.pieces ?? 0));
    const less = Math.max(0, share.gone - (same?.gone ?? 0));
    const off = least - loss(pieces + more, gone + less);
    return off > 0 ? [[share.index, off]] : [];
  });
  return { takes: [[column, 1], ...takes], least, most: Number.POSITIVE_INFINITY };
}

const missing = ({ takes, least }: SumRow, values: readonly number[]) =>
  takes.reduce((left, [column, weight]) => left - weight * (values[column] as number), least);

/** The rows, one a step at most, that parts of candidates break although no whole plan does. */
export function shortageCuts(steps: readonly StepLoss[], values: readonly number[]): SumRow[] {
  return steps.flatMap((step) => {
    if (step.shares.length === 0) return [];
    const given = new Map<string, StepShare>();
    let best = { row: rowAt(step, given), missing: 0 };
    best = { ...best, missing: missing(best.row, values) };
    for (const share of fullest(step, values)) {
      given.set(share.group, share);
      const row = rowAt(step, given);
      const by = missing(row, values);
      if (by > best.missing) best = { row, missing: by };
    }
    return best.missing > LEAST_VIOLATION ? [best.row] : [];
  });
}
