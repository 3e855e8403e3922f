import { laplaceTrend, powerLaw, powerLawTrend } from "@/lib/reliability/trend";

/** Fewer events cannot tell a trend from chance: u is not yet near normal. Common practice, no source. */
export const LEAST_TREND_EVENTS = 4;

/** A change is called one when chance alone shows it less often than this. */
const LEVEL = 0.05;

/** Whether the rate of a pool moves. */
export interface RateTrend {
  readonly events: number;
  /** End of observation, unit-years. */
  readonly unitYears: number;
  /** "hint": only the power law passes the level, not the Laplace test. */
  readonly verdict: "faster" | "slower" | "hint-faster" | "hint-slower" | "no-sign" | "too-few";
  /** Null with too few events. */
  readonly tests: {
    /** Laplace test: > 0 is faster; p counts both ends. */
    readonly laplace: { readonly u: number; readonly p: number };
    /** Power law: beta > 1 is faster; p of its own test, both ends. */
    readonly power: { readonly beta: number; readonly p: number };
  } | null;
}

/**
 * Tells whether events of a pool come faster or slower on the clock of its time in service.
 *
 * The verdict is that of the Laplace test at 5 %, both ends; where only the test of the power law passes, a hint.
 *
 * @param times Unit-years in service when each event happened, > 0, not falling, <= unitYears.
 * @param unitYears End of observation, > 0 where there are events.
 * @throws {RangeError} naming the argument and its value.
 */
export function rateTrend(times: readonly number[], unitYears: number): RateTrend {
  const events = times.length;
  // With every event on the last day the power law has no finite fit.
  if (events < LEAST_TREND_EVENTS || times.every((time) => time === unitYears))
    return { events, unitYears, verdict: "too-few", tests: null };
  const laplace = laplaceTrend(times, unitYears);
  const power = { beta: powerLaw(times, unitYears).beta, p: powerLawTrend(times, unitYears).p };
  return { events, unitYears, verdict: verdictOf({ laplace, power }), tests: { laplace, power } };
}

function verdictOf({ laplace, power }: NonNullable<RateTrend["tests"]>): RateTrend["verdict"] {
  if (laplace.p < LEVEL) return laplace.u > 0 ? "faster" : "slower";
  if (power.p < LEVEL) return power.beta > 1 ? "hint-faster" : "hint-slower";
  return "no-sign";
}
