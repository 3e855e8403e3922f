import fc from "fast-check";
import { expect, test } from "vitest";
import { presentWorth, ratesOfReturn } from "@/lib/portfolio/cashFlow";
import { relaxSelection, type Selection, solveSelection } from "@/lib/portfolio/solve";

const PLACES = 8;
const items = fc.array(fc.integer({ min: -5, max: 40 }), { minLength: 1, maxLength: 9 });

const selections: fc.Arbitrary<Selection> = items.chain((values) => {
  const row = fc.array(fc.integer({ min: 0, max: 30 }), {
    minLength: values.length,
    maxLength: values.length,
  });
  const group = fc.uniqueArray(fc.integer({ min: 0, max: values.length - 1 }), { maxLength: 4 });
  return fc.record({
    values: fc.constant(values),
    costs: fc.tuple(row, row),
    limits: fc.tuple(fc.integer({ min: -2, max: 90 }), fc.integer({ min: 0, max: 90 })),
    groups: fc.array(group, { maxLength: 2 }),
  });
});

const keepsWithin = ({ costs, limits, groups = [] }: Selection, chosen: readonly number[]) =>
  costs.every((row, i) => chosen.reduce((sum, item) => sum + (row[item] ?? 0), 0) <= (limits[i] ?? 0)) &&
  groups.every((group) => group.filter((item) => chosen.includes(item)).length <= 1);

/** Worth of the best of all subsets, looked at one by one; null when none is allowed. */
function bestOfAll(selection: Selection): number | null {
  let best: number | null = null;
  for (let mask = 0; mask < 2 ** selection.values.length; mask += 1) {
    const chosen = selection.values.flatMap((_, item) =>
      Math.floor(mask / 2 ** item) % 2 === 1 ? [item] : [],
    );
    if (!keepsWithin(selection, chosen)) continue;
    const worth = chosen.reduce((sum, item) => sum + (selection.values[item] ?? 0), 0);
    if (best === null || worth > best) best = worth;
  }
  return best;
}

test("the choice is as good as the best of all subsets, keeps within the limits and below the relaxed one", async () => {
  let refused = 0;
  let taken = 0;
  await fc.assert(
    fc.asyncProperty(selections, async (selection) => {
      const result = await solveSelection(selection);
      const best = bestOfAll(selection);
      expect(result.objective).toBe(best);
      expect(result.status).toBe(best === null ? "infeasible" : "optimal");
      const relaxed = await relaxSelection(selection);
      if (best === null) {
        refused += 1;
        return;
      }
      taken += result.chosen.length;
      expect(keepsWithin(selection, result.chosen)).toBe(true);
      expect(result.bound).toBeCloseTo(best, 6);
      expect(relaxed?.objective).toBeGreaterThanOrEqual(best - 1e-7);
    }),
    { numRuns: 150, seed: 20261125 },
  );
  expect(refused).toBeGreaterThan(0);
  expect(taken).toBeGreaterThan(100);
}, 60_000);

test("the same input gives the same choice", async () => {
  const values = Array.from({ length: 40 }, (_, i) => 10 + ((i * 7919) % 31));
  const costs = [values.map((value, i) => value + ((i * 104_729) % 11))];
  const once = await solveSelection({ values, costs, limits: [300], gap: 0.01 });
  expect(await solveSelection({ values, costs, limits: [300], gap: 0.01 })).toEqual(once);
});

test("each rate of return leaves no present worth, and the rates a flow was made of are all found", () => {
  const rate = fc.double({ min: -0.6, max: 1.5, noNaN: true });
  fc.assert(
    fc.property(
      fc.uniqueArray(rate, { minLength: 1, maxLength: 3, comparator: (a, b) => Math.abs(a - b) < 0.05 }),
      (rates) => {
        // The product of (x - 1/(1+r)) has exactly these roots.
        let flows = [1];
        for (const r of rates) flows = [0, ...flows].map((before, i) => before - (flows[i] ?? 0) / (1 + r));
        const found = ratesOfReturn(flows);
        expect(found).toHaveLength(rates.length);
        for (const [i, r] of [...rates].sort((a, b) => a - b).entries()) expect(found[i]).toBeCloseTo(r, 6);
        for (const r of found) expect(presentWorth(r, flows)).toBeCloseTo(0, PLACES);
      },
    ),
    { numRuns: 300, seed: 20261125 },
  );
});
