import { percent } from "@/lib/view/chance";
import { plainNumber, THIN } from "@/lib/view/number";

/** The no-spare chance some months ahead, computed and simulated. */
export interface SimulatedMonth {
  readonly months: number;
  readonly runs: number;
  readonly model: number;
  readonly simulated: number;
}

export interface SimulatedRow {
  readonly ahead: string;
  readonly model: string;
  readonly simulated: string;
  /** Twice the standard error of the simulated share, in points. */
  readonly error: string;
  readonly verdict: string;
}

const POINTS = 100;
/** Beyond so many standard errors two figures differ by more than chance. */
const FAR = 3;

/** Standard error of a share of the runs, were the computed chance true; never below that of one run in all. */
function errorOf({ model, runs }: SimulatedMonth): number {
  return Math.max(Math.sqrt((model * (1 - model)) / runs), 1 / runs);
}

/** A row to show, with whether the two agree. */
export function simulatedRow(month: SimulatedMonth): SimulatedRow {
  const error = errorOf(month);
  const off = Math.abs(month.simulated - month.model);
  return {
    ahead: `${month.months} months`,
    model: percent(month.model),
    simulated: percent(month.simulated),
    error: `±${THIN}${plainNumber(2 * error * POINTS, 1)} points`,
    verdict: off <= FAR * error ? "agrees" : `off by ${plainNumber(off * POINTS, 1)} points`,
  };
}
