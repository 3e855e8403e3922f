import gammaCdf from "@stdlib/stats-base-dists-gamma-cdf";
import gammaQuantile from "@stdlib/stats-base-dists-gamma-quantile";
import { describe, expect, test } from "vitest";
import { mtbfBounds } from "@/lib/reliability/mtbf";
import { gammaPriorFromMtbf, posterior, rateInterval } from "@/lib/reliability/rate";
import { laplaceTrend, powerLaw } from "@/lib/reliability/trend";

/** Half a unit in the last printed digit, or the wider tolerance given. */
const near = (value: number | null | undefined, printed: number, tolerance: number) =>
  expect(Math.abs((value ?? Number.NaN) - printed)).toBeLessThanOrEqual(tolerance);

describe("confidence factors of the MTBF (NIST/SEMATECH e-Handbook 8.4.5.1; cells from memory, recomputed)", () => {
  const levels = [0.6, 0.8, 0.9, 0.95];
  const rows: readonly (readonly (number | null)[])[] = [
    [0, 0.6213, null, 4343e-4, null, 0.3338, null, 0.2711, null],
    [1, 0.334, 4.4814, 0.2571, 9.4912, 0.2108, 19.4957, 0.1795, 39.4979],
    [2, 0.4674, 2.426, 0.3758, 3.7607, 0.3177, 5.6281, 0.2768, 8.2573],
    [3, 0.544, 1.9543, 0.449, 2.7222, 0.3869, 3.6689, 0.3422, 4.8491],
    [4, 0.5952, 1.7416, 0.5004, 2.2926, 0.437, 2.9276, 0.3906, 3.6702],
    [5, 0.6324, 1.6184, 0.5391, 2.0554, 0.4756, 2.5379, 0.4285, 3.0798],
    [6, 0.6611, 1.537, 0.5697, 1.9036, 0.5067, 2.2962, 0.4594, 2.7249],
    [7, 0.6841, 1.4788, 0.5947, 1.7973, 0.5324, 2.1307, 0.4853, 2.4872],
    [8, 0.703, 1.4347, 0.6156, 1.7182, 0.5542, 2.0096, 0.5075, 2.3163],
    [9, 0.7189, 1.4, 0.6335, 1.6567, 0.5731, 1.9168, 0.5268, 2.1869],
    [10, 0.7326, 1.3719, 0.6491, 1.6074, 0.5895, 1.8432, 0.5438, 2.0853],
  ];
  test.each(rows.map((row) => [row[0] as number, row] as const))("%d failures", (failures, row) => {
    for (const [i, confidence] of levels.entries()) {
      const { lower, upper } = mtbfBounds({ time: Math.max(1, failures), failures, confidence, sides: 2 });
      near(lower, row[1 + 2 * i] as number, 0.00015);
      const printed = row[2 + 2 * i] as number | null;
      if (printed === null) expect(upper).toBeNull();
      else near(upper, printed, 0.00015);
    }
  });
});

test("800 hours with 2 failures: 400, 90 % interval 127 to 2251 (NIST 8.4.5.1 example, from memory)", () => {
  const { estimate, lower, upper } = mtbfBounds({ time: 800, failures: 2, confidence: 0.9, sides: 2 });
  expect(estimate).toBe(400);
  near(lower, 127.069, 0.0005);
  near(upper, 2251.229, 0.0005);
});
test("no failure has a lower bound only: T / -ln(risk) (NIST 8.4.5.1 formula)", () => {
  const bounds = (confidence: number) => mtbfBounds({ time: 1000, failures: 0, confidence, sides: 1 });
  near(bounds(0.95).lower, 333.8, 0.05);
  near(bounds(0.8).lower, 621.3, 0.05);
  expect(bounds(0.8)).toMatchObject({ estimate: null, upper: null });
});
test("7 failures in 19 520, 80 % two-sided (documentation of the Python package reliability)", () => {
  near(mtbfBounds({ time: 19_520, failures: 7, confidence: 0.8, sides: 2 }).lower, 1658.3248534993454, 1e-6);
});
test("6 failures in 10 000, 80 % one-sided, not the two-sided 949.48 (same documentation)", () => {
  const test6 = { time: 10_000, failures: 6, confidence: 0.8 };
  near(mtbfBounds({ ...test6, sides: 1 }).lower, 1101.8815940201118, 1e-6);
  near(mtbfBounds({ ...test6, sides: 2 }).lower, 949.480776, 1e-5);
});

