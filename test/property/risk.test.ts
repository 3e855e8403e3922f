import { array, assert, constantFrom, double, property, record } from "fast-check";
import { describe, test } from "vitest";
import { SUPPLY_STAGES } from "@/lib/lifecycle/supplyStage";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, LineResult, PoolInput } from "@/lib/risk/evaluation";
import { lineScore, STAGE_PART } from "@/lib/risk/score";
import { anyGroup as group, SITES } from "../support/anyGroup";

const between = (min: number, max: number) => double({ min, max, noNaN: true });
const EPS = 1e-9;
const weights = { stage: 0.3, spares: 0.4, repair: 0.3, tolerableHours: 10, horizonYears: 1 };
const scored = record({
  id: constantFrom("a", "b", "c"),
  failureRate: between(0, 5),
  stage: constantFrom(...SUPPLY_STAGES),
  noSpare: between(0, 1),
  hoursDown: between(0, 500),
});

describe("score of a line", () => {
  const pools = array(scored, { maxLength: 8 });
  test("is in [0, 100], and the shares sum to one", () => {
    assert(
      property(pools, (list) => {
        const { score, shares } = lineScore(list, weights);
        const sum = shares.reduce((total, { share }) => total + share, 0);
        return score >= 0 && score <= 100 && (score === 0 || Math.abs(sum - 1) < EPS);
      }),
    );
  });
  test("one more pool never lowers it", () => {
    assert(
      property(
        pools,
        scored,
        (list, more) => lineScore([...list, more], weights).score >= lineScore(list, weights).score - EPS,
      ),
    );
  });
  test("more spares, shorter restoration and an easier stage never raise it", () => {
    assert(
      property(pools, scored, scored, (list, worse, other) => {
        const easier = STAGE_PART[other.stage] <= STAGE_PART[worse.stage] ? other.stage : worse.stage;
        const better = {
          ...worse,
          stage: easier,
          noSpare: Math.min(worse.noSpare, other.noSpare),
          hoursDown: Math.min(worse.hoursDown, other.hoursDown),
        };
        return (
          lineScore([...list, better], weights).score <= lineScore([...list, worse], weights).score + EPS
        );
      }),
    );
  });
});

const run = (input: GroupInput) => evaluate(input, likelyAssumptions);
const mapFirst = (input: GroupInput, change: (pool: PoolInput) => PoolInput): GroupInput => ({
  ...input,
  pools: input.pools.map((entry, i) => (i === 0 ? change(entry) : entry)),
});
const noWorse = (better: readonly LineResult[], worse: readonly LineResult[]) =>
  better.every(({ score, stopLoss }, i) => {
    const other = worse[i];
    if (!other) return false;
    const loss = (other.stopLoss?.mean ?? 0) * (1 + EPS) + EPS;
    return score <= other.score + 1e-7 && (stopLoss?.mean ?? 0) <= loss;
  });
const runs = { numRuns: 60 };

describe("evaluation of a group", () => {
  test("gives chances in [0, 1], losses not below zero within their span, and exact sums", () => {
    assert(
      property(group, (input) => {
        const result = run(input);
        const inUnit = (x: number) => x >= 0 && x <= 1;
        const pools = result.pools.every(
          ({ noSpare, usable }) => inUnit(noSpare.mean) && inUnit(noSpare.high) && usable >= 0,
        );
        const lines = result.lines.every(({ stopLoss, score }) => {
          const { low, mean, high } = stopLoss ?? { low: 0, mean: 0, high: 0 };
          return low >= 0 && low <= mean && mean <= high && score >= 0 && score <= 100;
        });
        const total = result.lines.reduce((sum, { stopLoss }) => sum + (stopLoss?.mean ?? 0), 0);
        return pools && lines && total === result.stopLoss.mean;
      }),
      runs,
    );
  });
  test("one more usable spare, wherever it lies, never raises loss or score", () => {
    assert(
      property(group, constantFrom(...SITES), (input, siteId) => {
        const spare = { siteId, state: "usable" as const, quantity: 1, lastPoweredOn: "2026-09-01" };
        const more = mapFirst(input, (entry) => ({ ...entry, stock: [...entry.stock, spare] }));
        return noWorse(run(more).lines, run(input).lines);
      }),
      runs,
    );
  });
  test("one more removal and failure on record never lowers loss or score", () => {
    assert(
      property(group, (input) => {
        const experience = input.experience.map((seen) => ({
          ...seen,
          removals: seen.removals + 1,
          failures: seen.failures + 1,
        }));
        return noWorse(run(input).lines, run({ ...input, experience }).lines);
      }),
      runs,
    );
  });
  test("a dearer hour never lowers the loss, a longer buffer never raises it", () => {
    assert(
      property(group, between(0, 1000), between(0, 5), (input, dearer, longer) => {
        const loss = (cost: number, bufferHours: number) =>
          run({ ...input, lines: input.lines.map((l) => ({ ...l, costPerHour: cost, bufferHours })) })
            .stopLoss.mean;
        const plain = loss(500, 1);
        return loss(500 + dearer, 1) >= plain * (1 - EPS) && loss(500, 1 + longer) <= plain * (1 + EPS);
      }),
      runs,
    );
  });
  test("not knowing when a spare was last powered is never better than the best that could be known", () => {
    assert(
      property(group, (input) => {
        const at = (day: string | null) =>
          run(
            mapFirst(input, (entry) => ({
              ...entry,
              stock: entry.stock.map((lot) => ({ ...lot, lastPoweredOn: day })),
            })),
          );
        return noWorse(at("2026-11-01").lines, at(null).lines);
      }),
      runs,
    );
  });
  test("no events leave the rate between zero and what was believed", () => {
    assert(
      property(group, (input) => {
        const quiet = input.experience.map((seen) => ({ ...seen, removals: 0, failures: 0 }));
        return run({ ...input, experience: quiet }).pools.every(
          ({ removal }) => removal.mean > 0 && removal.mean <= removal.priorMean * (1 + EPS),
        );
      }),
      runs,
    );
  });
  test("the same input gives the same bytes", () => {
    assert(
      property(group, (input) => JSON.stringify(run(input)) === JSON.stringify(run(structuredClone(input)))),
      runs,
    );
  });
});
