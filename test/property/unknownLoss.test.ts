import { assert, property } from "fast-check";
import { describe, expect, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { bestKnown } from "@/lib/risk/bestKnown";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, LinePoolResult } from "@/lib/risk/evaluation";
import { anyAhead } from "../support/anyAhead";

const runs = { numRuns: 100 };
const EPS = 1e-9;
const run = (input: GroupInput) => evaluate(input, likelyAssumptions);
const lossOf = ({ baseLoss, shortageLoss }: LinePoolResult) => (baseLoss ?? 0) + (shortageLoss ?? 0);

/** The whole group with every unknown of its parts at its best. */
const atBest = (input: GroupInput): GroupInput => ({
  ...input,
  pools: input.pools.map((pool) => bestKnown(pool, input, likelyAssumptions)?.pool ?? pool),
});

describe("loss that comes from not knowing", () => {
  test("is, part by part, what a second evaluation at the best state would take off, and never below zero", () => {
    let some = 0;
    assert(
      property(anyAhead, (input) => {
        const best = run(atBest(input)).lines;
        return run(input).lines.every(({ stopLoss, unknownLoss, pools }, i) => {
          if (stopLoss === null || unknownLoss === null) return stopLoss === null && unknownLoss === null;
          if (unknownLoss > 0) some += 1;
          const off = pools.map((pool, p) => {
            const known = best[i]?.pools[p];
            return known ? Math.max(0, lossOf(pool) - lossOf(known)) : Number.NaN;
          });
          return pools.every((pool, p) => {
            const apart = Math.abs((pool.unknownLoss ?? Number.NaN) - (off[p] ?? Number.NaN));
            return apart <= EPS * (1 + stopLoss.mean) && (pool.unknownLoss ?? -1) >= 0;
          });
        });
      }),
      runs,
    );
    expect(some).toBeGreaterThan(20);
  });
  // A part that can be ordered is ordered, however quick its repair: with one, not knowing may come out better. So it may
  // with pieces to come, which lie at no place: spares found at another site must travel, where before none had to.
  test("the best state never loses more, where nothing is repaired and nothing to come", () => {
    assert(
      property(anyAhead, (group) => {
        const input = {
          ...group,
          pools: group.pools.map((pool) => ({ ...pool, repair: null, arrivals: [] })),
          installed: group.installed.map((row) => ({
            ...row,
            leaves: (row.leaves ?? []).map((leave) => ({ ...leave, kept: false })),
          })),
        };
        const best = run(atBest(input)).lines;
        return run(input).lines.every(
          ({ stopLoss }, i) => (best[i]?.stopLoss?.mean ?? 0) <= (stopLoss?.mean ?? 0) * (1 + EPS) + EPS,
        );
      }),
      runs,
    );
  });
  test("is nothing when nothing is unknown, and finding the best leaves nothing unknown", () => {
    assert(
      property(anyAhead, (input) => {
        const known = run(atBest(input));
        return known.unknownLoss === 0 && known.lines.every(({ unknownLoss }) => (unknownLoss ?? 0) === 0);
      }),
      runs,
    );
  });
  test("sums over the parts to the line's and over the lines to the group's", () => {
    assert(
      property(anyAhead, (input) => {
        const { lines, unknownLoss } = run(input);
        const sums = lines.every(
          (line) =>
            line.unknownLoss === null ||
            line.pools.reduce((sum, pool) => sum + (pool.unknownLoss ?? Number.NaN), 0) === line.unknownLoss,
        );
        return sums && lines.reduce((sum, line) => sum + (line.unknownLoss ?? 0), 0) === unknownLoss;
      }),
      runs,
    );
  });
});
