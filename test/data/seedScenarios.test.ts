import { expect, test, vi } from "vitest";
import { database } from "@/lib/data/client";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import { load } from "@/seed/load";
import { large } from "@/seed/scenarios/large/large";
import { apportion, apportionWithin } from "@/seed/scenarios/showcase/apportion";
import { small } from "@/seed/scenarios/small";
import { freshDatabase } from "@/test/support/database";

// Loading a database takes its time on a busy machine.
vi.setConfig({ testTimeout: 240_000 });

test("the small scenario has 2 sites and 4 lines, loads and is evaluated", async () => {
  const fresh = await freshDatabase("small scenario");
  try {
    await load(fresh.url, "small", small());
    const input = await database().$transaction((tx) => loadGroupInput(tx, "2026-11-30"));
    expect(new Set(input.lines.map(({ siteId }) => siteId)).size).toBe(2);
    const { lines } = evaluate(input, likelyAssumptions);
    expect(lines).toHaveLength(4);
    expect(lines.every(({ stopLoss }) => (stopLoss?.mean ?? 0) > 0)).toBe(true);
  } finally {
    await fresh.close();
  }
});

test("a load that fails keeps nothing, and the site of a demo account is left out where it is not", async () => {
  const fresh = await freshDatabase("broken scenario");
  try {
    const tables = small();
    const broken = { ...tables, Milestone: tables.Milestone.map((row) => ({ ...row, weight: -1 })) };
    await expect(load(fresh.url, "small", broken)).rejects.toThrow("Milestone_weight_positive");
    expect(await database().site.count()).toBe(0);
    expect(await database().user.count()).toBe(0);
    await load(fresh.url, "small", tables);
    expect(await database().grant.count()).toBe(6);
  } finally {
    await fresh.close();
  }
});

test("the large scenario is as large as told, and no id of a unit or an axis repeats", () => {
  const tables = large();
  const count = (rows: Iterable<unknown>) => {
    let n = 0;
    for (const _row of rows) n += 1;
    return n;
  };
  const ids = (rows: Iterable<{ readonly id: string }>) => {
    const seen = new Set<string>();
    for (const { id } of rows) seen.add(id);
    return seen.size;
  };
  expect([ids(tables.Unit), ids(tables.Axis)]).toEqual([300_000, 120_000]);
  expect([tables.Site, tables.Line, tables.Machine, tables.Part, tables.Event].map(count)).toEqual([
    60, 1_500, 12_000, 8_000, 1_000_000,
  ]);
});

test("largest remainder: 10 parted over weights 1, 1 and 1.5 gives 3, 3 and 4 (derived)", () => {
  expect(apportion(10, [1, 1, 1.5])).toEqual([3, 3, 4]);
});

test("limits hold, and what cannot be parted within them is refused", () => {
  expect(apportion(10, [100, 1, 1], { least: 2, most: 6 })).toEqual([6, 2, 2]);
  expect(() => apportionWithin(10, [{ weight: 1, least: 0, most: 4 }])).toThrow("total must fit");
});
