import type { Highs, Model, ModelData } from "highs";
import { requireNumber } from "@/lib/kernel/requireNumber";
import { FEASIBLE, onSolver, TOLERANCE } from "@/lib/portfolio/solver";

/** Which of some items to take, each whole or not at all. */
export interface Selection {
  /** Worth of each item; any finite number. */
  readonly values: readonly number[];
  /** What each item takes of each limited thing: `costs[row][item]`. */
  readonly costs: readonly (readonly number[])[];
  /** Most that may be taken of each limited thing. */
  readonly limits: readonly number[];
  /** Items, by index, of which at most one is taken. */
  readonly groups?: readonly (readonly number[])[];
  /** Ceiling of the search; a run it stops need not be repeatable. */
  readonly timeLimitSeconds?: number;
  /** The search ends once (bound - objective) / objective is at most this; 0 proves the best. */
  readonly gap?: number;
}

export interface Selected {
  /**
   * "optimal": the best, to within the gap · "time-limit": the best found in time · "infeasible": no choice keeps
   * within the limits · "none-found": time ran out before any was found.
   */
  readonly status: "optimal" | "time-limit" | "infeasible" | "none-found";
  /** Worth of the items taken; null when there is no choice. */
  readonly objective: number | null;
  /** No choice is worth more than this; null when infeasible. */
  readonly bound: number | null;
  /** Items taken, by index, ascending. */
  readonly chosen: readonly number[];
}

/** The same when items could be taken in part. */
export interface Relaxed {
  readonly objective: number;
  /** Part of each item taken, in [0, 1]. */
  readonly parts: readonly number[];
  /** What one more unit of each limited thing would add. */
  readonly worthOfLimit: readonly number[];
}

function requireSelection({ values, costs, limits, groups = [] }: Selection): void {
  if (costs.length !== limits.length)
    throw new RangeError(`costs must have a row for each of ${limits.length} limits, got ${costs.length}`);
  const finite = (list: readonly number[], name: string) => {
    for (const value of list) requireNumber(value, name, { least: Number.NEGATIVE_INFINITY });
  };
  finite(values, "values");
  finite(limits, "limits");
  for (const [i, row] of costs.entries()) {
    if (row.length !== values.length)
      throw new RangeError(`costs[${i}] must have ${values.length} entries, got ${row.length}`);
    finite(row, `costs[${i}]`);
  }
  for (const item of groups.flat())
    if (!(Number.isSafeInteger(item) && item >= 0 && item < values.length))
      throw new RangeError(`groups must hold items from 0 to ${values.length - 1}, got ${item}`);
}

function matrixOf(
  rows: readonly (readonly number[])[],
  groups: readonly (readonly number[])[],
  items: number,
) {
  const starts = [0];
  const indices: number[] = [];
  const entries: number[] = [];
  const add = (item: number, value: number) => {
    indices.push(item);
    entries.push(value);
  };
  for (const row of rows) {
    row.forEach((cost, item) => {
      if (cost !== 0) add(item, cost);
    });
    starts.push(indices.length);
  }
  for (const group of groups) {
    for (const item of new Set(group)) add(item, 1);
    starts.push(indices.length);
  }
  const size = { numRows: rows.length + groups.length, numCols: items };
  return { format: "csr" as const, ...size, starts, indices, values: entries };
}

function modelOf(highs: Highs, selection: Selection, whole: boolean): ModelData {
  const { values, costs, limits, groups = [] } = selection;
  const matrix = matrixOf(costs, groups, values.length);
  const { continuous, integer } = highs.constants.variableType;
  return {
    numCols: matrix.numCols,
    numRows: matrix.numRows,
    sense: highs.constants.objectiveSense.maximize,
    colCost: values,
    colLower: values.map(() => 0),
    colUpper: values.map(() => 1),
    rowLower: new Array<number>(matrix.numRows).fill(-highs.infinity),
    rowUpper: [...limits, ...groups.map(() => 1)],
    matrix,
    integrality: values.map(() => (whole ? integer : continuous)),
  };
}

function read(highs: Highs, model: Model, values: readonly number[]): Selected {
  const { optimal, infeasible, timeLimit } = highs.constants.modelStatus;
  const status = model.getModelStatus();
  if (status === infeasible) return { status: "infeasible", objective: null, bound: null, chosen: [] };
  if (status !== optimal && status !== timeLimit)
    throw new RangeError(`the solver must end with a choice or without one, got status ${status}`);
  const bound = Number(model.info.get("mip_dual_bound"));
  if (Number(model.info.get("primal_solution_status")) !== FEASIBLE)
    return { status: "none-found", objective: null, bound, chosen: [] };
  const chosen = [...model.getSolution().colValue].flatMap((part, item) => (part > 0.5 ? [item] : []));
  const objective = chosen.reduce((sum, item) => sum + (values[item] as number), 0);
  const named = status === optimal ? "optimal" : "time-limit";
  return { status: named, objective, bound: Math.max(bound, objective), chosen };
}

/**
 * Takes the items worth most together: maximise sum of values x, each x 0 or 1, costs x <= limits, at most one item of
 * a group. Solved exactly by branch and cut (HiGHS); stopped by gap, the same input gives the same choice.
 *
 * The search itself blocks its thread: run large ones in a worker.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export async function solveSelection(selection: Selection): Promise<Selected> {
  requireSelection(selection);
  const { values, timeLimitSeconds, gap = 0 } = selection;
  requireNumber(gap, "gap", { least: 0 });
  if (timeLimitSeconds !== undefined)
    requireNumber(timeLimitSeconds, "timeLimitSeconds", { least: 0, open: true });
  const { limits } = selection;
  if (values.length === 0) {
    const fits = limits.every((limit) => limit >= 0);
    return {
      status: fits ? "optimal" : "infeasible",
      objective: fits ? 0 : null,
      bound: fits ? 0 : null,
      chosen: [],
    };
  }
  return onSolver((highs, model) => {
    model.passModel(modelOf(highs, selection, true));
    model.options.set({ output_flag: false, mip_rel_gap: gap, mip_abs_gap: TOLERANCE });
    model.options.set({ mip_feasibility_tolerance: TOLERANCE, primal_feasibility_tolerance: TOLERANCE });
    if (timeLimitSeconds !== undefined) model.options.set("time_limit", timeLimitSeconds);
    model.run();
    return read(highs, model, values);
  });
}

/**
 * The same choice when items may be taken in part (linear relaxation): an upper bound of the whole one, and what one
 * more unit of each limit is worth (its dual value).
 *
 * @returns Null when no choice keeps within the limits.
 * @throws {RangeError} naming the argument and its value.
 */
export async function relaxSelection(selection: Selection): Promise<Relaxed | null> {
  requireSelection(selection);
  return onSolver((highs, model) => {
    model.passModel(modelOf(highs, selection, false));
    model.options.set({ output_flag: false });
    model.run();
    if (model.getModelStatus() !== highs.constants.modelStatus.optimal) return null;
    const { colValue, rowDual } = model.getSolution();
    const worthOfLimit = [...rowDual].slice(0, selection.limits.length);
    return { objective: model.getObjectiveValue(), parts: [...colValue], worthOfLimit };
  });
}
