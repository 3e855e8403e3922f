import type { Highs, Model, ModelData } from "highs";
import { FEASIBLE, onSolver } from "@/lib/portfolio/solver";

/** A variable of a linear model. */
export interface Column {
  /** What one unit of it adds to the objective, which is made as large as can be. */
  readonly gain: number;
  readonly least: number;
  readonly most: number;
  readonly whole: boolean;
}

/** A limit on a weighted sum of variables. */
export interface SumRow {
  /** Column and weight. */
  readonly takes: readonly (readonly [number, number])[];
  readonly least: number;
  readonly most: number;
}

export interface MixedModel {
  readonly columns: readonly Column[];
  readonly rows: readonly SumRow[];
}

export interface MixedTerms {
  /** The search ends once (bound - objective) / |objective| is at most this. */
  readonly gap: number;
  readonly timeLimitSeconds: number;
  /** Values of the columns to start from. */
  readonly start?: readonly number[];
  /** Asked now and then whether to end with what there is. */
  readonly stopped?: () => boolean;
  /** Hears of each better solution. */
  readonly better?: (values: ArrayLike<number>) => void;
}

export interface MixedSolution {
  readonly status: "optimal" | "time-limit" | "infeasible" | "none-found";
  readonly objective: number;
  readonly bound: number;
  readonly values: readonly number[];
}

const NOTHING = { objective: Number.NaN, bound: Number.NaN, values: [] };

/** The model as the solver takes it. */
export function dataOf(highs: Highs, { columns, rows }: MixedModel): ModelData {
  const { continuous, integer } = highs.constants.variableType;
  const finite = (value: number) =>
    Number.isFinite(value) ? value : Math.sign(value) * Number(highs.infinity);
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const { takes } of rows) {
    for (const [column, weight] of takes) {
      indices.push(column);
      values.push(weight);
    }
    starts.push(indices.length);
  }
  const size = { numRows: rows.length, numCols: columns.length };
  return {
    ...{ ...size, sense: highs.constants.objectiveSense.maximize },
    colCost: columns.map(({ gain }) => gain),
    colLower: columns.map(({ least }) => finite(least)),
    colUpper: columns.map(({ most }) => finite(most)),
    rowLower: rows.map(({ least }) => finite(least)),
    rowUpper: rows.map(({ most }) => finite(most)),
    matrix: { format: "csr" as const, ...size, starts, indices, values },
    integrality: columns.map(({ whole }) => (whole ? integer : continuous)),
  };
}

function read(highs: Highs, model: Model): MixedSolution {
  const { optimal, infeasible, timeLimit, interrupted } = highs.constants.modelStatus;
  const status = model.getModelStatus();
  if (status === infeasible) return { status: "infeasible", ...NOTHING };
  if (status !== optimal && status !== timeLimit && status !== interrupted)
    throw new RangeError(`the solver must end with a choice or without one, got status ${status}`);
  const bound = Number(model.info.get("mip_dual_bound"));
  if (Number(model.info.get("primal_solution_status")) !== FEASIBLE)
    return { status: "none-found", ...NOTHING, bound };
  return {
    status: status === optimal ? "optimal" : "time-limit",
    objective: model.getObjectiveValue(),
    bound,
    values: [...model.getSolution().colValue],
  };
}

/**
 * Solves a linear model some of whose variables are whole, by branch and cut (HiGHS). Stopped by gap, the same model
 * gives the same values. It blocks its thread: run it in a worker.
 */
export function solveMixed(
  model: MixedModel,
  { gap, timeLimitSeconds, start, stopped, better }: MixedTerms,
): Promise<MixedSolution> {
  return onSolver((highs, solver) => {
    solver.passModel(dataOf(highs, model));
    solver.options.set({ output_flag: false, mip_rel_gap: gap, time_limit: timeLimitSeconds });
    if (start) solver.setSolution({ colValue: start });
    const { mipInterrupt, mipImprovingSolution } = highs.constants.callbackType;
    solver.run({
      [mipInterrupt]: (event) => {
        if (stopped?.()) event.interrupt();
      },
      [mipImprovingSolution]: ({ data }) => {
        if (data.mip_solution) better?.(data.mip_solution);
      },
    });
    return read(highs, solver);
  });
}
