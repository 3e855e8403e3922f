import loadHighs, { type Highs, type Model } from "highs";

/** The solver's word for a solution that keeps within all limits. */
export const FEASIBLE = 2;
/** Numbers this close to a bound count as at it; HiGHS takes 1e-6 by default, too wide for money in cents. */
export const TOLERANCE = 1e-9;

let loaded: Promise<Highs> | null = null;

/** Runs a model of its own on the solver, which is loaded once; one that broke down is not used again. */
export async function onSolver<T>(run: (highs: Highs, model: Model) => T): Promise<T> {
  loaded ??= loadHighs();
  const highs = await loaded;
  const model = highs.createModel();
  try {
    return run(highs, model);
  } catch (error) {
    loaded = null;
    throw error;
  } finally {
    model.dispose();
  }
}
