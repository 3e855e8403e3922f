import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { keptGround } from "@/lib/data/planning/keptGround";
import { limitRows } from "@/lib/portfolio/planLimits";
import type { PlanProblem } from "@/lib/portfolio/planProblem";
import { chosenOf } from "@/lib/portfolio/planSlots";
import { type PlanEvaluator, type PlanGroup, planEvaluator } from "@/lib/portfolio/planWorth";
import { rankAndCut, withinMoney } from "@/lib/portfolio/rankAndCut";
import { solvePlan } from "@/lib/portfolio/solvePlan";
import { load } from "@/seed/load";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { playable, playedLoss } from "@/test/support/playedWorth";
import { noClock } from "@/test/support/smallPlan";

vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

/** The demonstration: 40 lines over three years of quarters, with the ways its scopes and shutdowns allow. */
let fresh: FreshDatabase;
let group: PlanGroup;
let evaluator: PlanEvaluator;
let plan: readonly number[];

const RUNS = 4_000;
const thousands = (euros: number) => `${Math.round(euros / 1000)} k€`;

async function planOf(asked: PlanGroup) {
  const found = await solvePlan(asked, { timeLimitSeconds: 120, companions: false }, noClock);
  if (found.kind !== "plan") throw new Error(`a plan exists, got ${found.kind}`);
  return found.plan;
}

/** The same ways with every part that is taken out thrown away. */
const scrapping = (problem: PlanProblem): PlanProblem => ({
  ...problem,
  lines: problem.lines.map((line) => ({
    ...line,
    options: line.options.map((option) => ({
      ...option,
      removes: option.removes.map((units) => ({ ...units, fate: "scrapped" as const })),
    })),
  })),
});

beforeAll(async () => {
  fresh = await freshDatabase("plan demo");
  await load(fresh.url, "showcase", showcase());
  const ready = await keptGround(await makeActor("admin"), {
    ...{ asOf: "2026-11-30", deed: "plan:write", lineIds: null },
  });
  evaluator = ready.evaluator;
  const { input, evaluation } = ready.ground;
  group = { problem: evaluator.problem, input, assumptions: evaluation.assumptions };
  const found = await planOf(group);
  expect(found).toMatchObject({ ended: "settled" });
  expect(found.model.gap).toBeLessThanOrEqual(0.005);
  plan = chosenOf(evaluator.candidates, found.choices);
});

afterAll(() => fresh.close());

test("the plan beats the ranking cut at the same money, and by as much when each shelf is played with fresh numbers", () => {
  const limits = limitRows(evaluator.problem, evaluator.candidates);
  const { worth, spent } = evaluator.worth(plan);
  const all = rankAndCut(evaluator, limits);
  const cut = rankAndCut(evaluator, withinMoney(evaluator, limits, spent));
  const pools = playable(evaluator, [plan, all, cut]);
  const played = [[], plan, cut, all].map((chosen, i) =>
    playedLoss(evaluator, chosen, { pools, runs: RUNS, seed: 90_117 + i }),
  );
  const [without = 0] = played;
  const told = [plan, cut, all].map((chosen, i) => {
    const computed = evaluator.worth(chosen);
    return { worth: computed.worth, spent: computed.spent, played: without - (played[i + 1] ?? 0) };
  });
  for (const [i, name] of ["plan", "ranking, same money", "ranking, same limits"].entries()) {
    const one = told[i] as (typeof told)[number];
    process.stdout.write(
      `${name}: ${thousands(one.worth)} for ${thousands(one.spent)}, ${thousands(one.played)} played\n`,
    );
  }
  const [own, same, whole] = told as [(typeof told)[0], (typeof told)[0], (typeof told)[0]];
  expect(pools.length).toBeGreaterThan(2);
  expect(Math.abs(own.played / own.worth - 1)).toBeLessThan(0.05);
  expect(same.spent).toBeLessThanOrEqual(own.spent);
  expect(worth - same.worth).toBeGreaterThan(1_000_000);
  expect(own.played - same.played).toBeGreaterThan(1_000_000);
  expect(own.played - whole.played).toBeGreaterThan(1_000_000);
});

test("with the parts taken out thrown away another plan is the best, and less is gained", async () => {
  const without = { ...group, problem: scrapping(group.problem) };
  const other = planEvaluator(without);
  const found = await planOf(without);
  const chosen = chosenOf(other.candidates, found.choices);
  const kept = evaluator.worth(plan);
  process.stdout.write(
    `parts kept: ${thousands(kept.worth)} for ${thousands(kept.spent)}; thrown away: ` +
      `${thousands(found.worth.worth)} for ${thousands(found.worth.spent)}, ` +
      `the plan of kept parts then ${thousands(other.worth(plan).worth)}\n`,
  );
  expect(chosen).not.toEqual(plan);
  expect(other.objective(chosen)).toBeGreaterThanOrEqual(other.objective(plan));
  expect(found.worth.worth - found.worth.spentDiscounted).toBeLessThan(kept.worth - kept.spentDiscounted);
  expect(other.worth(plan).worth).toBeLessThan(0.9 * kept.worth);
});
