import { describe, expect, test } from "vitest";
import { mtbfBounds } from "@/lib/reliability/mtbf";
import { poissonAtMost } from "@/lib/spares/demand";

describe("test length for a stated MTBF (NIST 8.3.1.2, from memory): the one-sided bound turned round", () => {
  const levels = [0.5, 0.6, 0.75, 0.8, 0.9, 0.95];
  test.each([
    [0, [693e-3, 0.916, 1.39, 1.61, 2.3, 3.0]],
    [1, [1.68, 2.02, 2.69, 2.99, 3.89, 4.74]],
    [2, [2.67, 3.11, 3.92, 4.28, 5.32, 6.3]],
    [3, [3.67, 4.18, 5.11, 5.52, 6.68, 7.75]],
    [4, [4.67, 5.24, 6.27, 6.72, 7.99, 9.15]],
  ])("%d failures", (failures, factors) => {
    for (const [i, factor] of factors.entries()) {
      const { lower } = mtbfBounds({ time: 1, failures, confidence: levels[i] ?? Number.NaN, sides: 1 });
      expect(Math.abs(1 / lower - factor)).toBeLessThanOrEqual(failures === 0 && factor < 1 ? 5e-4 : 5.01e-3);
    }
  });
});

test.each([
  ["IX-D", 12.0, 9.9, 1.5, 45.0, 37],
  ["X-D", 10.9, 21.4, 1.5, 29.9, 26],
  ["XI-D", 19.7, 19.6, 1.5, 21.5, 18],
  ["XII-D", 9.6, 10.6, 2.0, 18.8, 14],
  ["XIII-D", 9.8, 20.9, 2.0, 12.4, 10],
  ["XIV-D", 19.9, 21.0, 2.0, 7.8, 6],
  ["XV-D", 9.4, 9.9, 3.0, 9.3, 6],
  ["XVI-D", 10.9, 21.3, 3.0, 5.4, 4],
  ["XVII-D", 17.5, 19.7, 3.0, 4.3, 3],
  ["XIX-D", 29.8, 30.1, 1.5, 8.1, 7],
  ["XX-D", 28.3, 28.5, 2.0, 3.7, 3],
  ["XXI-D", 30.7, 33.3, 3.0, 1.1, 1],
] as const)(
  "risks of test plan %s as cumulative Poisson (MIL-HDBK-781, from memory; 0.15 points)",
  (...plan) => {
    const [, alpha, beta, ratio, length, reject] = plan;
    expect(Math.abs(100 * (1 - poissonAtMost(length / ratio, reject - 1)) - alpha)).toBeLessThanOrEqual(0.15);
    expect(Math.abs(100 * poissonAtMost(length, reject - 1) - beta)).toBeLessThanOrEqual(0.15);
  },
);
