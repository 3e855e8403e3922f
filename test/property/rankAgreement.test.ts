import fc from "fast-check";
import { expect, test } from "vitest";
import { kendallTauB } from "@/lib/risk/rankAgreement";

/** The same pair by pair, as the definition says it. */
function byPairs(x: readonly number[], y: readonly number[]): number {
  let balance = 0;
  let untiedX = 0;
  let untiedY = 0;
  for (let i = 1; i < x.length; i += 1)
    for (let j = 0; j < i; j += 1) {
      const dx = Math.sign((x[i] ?? 0) - (x[j] ?? 0));
      const dy = Math.sign((y[i] ?? 0) - (y[j] ?? 0));
      balance += dx * dy;
      untiedX += Math.abs(dx);
      untiedY += Math.abs(dy);
    }
  return balance / Math.sqrt(untiedX * untiedY);
}

const few = fc.integer({ min: -3, max: 3 });
const any = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 });
const rows = fc.array(fc.record({ x: fc.oneof(few, any), y: fc.oneof(few, any) }), {
  minLength: 2,
  maxLength: 40,
});

test("counted by sorting, to the last bit what counting pair by pair gives, with ties many or none", () => {
  let compared = 0;
  fc.assert(
    fc.property(rows, (list) => {
      const x = list.map((row) => row.x);
      const y = list.map((row) => row.y);
      if (new Set(x).size < 2 || new Set(y).size < 2) return;
      expect(kendallTauB(x, y)).toBe(byPairs(x, y));
      compared += 1;
    }),
    { numRuns: 1000, seed: 20261125 },
  );
  expect(compared).toBeGreaterThan(800);
});
