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

/** Observed times summed in logarithms. */
export interface LogSums {
  readonly stops: number;
  readonly sumLog: number;
  readonly sumLogSquared: number;
}

/**
 * Pulls the estimate from observed times towards the belief, the less the more was observed.
 *
 * With weight k and n stops of log mean m and log sum of squares about it S:
 * mu = (k mu0 + n m) / (k + n); sigma^2 = (k sigma0^2 + S + k n / (k + n) * (m - mu0)^2) / (k + n).
 *
 * @throws {RangeError} naming the argument and its value.
 * @see Normal-inverse-chi-square conjugate updating (textbook formula, from memory).
 */
export function shrinkLognormal(prior: LognormalPrior, seen: LogSums): Lognormal {
  requireNumber(prior.weight, "weight", { least: 0, open: true });
  const n = requireCount(seen.stops, "stops");
  if (n === 0) return { mu: prior.mu, sigma: prior.sigma };
  const k = prior.weight;
  const mean = seen.sumLog / n;
  const squares = Math.max(0, seen.sumLogSquared - n * mean * mean);
  const apart = ((k * n) / (k + n)) * (mean - prior.mu) ** 2;
  return {
    mu: (k * prior.mu + n * mean) / (k + n),
    sigma: Math.sqrt((k * prior.sigma ** 2 + squares + apart) / (k + n)),
  };
}
