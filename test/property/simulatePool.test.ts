import { assert, property } from "fast-check";
import { expect, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput } from "@/lib/risk/evaluation";
import { leavingByPool } from "@/lib/risk/leavingByPool";
import { isUnidentified } from "@/lib/risk/poolOutlook";
import { simulatePool } from "@/lib/risk/simulatePool";
import { anyAhead } from "../support/anyAhead";

const MONTHS = [3, 12, 36];
const RUNS = 1500;

interface Pair {
  readonly model: number;
  readonly share: number;
}

/** Computed and simulated chances of every pool that is read. */
function pairs(input: GroupInput): Pair[] {
  const leaving = leavingByPool(input);
  const results = new Map(evaluate(input, likelyAssumptions).pools.map((result) => [result.poolId, result]));
  return input.pools
    .filter(({ id }) => !isUnidentified(id))
    .flatMap((pool) => {
      const result = results.get(pool.id);
      if (!result) return [];
      const { removal, installed: units, noSpareByMonth } = result;
      const seen = { pool, asOf: input.asOf, units, removal, assumptions: likelyAssumptions };
      const asked = { months: MONTHS, runs: RUNS, seed: 20261125 };
      const shares = simulatePool({ ...seen, leaving: leaving.get(pool.id) ?? [] }, asked);
      return MONTHS.map((month, i) => ({
        model: noSpareByMonth[month]?.mean ?? Number.NaN,
        share: shares[i] ?? Number.NaN,
      }));
    });
}

test("any pool simulated event by event agrees with its evaluation, within five standard errors", () => {
  const compared: Pair[] = [];
  assert(
    property(anyAhead, (input) => {
      for (const pair of pairs(input)) {
        const error = Math.sqrt((pair.model * (1 - pair.model)) / RUNS);
        expect(Math.abs(pair.share - pair.model)).toBeLessThan(5 * error + 3 / RUNS);
        compared.push(pair);
      }
    }),
    { numRuns: 60, seed: 20261125 },
  );
  expect(compared.length).toBeGreaterThan(200);
  // Chances of nearly 0 or 1 prove little: many must lie between.
  const between = compared.filter(({ model }) => model > 0.02 && model < 0.98);
  expect(between.length).toBeGreaterThan(compared.length / 5);
}, 60_000);
