import poissonCdf from "@stdlib/stats-base-dists-poisson-cdf";

/** The library's incomplete gamma function is wrong by up to 0.035 once its argument passes 1000. */
const MOST_MEAN = 900;

/** ln P(N = k), ln k! by Stirling's series; k >= 500. */
function logChance(mean: number, k: number): number {
  const series = 1 / (12 * k) - 1 / (360 * k ** 3);
  return k * Math.log(mean / k) + (k - mean) - Math.log(2 * Math.PI * k) / 2 - series;
}

/** Adds up the chances from k on, away from the mean, until they add nothing. */
function tail(mean: number, k: number, step: 1 | -1): number {
  let term = Math.exp(logChance(mean, k));
  let sum = 0;
  for (let i = k; term > sum * 1e-17 && i >= 0; i += step) {
    sum += term;
    term *= step === 1 ? mean / (i + 1) : i / mean;
  }
  return sum;
}

/**
 * P(N <= k) of a Poisson count, also for means at which the library fails.
 *
 * @param mean > 0; @param k Whole, >= 0.
 */
export function poissonSum(mean: number, k: number): number {
  if (mean <= MOST_MEAN) return poissonCdf(k, mean);
  // So far below the mean the chance is under 1e-100.
  if (k < mean / 2) return 0;
  return k < mean ? tail(mean, k, -1) : 1 - tail(mean, k + 1, 1);
}
