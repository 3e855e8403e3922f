import { requireNumber } from "@/lib/kernel/requireNumber";

function requireFlows(flows: readonly number[]): void {
  for (const flow of flows) requireNumber(flow, "flows", { least: Number.NEGATIVE_INFINITY });
}

/** Value of a polynomial, coefficients from the constant up. */
function valueAt(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, c) => sum * x + c, 0);
}

/** Halves a span at whose ends a polynomial has different signs until no number lies between. */
function bisect(coefficients: readonly number[], from: number, to: number): number {
  const rises = valueAt(coefficients, to) > 0;
  let low = from;
  let high = to;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (valueAt(coefficients, middle) > 0 === rises) high = middle;
    else low = middle;
  }
}

/** A turning point counts as a root when the value there is lost in the rounding of its terms. */
function touches(coefficients: readonly number[], x: number): boolean {
  const size = coefficients.reduceRight((sum, c) => sum * Math.abs(x) + Math.abs(c), 0);
  return Math.abs(valueAt(coefficients, x)) <= 1e-12 * size;
}

/** Real roots of a polynomial within a span, ascending: between two turning points there is one or none. */
function rootsWithin(coefficients: readonly number[], from: number, to: number): number[] {
  if (coefficients.length < 2) return [];
  const slope = coefficients.slice(1).map((c, i) => c * (i + 1));
  const turns = rootsWithin(slope, from, to);
  const stops = [from, ...turns, to];
  const crossings = stops.slice(1).flatMap((stop, i) => {
    const start = stops[i] as number;
    const [a, b] = [valueAt(coefficients, start), valueAt(coefficients, stop)];
    return (a < 0 && b > 0) || (a > 0 && b < 0) ? [bisect(coefficients, start, stop)] : [];
  });
  const touched = turns.filter((turn) => touches(coefficients, turn));
  const near = (root: number) => touched.some((turn) => Math.abs(root - turn) <= 1e-5 * Math.max(1, turn));
  return [...crossings.filter((root) => !near(root)), ...touched].sort((a, b) => a - b);
}

/**
 * Present worth of yearly flows: sum of flow_t / (1 + rate)^t, t = 0 the first.
 *
 * @param rate Discount rate a year, > -1.
 * @throws {RangeError} naming the argument and its value.
 */
export function presentWorth(rate: number, flows: readonly number[]): number {
  requireNumber(rate, "rate", { least: -1, open: true });
  requireFlows(flows);
  return valueAt(flows, 1 / (1 + rate));
}

/**
 * Every real rate of return above -1: rates at which the present worth is nothing, ascending.
 *
 * Flows that change sign more than once may have several rates, and then none of them tells whether to invest: say so,
 * and use the present worth. Empty when there is none.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function ratesOfReturn(flows: readonly number[]): readonly number[] {
  requireFlows(flows);
  const first = flows.findIndex((flow) => flow !== 0);
  const last = flows.findLastIndex((flow) => flow !== 0);
  if (first === last) return [];
  const kept = flows.slice(first, last + 1);
  // Cauchy's bound holds all roots x = 1 / (1 + r).
  const lead = Math.abs(kept.at(-1) as number);
  const most = 1 + Math.max(...kept.slice(0, -1).map(Math.abs)) / lead;
  return rootsWithin(kept, 0, most)
    .filter((x) => x > 0)
    .map((x) => 1 / x - 1)
    .sort((a, b) => a - b);
}
