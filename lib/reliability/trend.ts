import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { requireNumber } from "@/lib/kernel/requireNumber";

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