describe("gamma prior from two MTBF statements (NIST 8.2.5)", () => {
  const { a, b } = gammaPriorFromMtbf({ median: 600, low5: 250 });
  test("a = 2.863055, b = 1522.506", () => {
    near(a, 2.863055, 5e-7);
    near(b, 1522.506, 5e-4);
  });
  test("puts half and 95 % where they were stated; printed check values of the rounded prior", () => {
    expect(gammaCdf(1 / 600, a, b)).toBeCloseTo(0.5, 9);
    expect(gammaCdf(1 / 250, a, b)).toBeCloseTo(0.95, 9);
    near(gammaCdf(0.001667, 2.863, 1522.46), 0.5001232, 5e-8);
    near(gammaCdf(0.004, 2.863, 1522.46), 0.9499963, 5e-8);
  });
  test("test time to show 500 h at 80 % with 2 failures: 1756 h, classical 2140 h (NIST 8.3.1.5, from memory)", () => {
    near(500 * gammaQuantile(0.8, a + 2, 1) - b, 1756, 0.5);
    near(500 * gammaQuantile(0.8, 3, 1), 2139.5, 0.05);
  });
});

describe("posterior of Gamma(2, 1400) after 2 failures in 1909 h (NIST 8.4.6)", () => {
  const rate = posterior({ a: 2, b: 1400 }, { events: 2, unitYears: 1909 });
  test("is Gamma(4, 3309), below its mean with chance 0.5665", () => {
    expect(rate).toEqual({ a: 4, b: 3309 });
    near(gammaCdf(rate.a / rate.b, rate.a, rate.b), 0.5665299, 5e-8);
  });
  test.each([
    [0.9, 495.3012, 5e-5],
    [0.8, 599.995, 5e-4],
    [0.5, 901.1289, 5e-5],
    [0.1, 1896.526, 5e-4],
  ])("MTBF exceeded with chance %d", (chance, printed, tolerance) => {
    near(1 / gammaQuantile(chance, rate.a, rate.b), printed, tolerance);
  });
  test("90 % interval of the MTBF 426.77 to 2421.84 (derived)", () => {
    const { low, high } = rateInterval(rate, 0.9);
    near(1 / high, 426.77, 0.005);
    near(1 / low, 2421.84, 0.005);
  });
});

test("power law of 27 events to 300 (MIL-HDBK-189, appendix C, as quoted by a public copy)", () => {
  const times = [
    2.6, 16.5, 16.5, 17.0, 21.4, 29.1, 33.3, 56.5, 63.1, 70.6, 73.0, 77.7, 93.9, 95.5, 98.1, 101.1, 132.0,
    142.2, 147.7, 149.0, 167.2, 190.7, 193.0, 198.7, 251.9, 282.5, 286.1,
  ];
  const { beta, lambda, intensity } = powerLaw(times, 300);
  near(beta, 0.7163392624, 5e-11);
  near(lambda, 0.4538418614, 5e-11);
  near(intensity, 0.0644705336, 5e-11);
  near(1 / intensity, 15.510962, 5e-7);
});

test("Laplace trend of ten repairs to 1500 (data of NIST 8.2.3.4, from memory; statistic derived)", () => {
  const times = [5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478];
  near(laplaceTrend(times, 1500).u, -1.32695, 5e-6);
  near(2 * times.reduce((sum, time) => sum + Math.log(1500 / time), 0), 37.22808, 5e-6);
  near((2 * times.length) / powerLaw(times, 1500).beta, 37.22808, 5e-6);
});
