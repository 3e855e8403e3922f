import type { Highs, Model } from "highs";
import { dataOf, type MixedModel, type SumRow } from "@/lib/portfolio/mixedModel";
import { onSolver } from "@/lib/portfolio/solver";

/** Rows a solution in parts breaks and no whole one does. */
export type Cuts = (values: readonly number[]) => readonly SumRow[];

/** What is known of a model once its whole variables may be taken in parts. */
export interface Relaxed {
  /** The model with the rows that hold its relaxation in the end. */
  readonly model: MixedModel;
  /** No whole solution has more. */
  readonly bound: number;
  /** Values of a whole solution near the one in parts; null when none was met. */
  readonly near: readonly number[] | null;
}

export interface RelaxTerms {
  readonly cuts: Cuts;
  readonly timeLimitSeconds: number;
  /** Whether it must end with what it has. */
  readonly late: () => boolean;
}

const MOST_ROUNDS = 12;
/** A cut this far from being reached at the end is left out again. */
const LOOSE = 1e-6;
const WHOLE = 1e-6;
/** Parts from here on are taken as whole at once. */
const NEARLY = 0.9;
const MOST_MISSES = 5;

/** How far a row's least is from being reached. */
const slackIn = ({ takes, least }: SumRow, values: readonly number[]) =>
  takes.reduce((sum, [column, weight]) => sum + weight * (values[column] as number), -least);

/** Values of the best solution in parts; null when there is none. */
function solveParts(highs: Highs, solver: Model): readonly number[] | null {
  solver.run();
  const done = solver.getModelStatus() === highs.constants.modelStatus.optimal;
  return done ? [...solver.getSolution().colValue] : null;
}

interface Parts {
  readonly highs: Highs;
  readonly solver: Model;
  readonly model: MixedModel;
}

/**
 * Takes what is nearly whole as whole, or else the fullest part, and solves again, until all is whole. A part that does
 * not go with the rest is left out, and after a few of these all that is not whole by then.
 */
function dive(
  { highs, solver, model }: Parts,
  from: readonly number[],
  late: () => boolean,
): readonly number[] | null {
  const columns = model.columns.flatMap(({ whole }, column) => (whole ? [column] : []));
  const fix = (list: readonly number[], at: 0 | 1) => {
    for (const column of list) solver.changeColBounds(column, at, at);
  };
  let values: readonly number[] | null = from;
  let misses = 0;
  while (values && !late()) {
    const now: readonly number[] = values;
    const part = (column: number) => now[column] as number;
    const open = columns.filter((column) => part(column) > WHOLE && part(column) < 1 - WHOLE);
    if (open.length === 0) return values;
    const fullest = open.reduce((a, b) => (part(b) > part(a) ? b : a));
    const up = misses < MOST_MISSES ? [fullest, ...open.filter((column) => part(column) >= NEARLY)] : [];
    fix(up, 1);
    values = up.length > 0 ? solveParts(highs, solver) : null;
    if (values) continue;
    misses += 1;
    fix(up.length > 0 ? up : columns.filter((column) => part(column) < 1 - WHOLE), 0);
    values = solveParts(highs, solver);
  }
  return null;
}

/** Adds the rows a solution in parts breaks, and again until it breaks none. */
function addCuts(
  { highs, solver }: Parts,
  { cuts, late }: RelaxTerms,
): { readonly rows: readonly SumRow[]; readonly bound: number; readonly parts: readonly number[] | null } {
  let rows: SumRow[] = [];
  let bound = Number.POSITIVE_INFINITY;
  let parts = solveParts(highs, solver);
  for (let round = 0; parts && round < MOST_ROUNDS; round += 1) {
    bound = solver.getObjectiveValue();
    const values = parts;
    const found = late() ? [] : cuts(values);
    rows = [...rows.filter((row) => slackIn(row, values) < LOOSE), ...found];
    if (found.length === 0) break;
    for (const { takes, least } of found)
      solver.addRow(least, highs.infinity, {
        indices: takes.map(([column]) => column),
        values: takes.map(([, weight]) => weight),
      });
    parts = solveParts(highs, solver);
  }
  return { rows, bound, parts };
}

/**
 * Solves a model with its whole variables in parts, adds the rows that solution breaks, and again until it breaks none;
 * then goes down from it to a whole solution.
 *
 * The model comes back as it is when it has no solution in parts.
 */
export function relax(model: MixedModel, terms: RelaxTerms): Promise<Relaxed> {
  return onSolver((highs, solver) => {
    const columns = model.columns.map((column) => ({ ...column, whole: false }));
    solver.passModel(dataOf(highs, { ...model, columns }));
    solver.options.set({ output_flag: false, time_limit: terms.timeLimitSeconds });
    const about = { highs, solver, model };
    const { rows, bound, parts } = addCuts(about, terms);
    const near = parts && dive(about, parts, terms.late);
    return { model: { ...model, rows: [...model.rows, ...rows] }, bound, near };
  });
}
