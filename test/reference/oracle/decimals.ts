import { Decimal } from "decimal.js";

/** Fifty digits, and none of the library the core computes with: sums and series written out from the definitions. */
const Fifty = Decimal.clone({ precision: 50 });
const ONE = new Fifty(1);

/** Bernoulli numbers B2, B4 … B20 as numerator and denominator. */
const BERNOULLI = [
  [1, 6],
  [-1, 30],
  [1, 42],
  [-1, 30],
  [5, 66],
  [-691, 2730],
  [7, 6],
  [-3617, 510],
  [43_867, 798],
  [-174_611, 330],
] as const;

/** First terms p_0 … p_k of a distribution from the first and the ratio of neighbours. */
function terms(first: Decimal, ratio: (k: number) => Decimal, k: number): Decimal[] {
  const out: Decimal[] = [];
  let term = first;
  for (let i = 0; i <= k; i += 1) {
    out.push(term);
    term = term.times(ratio(i));
  }
  return out;
}

const sum = (list: readonly Decimal[]) => list.reduce((total, x) => total.plus(x), new Fifty(0));

/** P(N = 0 … k), N Poisson. */
export function poissonTerms(mean: number, k: number): Decimal[] {
  const m = new Fifty(mean);
  return terms(m.neg().exp(), (i) => m.div(i + 1), k);
}

/** P(D = 0 … k), D the demand of a Gamma(a, b) rate over an exposure. */
export function demandTerms(demand: { a: number; b: number; exposure: number }, k: number): Decimal[] {
  const [a, b, x] = [new Fifty(demand.a), new Fifty(demand.b), new Fifty(demand.exposure)];
  const whole = b.plus(x);
  const first = b.div(whole).pow(a);
  return terms(
    first,
    (i) =>
      x
        .div(whole)
        .times(a.plus(i))
        .div(i + 1),
    k,
  );
}

/** P(at most k) from the terms up to k. */
export const atMost = (list: readonly Decimal[]): number => sum(list).toNumber();

/** P(at least k) from the terms up to k - 1, rounded only once. */
export const atLeast = (list: readonly Decimal[]): number => ONE.minus(sum(list)).toNumber();

/** E[(D - s)+] = mean - s + sum of (s - k) p_k over k < s, from the terms up to s. */
export function shortOf(mean: Decimal | number, list: readonly Decimal[]): number {
  const spares = list.length - 1;
  const left = sum(list.map((p, k) => p.times(spares - k)));
  return new Fifty(mean).minus(spares).plus(left).toNumber();
}

/** Mean demand a * exposure / b in fifty digits. */
export const demandMean = ({ a, b, exposure }: { a: number; b: number; exposure: number }): Decimal =>
  new Fifty(a).times(exposure).div(b);

/** ln Gamma(z) by Stirling's series, z first lifted above 60. */
export function lnGamma(z: Decimal): Decimal {
  let lifted = z;
  let product = ONE;
  while (lifted.lt(60)) {
    product = product.times(lifted);
    lifted = lifted.plus(1);
  }
  const halfLog = new Fifty(2).times(Fifty.acos(-1)).ln().div(2);
  let value = lifted.minus(0.5).times(lifted.ln()).minus(lifted).plus(halfLog);
  for (const [i, [top, bottom]] of BERNOULLI.entries()) {
    const n = 2 * (i + 1);
    value = value.plus(
      new Fifty(top)
        .div(bottom)
        .div(n * (n - 1))
        .div(lifted.pow(n - 1)),
    );
  }
  return value.minus(product.ln());
}

/** P(X <= x) of a gamma with shape a and rate 1, by the series of the incomplete gamma function. */
export function gammaAtMost(a: number, x: number): number {
  if (x === 0) return 0;
  const shape = new Fifty(a);
  const at = new Fifty(x);
  let term = ONE;
  let total = ONE;
  for (let n = 1; n < 60_000 && term.gt(total.times("1e-45")); n += 1) {
    term = term.times(at).div(shape.plus(n));
    total = total.plus(term);
  }
  const log = shape
    .times(at.ln())
    .minus(at)
    .minus(lnGamma(shape.plus(1)));
  return log.exp().times(total).toNumber();
}

/** P(Z > z) of a standard normal, by the series of odd factorials. */
export function normalAbove(z: Decimal): number {
  const size = z.abs();
  let term = size;
  let total = size;
  for (let n = 1; n < 3000 && term.gt("1e-60"); n += 1) {
    term = term
      .times(size)
      .times(size)
      .div(2 * n + 1);
    total = total.plus(term);
  }
  const density = size
    .times(size)
    .div(-2)
    .exp()
    .div(new Fifty(2).times(Fifty.acos(-1)).sqrt());
  const below = density.times(total);
  return (z.gt(0) ? new Fifty(0.5).minus(below) : new Fifty(0.5).plus(below)).toNumber();
}

/** P(time > limit) of a lognormal. */
export function lognormalAbove({ mu, sigma }: { mu: number; sigma: number }, limit: number): number {
  return normalAbove(new Fifty(limit).ln().minus(mu).div(sigma));
}

/** E[max(0, D - buffer)] of a lognormal by Simpson's rule over the normal density, buffer > 0. */
export function beyondBySimpson({ mu, sigma }: { mu: number; sigma: number }, buffer: number): number {
  const from = Math.max((Math.log(buffer) - mu) / sigma, -14);
  const to = Math.max(from, sigma) + 14;
  const steps = 20_000;
  const width = (to - from) / steps;
  let total = 0;
  for (let i = 0; i <= steps; i += 1) {
    const z = from + i * width;
    const weight = i === 0 || i === steps ? 1 : 2 + 2 * (i % 2);
    total += weight * (Math.exp(mu + sigma * z - (z * z) / 2) - buffer * Math.exp((-z * z) / 2));
  }
  return (total * width) / (3 * Math.sqrt(2 * Math.PI));
}
