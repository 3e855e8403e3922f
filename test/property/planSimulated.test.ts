import { expect, test } from "vitest";
import { limitRows } from "@/lib/portfolio/planLimits";
import { chosenOf } from "@/lib/portfolio/planSlots";
import { planEvaluator } from "@/lib/portfolio/planWorth";
import { rankAndCut } from "@/lib/portfolio/rankAndCut";
import { solvePlan } from "@/lib/portfolio/solvePlan";
import { evaluateStaged } from "@/lib/risk/evaluate";
import type { GroupInput, LineInput, PoolResult } from "@/lib/risk/evaluation";
import { horizonLoss } from "@/lib/risk/horizonLoss";
import { lineStops } from "@/lib/risk/lineStops";
import { simulatePool } from "@/lib/risk/simulatePool";
import { noClock, planGroup, planOf, smallPlan } from "@/test/support/smallPlan";

const SEED = 427_001;
const RUNS = 8_000;
const budgets = smallPlan.budgets.map((one) => ({ ...one, amount: 110_000 }));
const group = planOf({
  budgets,
  // What is put in is not part of this: the shelves are.
  lines: smallPlan.lines.map((line) => ({
    ...line,
    options: line.options
      .filter(({ kind }) => kind === "full")
      .map((one) => ({ ...one, residualShare: 0, cost: { low: 1, typical: 100_000, high: 2 } })),
  })),
});
const evaluator = planEvaluator(group);
const { assumptions } = evaluator.staged.ground;

/** The group with the leaves of a plan written into it, as projects would. */
function written(chosen: readonly number[]): GroupInput {
  const placed = chosen.flatMap((index) =>
    (evaluator.effects[index] ?? []).flatMap(({ poolId, leaves }) =>
      leaves.map((leave) => ({ lineId: evaluator.candidates[index]?.line.lineId, poolId, leave })),
    ),
  );
  return {
    ...planGroup,
    installed: planGroup.installed.map((row) => ({
      ...row,
      leaves: placed
        .filter((one) => one.lineId === row.lineId && one.poolId === row.poolId)
        .map(({ leave }) => leave),
    })),
  };
}

/** Horizon loss with the chance of an empty shelf played event by event, fresh numbers for each plan. */
function playedLoss(chosen: readonly number[], seed: number): number {
  const staged = evaluateStaged(written(chosen), assumptions);
  const { ground } = staged;
  const months = Array.from({ length: assumptions.months }, (_, m) => m + 1);
  const played = new Map(
    [...staged.pools].map(([id, { pool, result }]): [string, PoolResult] => {
      const leaving = ground.leaving.get(id) ?? [];
      const seen = { pool, asOf: planGroup.asOf, units: result.installed, leaving, removal: result.removal };
      const shares = simulatePool({ ...seen, assumptions }, { months, runs: RUNS, seed });
      const first = result.noSpareByMonth[0]?.mean ?? 0;
      return [
        id,
        { ...result, noSpareByMonth: [first, ...shares].map((mean) => ({ mean, low: mean, high: mean })) },
      ];
    }),
  );
  const lossOf = (line: LineInput) => {
    const pools = [...(ground.installed.get(line.id) ?? [])].map(([poolId, here]) => {
      const result = played.get(poolId) as PoolResult;
      const { pool } = staged.pools.get(poolId) ?? {};
      if (!pool) throw new Error(`no pool ${poolId}`);
      return {
        ...here,
        result,
        atSite: ground.rates.seenAt(pool, line.siteId),
        failure: ground.rates.failureAt(pool, line.siteId),
        times: ground.timesOf(pool, result),
      };
    });
    return horizonLoss(pools, lineStops(line, pools, assumptions.transferHours).stops, assumptions).loss;
  };
  return planGroup.lines.reduce((sum, line) => sum + lossOf(line), 0);
}

test("the plan's worth, and its lead over the ranking cut at the same money, hold when each shelf is played event by event", async () => {
  const found = await solvePlan(group, { timeLimitSeconds: 60, companions: false, gap: 0 }, noClock);
  if (found.kind !== "plan") throw new Error("a plan exists");
  const chosen = chosenOf(evaluator.candidates, found.plan.choices);
  const cut = rankAndCut(evaluator, limitRows(group.problem, evaluator.candidates));
  const [plan, baseline] = [evaluator.worth(chosen).worth, evaluator.worth(cut).worth];
  const [without, withPlan, withCut] = [[], chosen, cut].map((one, i) => playedLoss(one, SEED + i)) as [
    number,
    number,
    number,
  ];
  const [played, playedCut] = [without - withPlan, without - withCut];
  process.stdout.write(
    `plan ${Math.round(plan)} computed, ${Math.round(played)} played; ` +
      `ranking cut ${Math.round(baseline)} computed, ${Math.round(playedCut)} played\n`,
  );
  expect(Math.abs(played / plan - 1)).toBeLessThan(0.03);
  expect(plan).toBeGreaterThanOrEqual(baseline);
  expect(played - playedCut).toBeGreaterThan(0.8 * (plan - baseline) - 0.02 * plan);
}, 120_000);
