import { gammaPoint } from "@/lib/reliability/gammaPoint";
import type { GammaRate } from "@/lib/reliability/rate";

/** A rate and the share of the belief it stands for. */
export interface RateNode {
  readonly rate: number;
  readonly weight: number;
}

const NODES = 48;

/** Value and slope of the Legendre polynomial of a degree at x, by its three-term recurrence. */
function legendre(degree: number, x: number): { readonly value: number; readonly slope: number } {
  let before = 1;
  let value = x;
  for (let k = 2; k <= degree; k += 1)
    [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  return { value, slope: (degree * (x * value - before)) / (x * x - 1) };
}

/** Gauss-Legendre points on [0, 1]: roots by Newton's method from their asymptotic places. */
const points = Array.from({ length: NODES }, (_, i) => {
  let x = Math.cos((Math.PI * (i + 0.75)) / (NODES + 0.5));
  for (let step = 0; step < 8; step += 1) {
    const { value, slope } = legendre(NODES, x);
    x -= value / slope;
  }
  const { slope } = legendre(NODES, x);
  return { at: (1 - x) / 2, weight: 1 / ((1 - x * x) * slope * slope) };
});

/**
 * 48 rates that stand for an uncertain one: the mean of f(rate) is the sum of weight * f(rate).
 *
 * E f = integral of f(Q(u)) du over [0, 1], Q the gamma quantile; u = v^2 (3 - 2v) draws the points towards the ends,
 * where Q is steep, and Gauss-Legendre points are taken for v. For chances of reaching 0 to 60 units, shapes from 0.3
 * to 600 and mean demands up to 20 the error is below 1e-6 against the negative binomial sum (tested).
 *
 * @returns Ascending rates, events per unit-year; weights sum to 1.
 * @see Gauss-Legendre quadrature, textbook result.
 */
export function rateNodes({ a, b }: GammaRate): readonly RateNode[] {
  return points.map(({ at: v, weight }) => ({
    rate: gammaPoint(v * v * (3 - 2 * v), a) / b,
    weight: weight * 6 * v * (1 - v),
  }));
}
