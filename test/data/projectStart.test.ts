import { afterAll, beforeAll, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readProject } from "@/lib/data/project";
import { startProject } from "@/lib/data/projectStart";
import { sumAmounts } from "@/lib/kernel/money";
import { load } from "@/seed/load";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { makeActor } from "../support/actors";
import { type FreshDatabase, freshDatabase } from "../support/database";

let made: FreshDatabase;

beforeAll(async () => {
  made = await freshDatabase("project_start");
  await load(made.url, "showcase", showcase());
});

afterAll(() => made.close());

/** A funded plan with one line, placed in the first shutdown of its site. */
async function fundedLine(code: string, cost: string) {
  const line = await database().line.findUniqueOrThrow({ where: { code } });
  const window = await database().shutdownWindow.findFirstOrThrow({
    where: { siteId: line.siteId },
    orderBy: { startsOn: "asc" },
  });
  const admin = await makeActor("admin");
  const plan = await database().plan.create({
    data: {
      ...{ name: "Plan", year: 2027, budget: 1_000_000, status: "funded", asOf: new Date("2026-11-30") },
      ...{ rankedBy: "loss", dataVersion: 1, engine: "test", createdBy: admin.userId },
      lines: {
        create: {
          ...{ lineId: line.id, rank: 1, cost, stopLoss: 1, score: 1, funded: true },
          slots: { create: { option: `${code}:full`, slot: window.id } },
        },
      },
    },
    include: { lines: true },
  });
  return { admin, planLineId: plan.lines[0]?.id ?? "", window };
}

it("takes its budget by class from the scope's costs, at the dated budget rate, and its days from the plan's slot", async () => {
  const { admin, planLineId, window } = await fundedLine("OST-03", "234567.89");
  const started = await startProject(admin, { planLineId });
  const project = await readProject(admin, started.ok ? started.value.code : "");
  // 234,567.89 euros at 4.30 złoty.
  expect(project).toMatchObject({ budget: "1008641.93", budgetRate: { perEuro: "4.3", on: "2026-01-01" } });
  const items = project?.items ?? [];
  expect(sumAmounts(items.map(({ amount }) => amount))).toBe("1008641.93");
  expect(items.map(({ costClass }) => costClass).sort()).toEqual([
    ...["contingency", "controllers", "drives", "engineering", "installation"],
  ]);
  expect(project?.endsOn).toBe(window.endsOn.toISOString().slice(0, 10));
  expect(project?.startsOn && project.startsOn < window.startsOn.toISOString().slice(0, 10)).toBe(true);
});
