import { requireCount, requireNumber, requireOpenShare, requireShare } from "@/lib/kernel/requireNumber";
import { gammaPoint } from "@/lib/reliability/gammaPoint";

/** A rate per unit-year known as a gamma distribution: shape `a` (events), rate `b` (unit-years); mean a / b. */
export interface GammaRate {
  readonly a: number;
  readonly b: number;
}

function requireGamma({ a, b }: GammaRate): void {
  requireNumber(a, "a", { least: 0, open: true });
  requireNumber(b, "b", { least: 0, open: true });
}

/**
 * Adds counted experience to what was believed before.
 *
 * Gamma(a, b) and a Poisson count give Gamma(a + events, b + unitYears).
 *
 * @param prior Shape and rate (unit-years), both > 0.
 * @param seen Events, whole and >= 0; unit-years >= 0.
 * @throws {RangeError} naming the argument and its value.
 * @see NIST/SEMATECH e-Handbook 8.4.6.
 */
export function posterior(
  prior: GammaRate,
  seen: { readonly events: number; readonly unitYears: number },
): GammaRate {
  requireGamma(prior);
  requireCount(seen.events, "events");
  requireNumber(seen.unitYears, "unitYears", { least: 0 });
  return { a: prior.a + seen.events, b: prior.b + seen.unitYears };
}

/**
 * Mean of the rate and the range it lies in with the given chance, the rest split evenly over both ends.
 *
 * @param level In (0, 1), e.g. 0.9 for the 5 % and 95 % points.
 * @returns Events per unit-year.
 * @throws {RangeError} naming the argument and its value.
 */
export function rateInterval(rate: GammaRate, level: number) {
  requireGamma(rate);
  requireOpenShare(level, "level");
  const { a, b } = rate;
  return {
    mean: a / b,
    low: gammaPoint((1 - level) / 2, a) / b,
    high: gammaPoint((1 + level) / 2, a) / b,
  };
}

/**
 * Turns two statements about the mean time between failures into a gamma prior for the rate.
 *
 * Finds a with Q(0.95; a) / Q(0.5; a) = median / low5 (Q the gamma quantile at rate 1), then b = median * Q(0.5; a).
 *
 * @param stated `median`: as likely above as below; `low5`: 95 % sure to be exceeded. Same time unit, 0 < low5 < median.
 * @returns Shape and rate, the rate in the time unit given.
 * @throws {RangeError} naming the argument and its value; also when the two lie so near that a exceeds 10 000.
 * @see NIST/SEMATECH e-Handbook 8.2.5 (50/95 method).
 */
export function gammaPriorFromMtbf(stated: { readonly median: number; readonly low5: number }): GammaRate {
  const { median, low5 } = stated;
  requireNumber(low5, "low5", { least: 0, open: true });
  requireNumber(median, "median", { least: low5, open: true });
  const excess = (a: number) => gammaPoint(0.95, a) / gammaPoint(0.5, a) - median / low5;
  let low = Math.log(0.02);
  let high = Math.log(10_000);
  if (excess(Math.exp(high)) > 0 || excess(Math.exp(low)) < 0)
    throw new RangeError(`low5 must give a shape between 0.02 and 10000, got ${low5} beside ${median}`);
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2;
    // The ratio falls as the shape grows: the surer the belief, the nearer its points.
    if (excess(Math.exp(middle)) > 0) low = middle;
    else high = middle;
  }
  const a = Math.exp((low + high) / 2);
  return { a, b: median * gammaPoint(0.5, a) };
}

/**
 * Rate at which units are used up: what is removed and does not come back usable.
 *
 * consumption = removals * (1 - returned). It erodes the shelf once a part cannot be bought; removals alone would buy
 * too much, failures alone would forget units that are lost without a fault.
 *
 * @param removal Removals per unit-year; @param returned Share of removed units that come back usable, in [0, 1].
 * @returns Units per unit-year: mean and the 5 % and 95 % points, all 0 when everything comes back.
 * @throws {RangeError} naming the argument and its value.
 */
export function consumptionRate(removal: GammaRate, returned: number) {
  const lost = 1 - requireShare(returned, "returned");
  const { mean, low, high } = rateInterval(removal, 0.9);
  return { mean: mean * lost, low: low * lost, high: high * lost };
}
