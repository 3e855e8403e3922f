import { array, assert, constantFrom, integer, property, record } from "fast-check";
import { test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import { MOVED_STEPS, type SnapshotInput } from "@/lib/risk/moved/snapshotInput";
import { sumMoved, whatMoved } from "@/lib/risk/whatMoved";
import { line, lot, noDates, oldDates, pool } from "../support/smallGroup";

const LINES = ["L1", "L2", "L3"] as const;
const POOLS = ["oak", "heron", "birch"] as const;
const short = { ...likelyAssumptions, months: 12 };

const snapshot = record({
  asOf: constantFrom("2026-11-30", "2026-12-07", "2027-11-30"),
  lines: array(constantFrom(...LINES), { minLength: 1, maxLength: 3 }),
  costs: array(constantFrom(null, 0, 640, 2999.99), { minLength: 3, maxLength: 3 }),
  installed: array(
    record({
      line: constantFrom(...LINES),
      pool: constantFrom(...POOLS),
      units: integer({ min: 0, max: 40 }),
      leaves: array(
        record({
          on: constantFrom("2026-12-03", "2027-02-26", "2028-01-10"),
          units: integer({ min: 0, max: 30 }),
          kept: constantFrom(true, false),
        }),
        { maxLength: 2 },
      ),
    }),
    {
      maxLength: 6,
    },
  ),
  stock: array(constantFrom(null, 0, 1, 3, 8), { minLength: 3, maxLength: 3 }),
  arrivals: array(constantFrom(null, "2026-12-05", "2027-01-20"), { minLength: 3, maxLength: 3 }),
  dates: array(constantFrom(noDates, oldDates), { minLength: 3, maxLength: 3 }),
  removals: array(integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 3 }),
  transferHours: constantFrom(12, 36),
});

type Drawn = typeof snapshot extends { generate(...args: never[]): { readonly value: infer T } } ? T : never;

function made(drawn: Drawn): SnapshotInput {
  const ids = [...new Set(drawn.lines)];
  return {
    assumptions: { ...short, transferHours: drawn.transferHours },
    input: {
      asOf: drawn.asOf,
      lines: ids.map((id, i) => line(id, i === 0 ? "VEL" : "TAD", { costPerHour: drawn.costs[i] ?? null })),
      pools: POOLS.map((id, i) => {
        const on = drawn.arrivals[i] ?? null;
        const arrivals = on === null ? [] : [{ on, pieces: 2, works: 0.6 }];
        const stock = [lot("VEL", drawn.stock[i] ?? null)];
        return pool(id, { dates: drawn.dates[i] ?? noDates, stock, arrivals });
      }),
      installed: drawn.installed
        .filter((row) => ids.includes(row.line))
        .map((row) => ({ lineId: row.line, poolId: row.pool, units: row.units, leaves: row.leaves })),
      experience: POOLS.map((poolId, i) => {
        const removals = drawn.removals[i] ?? 0;
        return { poolId, siteId: "VEL", removals, failures: Math.floor(removals / 2), unitYears: 120 };
      }),
      restorations: [],
    },
  };
}

const whole = (at: SnapshotInput) =>
  evaluate(at.input, at.assumptions).lines.reduce(
    (sum, { stopLoss }) => sum + Math.round(stopLoss?.mean ?? 0),
    0,
  );

test("the steps sum to the total change exactly, whatever moved", () => {
  assert(
    property(snapshot, snapshot, (one, other) => {
      const [before, after] = [made(one), made(other)];
      const { lines, total } = whatMoved(before, after);
      const telescopes = [...lines, total].every(
        (moved) => MOVED_STEPS.reduce((sum, step) => sum + moved.steps[step], 0) === moved.change,
      );
      const grouped = MOVED_STEPS.every(
        (step) => lines.reduce((sum, moved) => sum + moved.steps[step], 0) === total.steps[step],
      );
      return telescopes && grouped && total.change === whole(after) - whole(before);
    }),
    { numRuns: 60 },
  );
});

test("the way back undoes the way there, and parts of the lines add up to all", () => {
  assert(
    property(snapshot, snapshot, (one, other) => {
      const [before, after] = [made(one), made(other)];
      const there = whatMoved(before, after);
      const back = whatMoved(after, before);
      const [first, ...rest] = there.lines;
      const parts = sumMoved(first ? [first] : []).change + sumMoved(rest).change;
      return there.total.change === -back.total.change && parts === there.total.change;
    }),
    { numRuns: 40 },
  );
});
