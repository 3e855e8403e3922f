import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { requireCount, requireNumber } from "@/lib/kernel/requireNumber";

/** A time whose logarithm is normal: `mu` is ln of the median, `sigma` the spread of the logarithm. */
export interface Lognormal {
  readonly mu: number;
  readonly sigma: number;
}

/** Mean exp(mu + sigma^2 / 2), in the unit of the times. */
export function lognormalMean({ mu, sigma }: Lognormal): number {
  return Math.exp(mu + (sigma * sigma) / 2);
}

/** The lognormal with a given mean and spread; mean > 0. */
export function lognormalWithMean(mean: number, sigma: number): Lognormal {
  requireNumber(mean, "mean", { least: 0, open: true });
  return { mu: Math.log(mean) - (sigma * sigma) / 2, sigma };
}

/** Chance that the time exceeds `limit` (same unit); 1 at or below zero. */
export function lognormalExceeds({ mu, sigma }: Lognormal, limit: number): number {
  return limit <= 0 ? 1 : normalCdf((mu - Math.log(limit)) / sigma, 0, 1);
}

/**
 * Mean time beyond a buffer, E[max(0, D - buffer)].
 *
 * = mean * Phi((mu + sigma^2 - ln buffer) / sigma) - buffer * Phi((mu - ln buffer) / sigma); mean - buffer when buffer <= 0.
 *
 * @param time sigma > 0.
 * @param buffer Same unit as the time; negative adds to it (a delay before the time starts).
 * @throws {RangeError} naming the argument and its value.
 */
export function meanBeyond(time: Lognormal, buffer: number): number {
  requireNumber(time.sigma, "sigma", { least: 0, open: true });
  const mean = lognormalMean(time);
  if (buffer <= 0) return mean - buffer;
  const distance = (time.mu - Math.log(buffer)) / time.sigma;
  const beyond = mean * normalCdf(distance + time.sigma, 0, 1) - buffer * normalCdf(distance, 0, 1);
  return Math.max(0, beyond);
}

/** A belief about a lognormal, worth as much as that many observed stops. */
export interface LognormalPrior extends Lognormal {
  readonly weight: number;
}

/** Observed times, summed. */
export interface SeenTimes {
  readonly stops: number;
  /** Sum of ln(time), and of its square. */
  readonly sumLog: number;
  readonly sumLogSquared: number;
  /** Sum of the times; without it their mean is taken as that of a lognormal with the sums above. */
  readonly sumHours?: number | undefined;
}

function sumOf({ stops, sumLog, sumLogSquared, sumHours }: SeenTimes): number {
  if (sumHours !== undefined) return requireNumber(sumHours, "sumHours", { least: 0 });
  const mu = sumLog / stops;
  const variance = Math.max(0, sumLogSquared / stops - mu * mu);
  return stops * lognormalMean({ mu, sigma: Math.sqrt(variance) });
}

/**
 * Pulls the mean from what is believed towards the observed times, the more the more were observed.
 *
 * With weight k, n stops and T the sum of their times: mean = (k * mean0 + T) / (k + n). The spread stays the believed
 * one: taken from the records, one very short stop would widen it and so raise the mean. No mean made from sums of
 * logarithms can both learn the spread and never rise with a shorter stop; the plain mean does not need the spread.
 *
 * @throws {RangeError} naming the argument and its value.
 * @see Credibility mean with n / (n + k) on the records (Buhlmann, from memory).
 */
export function shrinkLognormal(prior: LognormalPrior, seen: SeenTimes): Lognormal {
  const k = requireNumber(prior.weight, "weight", { least: 0, open: true });
  const n = requireCount(seen.stops, "stops");
  if (n === 0) return { mu: prior.mu, sigma: prior.sigma };
  return lognormalWithMean((k * lognormalMean(prior) + sumOf(seen)) / (k + n), prior.sigma);
}
