import { assert, property, tuple } from "fast-check";
import { describe, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { type DrawOptions, drawGroup, type GroupDraws, redrawGroup } from "@/lib/risk/draws/drawRanks";
import { evaluateStaged, reevaluate, type StagedEvaluation } from "@/lib/risk/evaluate";
import type { GroupInput, PoolInput } from "@/lib/risk/evaluation";
import { anyGroup, SITES } from "../support/anyGroup";
import { line, pool } from "../support/smallGroup";

const runs = { numRuns: 60 };

/** More lines, each on a pool or two, so that most changes leave some lines alone; one with machines that stand in. */
const wideGroup = anyGroup.map((input): GroupInput => {
  const pools = [...input.pools, pool("unidentified:motor", { itemClass: "motor" })];
  const more = Array.from({ length: 6 }, (_, i) =>
    line(`more ${i}`, SITES[i % 2] ?? "N", { costPerHour: 300 * (i + 1), costEvidence: "assumed" }),
  );
  const standby = (machineId: string) => ({ machineId, group: "cells", needed: 1 });
  return {
    ...input,
    pools,
    lines: [...input.lines, ...more],
    installed: [
      ...input.installed,
      ...more.map(({ id }, i) => ({ lineId: id, poolId: pools[i % pools.length]?.id ?? "", units: 3 + i })),
      { lineId: "more 0", poolId: "p0", units: 2, standby: standby("A") },
      { lineId: "more 0", poolId: "p0", units: 2, standby: standby("B") },
    ],
  };
});

/** A group and some of its pools with another stock. */
const changedGroup = tuple(wideGroup, anyGroup).map(([input, other]) => ({
  input,
  changed: input.pools.flatMap((one, i): PoolInput[] => {
    const stock = other.pools[i]?.stock;
    return stock && i % 2 === 0 ? [{ ...one, stock }] : [];
  }),
}));

function afterwards({ pools, ...input }: GroupInput, changed: readonly PoolInput[]): GroupInput {
  const now = new Map(changed.map((one) => [one.id, one]));
  return { ...input, pools: pools.map((one) => now.get(one.id) ?? one) };
}

const optionsOf = ({ result }: StagedEvaluation): DrawOptions => ({
  ...{ draws: 40, seed: 11, lines: result.lines },
  order: [...result.lines]
    .sort((a, b) => (b.stopLoss?.mean ?? 0) - (a.stopLoss?.mean ?? 0))
    .map(({ lineId }) => lineId),
});

const draw = (staged: StagedEvaluation): GroupDraws =>
  drawGroup(staged.input, likelyAssumptions, optionsOf(staged));

const told = ({ places, totals }: GroupDraws) => JSON.stringify({ places, totals });

describe("after a change of the stock of some pools", () => {
  test("the evaluation is to the last bit that of the changed group", () => {
    assert(
      property(changedGroup, ({ input, changed }) => {
        const whole = evaluateStaged(afterwards(input, changed), likelyAssumptions);
        const step = reevaluate(evaluateStaged(input, likelyAssumptions), changed);
        return (
          JSON.stringify([step.result, step.input.pools]) ===
          JSON.stringify([whole.result, whole.input.pools])
        );
      }),
      runs,
    );
  });

  test("so are the draws, also step after step", () => {
    assert(
      property(changedGroup, ({ input, changed }) => {
        let staged = evaluateStaged(input, likelyAssumptions);
        let drawn = draw(staged);
        for (const one of changed) {
          staged = reevaluate(staged, [one]);
          drawn = redrawGroup(drawn, { input: staged.input, changed: [one] }, optionsOf(staged));
        }
        return told(drawn) === told(draw(evaluateStaged(afterwards(input, changed), likelyAssumptions)));
      }),
      runs,
    );
  });

  test("lines that use none of them keep their result, and back again is as before", () => {
    assert(
      property(changedGroup, ({ input, changed }) => {
        const before = evaluateStaged(input, likelyAssumptions);
        const step = reevaluate(before, changed);
        const ids = new Set(changed.map(({ id }) => id));
        const kept = before.result.lines.every(
          (result, i) =>
            result.pools.some(({ poolId }) => ids.has(poolId)) || step.result.lines[i] === result,
        );
        const back = reevaluate(
          step,
          input.pools.filter(({ id }) => ids.has(id)),
        );
        return kept && JSON.stringify(back.result) === JSON.stringify(before.result);
      }),
      runs,
    );
  });
});
