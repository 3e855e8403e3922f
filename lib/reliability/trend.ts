import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { requireCount, requireNumber } from "@/lib/kernel/requireNumber";
import { poissonSum } from "@/lib/reliability/poissonSum";

interface Window {
  /** Event times that carry information about the trend. */
  readonly inner: readonly number[];
  readonly end: number;
}

/** Ended by the last failure, that failure sets the window and says nothing about where in it events fall. */
function windowOf(times: readonly number[], end: number | null): Window {
  for (const [i, time] of times.entries()) {
    requireNumber(time, `times[${i}]`, { least: 0, open: true });
    const before = times[i - 1];
    if (before !== undefined && time < before)
      throw new RangeError(`times must not fall, got ${time} after ${before}`);
  }
  const last = times.at(-1) ?? 0;
  if (end === null) return { inner: times.slice(0, -1), end: last };
  requireNumber(end, "end", { least: last });
  return { inner: times, end };
}

/**
 * Tells whether events come faster (u > 0) or slower (u < 0) with time; about normal without a trend.
 *
 * u = (mean time - T / 2) / (T * sqrt(1 / (12 n))); p = 2 (1 - Phi(|u|)), both ends.
 * Ended by the last failure: T is that failure's time and n, mean leave it out.
 *
 * @param times Cumulative event times, > 0, not falling; at least one inside the window.
 * @param end End of observation, or null when the last failure ended it.
 * @throws {RangeError} naming the argument and its value.
 * @see NIST/SEMATECH e-Handbook 8.2.3.4 (Laplace test).
 */
export function laplaceTrend(times: readonly number[], end: number | null) {
  const window = windowOf(times, end);
  const n = window.inner.length;
  if (n === 0) throw new RangeError(`times must hold an event inside the window, got ${times.length}`);
  const mean = window.inner.reduce((sum, time) => sum + time, 0) / n;
  const u = (mean - window.end / 2) / (window.end * Math.sqrt(1 / (12 * n)));
  return { u, p: 2 * normalCdf(-Math.abs(u), 0, 1) };
}

/**
 * The trend test that belongs to the power law: like `laplaceTrend`, but sharpest where the rate follows a power of time.
 *
 * statistic = 2 * sum of ln(T / t_i), chi-square with 2n degrees without a trend; large improves, small worsens.
 * p counts both ends. Ended by the last failure: that failure is left out.
 *
 * @param times Cumulative event times, > 0, not falling; at least one inside the window.
 * @param end End of observation, or null when the last failure ended it.
 * @throws {RangeError} naming the argument and its value.
 * @see NIST/SEMATECH e-Handbook 8.2.3.4 (Military Handbook test).
 */
export function powerLawTrend(times: readonly number[], end: number | null) {
  const window = windowOf(times, end);
  if (window.inner.length === 0)
    throw new RangeError(`times must hold an event inside the window, got ${times.length}`);
  const statistic = 2 * window.inner.reduce((sum, time) => sum + Math.log(window.end / time), 0);
  const degrees = 2 * window.inner.length;
  // A chi-square of 2n degrees stays within x as often as a Poisson count of mean x / 2 reaches n.
  const above = statistic === 0 ? 1 : poissonSum(statistic / 2, window.inner.length - 1);
  return { statistic, degrees, p: 2 * Math.min(above, 1 - above) };
}

/**
 * Fits the power-law process N(t) = lambda * t^beta (Crow/AMSAA) by maximum likelihood.
 *
 * beta = n / sum ln(T / t_i); lambda = n / T^beta; intensity at T = lambda * beta * T^(beta - 1).
 *
 * @param times Cumulative event times, > 0, not falling; at least one before the end.
 * @param end End of observation, or null when the last failure ended it.
 * @returns beta < 1 improves, > 1 worsens; intensity in events per time unit.
 * @throws {RangeError} naming the argument and its value.
 * @see MIL-HDBK-189 (1981), appendix C (from memory).
 */
export function powerLaw(times: readonly number[], end: number | null) {
  const window = windowOf(times, end);
  const n = times.length;
  const logs = window.inner.reduce((sum, time) => sum + Math.log(window.end / time), 0);
  if (!(logs > 0)) throw new RangeError(`times must hold an event before the end, got ${times.length}`);
  const beta = n / logs;
  const lambda = n / window.end ** beta;
  return { beta, lambda, intensity: lambda * beta * window.end ** (beta - 1) };
}

/** Events counted from the end of the interval before (0 for the first) up to `end`. */
export interface CountedInterval {
  readonly end: number;
  readonly events: number;
}

interface Piece {
  readonly events: number;
  /** ln of the interval's end as a share of the whole time, and how far that lies beyond its start. */
  readonly log: number;
  readonly step: number;
}

function piecesOf(intervals: readonly CountedInterval[], total: number): Piece[] {
  let start = 0;
  return intervals.map(({ end, events }) => {
    requireNumber(end, "end", { least: start, open: true });
    const piece = {
      events: requireCount(events, "events"),
      log: Math.log(end / total),
      step: Math.log(end / start),
    };
    start = end;
    return piece;
  });
}

/** Slope of the log likelihood; falls as beta grows. */
function slopeAt(beta: number, pieces: readonly Piece[]): number {
  return pieces.reduce((sum, { events, log, step }) => {
    // The first interval starts at zero: its step is infinite and its second term nothing.
    const inner = Number.isFinite(step) ? step / Math.expm1(beta * step) : 0;
    return sum + events * (log + inner);
  }, 0);
}

/**
 * Fits the power-law process N(t) = lambda * t^beta to counts by interval, e.g. removals a year, by maximum likelihood.
 *
 * beta solves sum of n_i * [ln u_i + d_i / (exp(beta d_i) - 1)] = 0 with u_i = t_i / T, d_i = ln(t_i / t_(i-1));
 * lambda = n / T^beta; intensity at T = lambda * beta * T^(beta - 1).
 *
 * @param intervals In order of time from 0, end > the end before.
 * @returns beta < 1 improves, > 1 worsens; intensity in events per time unit.
 * @throws {RangeError} naming the argument and its value; also when all events lie in the first or all in the last
 * interval: no finite beta above 0 fits them.
 * @see MIL-HDBK-189, grouped data (from memory; figures in the tests from a public copy).
 */
export function powerLawOfCounts(intervals: readonly CountedInterval[]) {
  const total = intervals.at(-1)?.end ?? 0;
  const pieces = piecesOf(intervals, total);
  const events = pieces.reduce((sum, piece) => sum + piece.events, 0);
  if (events === 0 || pieces[0]?.events === events || pieces.at(-1)?.events === events)
    throw new RangeError(`events must lie in more than the first or the last interval, got ${events}`);
  let low = Math.log(1e-6);
  let high = Math.log(1e6);
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2;
    if (slopeAt(Math.exp(middle), pieces) > 0) low = middle;
    else high = middle;
  }
  const beta = Math.exp((low + high) / 2);
  const lambda = events / total ** beta;
  return { beta, lambda, intensity: lambda * beta * total ** (beta - 1) };
}
