import { describe, expect, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { ENGINE, evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, PoolInput } from "@/lib/risk/evaluation";
import { line, lot, noDates, smallGroup } from "../../support/smallGroup";

const result = evaluate(smallGroup, likelyAssumptions);
const lineOf = (id: string, group = result) => {
  const found = group.lines.find(({ lineId }) => lineId === id);
  if (!found) throw new Error(`no line ${id}`);
  return found;
};
const poolOf = (id: string, group = result) => {
  const found = group.pools.find(({ poolId }) => poolId === id);
  if (!found) throw new Error(`no pool ${id}`);
  return found;
};
const withPool = (id: string, change: Partial<PoolInput>): GroupInput => ({
  ...smallGroup,
  pools: smallGroup.pools.map((pool) => (pool.id === id ? { ...pool, ...change } : pool)),
});
const sum = (values: readonly (number | null)[]) => values.reduce<number>((total, v) => total + (v ?? 0), 0);

test("names its engine and day, keeps the order of lines and pools", () => {
  expect(result.engine).toBe(ENGINE);
  expect(result.asOf).toBe("2026-11-30");
  expect(result.lines.map(({ lineId }) => lineId)).toEqual(["VEL-03", "TAD-01", "VEL-04"]);
  expect(result.pools.map(({ poolId }) => poolId)).toEqual(["oak", "heron", "unidentified:drive"]);
});

describe("sums are exact", () => {
  test("pools make the line, lines make the group, to the last bit", () => {
    for (const { pools, baseLoss, shortageLoss, stopLoss } of result.lines) {
      expect(sum(pools.map((p) => p.baseLoss))).toBe(baseLoss);
      expect(sum(pools.map((p) => p.shortageLoss))).toBe(shortageLoss);
      expect((baseLoss ?? 0) + (shortageLoss ?? 0)).toBe(stopLoss?.mean);
    }
    for (const end of ["mean", "low", "high"] as const)
      expect(sum(result.lines.map(({ stopLoss }) => stopLoss?.[end] ?? null))).toBe(result.stopLoss[end]);
  });
  test("the three parts make the score, the shares make one", () => {
    for (const { score, scoreParts, pools } of result.lines) {
      expect(scoreParts.stage + scoreParts.spares + scoreParts.repair).toBeCloseTo(score, 9);
      expect(sum(pools.map(({ share }) => share))).toBeCloseTo(1, 12);
    }
  });
  test("units of one pool named twice on a line are added", () => {
    const split = smallGroup.installed.flatMap((row) => [
      { ...row, units: row.units / 2 },
      { ...row, units: row.units / 2 },
    ]);
    expect(evaluate({ ...smallGroup, installed: split }, likelyAssumptions)).toEqual(result);
  });
});

test("a loss is failures times the two costs weighed by the no-spare chance", () => {
  const [oak] = lineOf("VEL-03").pools;
  const expected =
    (oak?.failuresPerYear ?? 0) *
    ((1 - (oak?.noSpare ?? 0)) * (oak?.costWithSpare ?? 0) +
      (oak?.noSpare ?? 0) * (oak?.costWithoutSpare ?? 0));
  expect((oak?.baseLoss ?? 0) + (oak?.shortageLoss ?? 0)).toBeCloseTo(expected, 6);
  expect(expected).toBeGreaterThan(10_000);
});

test("removals drive the shelf, failures the stops", () => {
  const more = (key: "removals" | "failures") =>
    evaluate(
      {
        ...smallGroup,
        experience: smallGroup.experience.map((seen) => ({ ...seen, [key]: seen[key] + 10 })),
      },
      likelyAssumptions,
    );
  const removals = more("removals");
  expect(poolOf("oak", removals).noSpare.mean).toBeGreaterThan(poolOf("oak").noSpare.mean);
  expect(lineOf("VEL-03", removals).stopsPerYear).toBe(lineOf("VEL-03").stopsPerYear);
  const failures = more("failures");
  expect(poolOf("oak", failures).noSpare).toEqual(poolOf("oak").noSpare);
  expect(lineOf("VEL-03", failures).stopsPerYear).toBeGreaterThan(lineOf("VEL-03").stopsPerYear);
});

test("each line's failures go by the experience of its own site", () => {
  const quiet = smallGroup.experience.map((seen) =>
    seen.siteId === "TAD" ? { ...seen, failures: 0, unitYears: 900 } : seen,
  );
  const group = evaluate({ ...smallGroup, experience: quiet }, likelyAssumptions);
  const perUnit = (id: string) =>
    (lineOf(id, group).pools[0]?.failuresPerYear ?? 0) / (lineOf(id, group).pools[0]?.units ?? 0);
  expect(perUnit("TAD-01")).toBeLessThan(perUnit("VEL-03") / 2);
});

describe("pools", () => {
  test("the shelf of a part past repair empties, a replenished one does not", () => {
    const oak = poolOf("oak");
    expect(oak.stage).toBe("own-stock");
    expect(oak.noSpareByMonth).toHaveLength(61);
    expect(oak.noSpareByMonth.at(-1)?.mean).toBeGreaterThan(0.99);
    expect(oak.depletionP50 && oak.depletionP80 && oak.depletionP50 < oak.depletionP80).toBe(true);
    expect(poolOf("heron").depletionP80).toBeNull();
  });
  test("spares are shared by all sites: the line without own ones is served, later", () => {
    const [here] = lineOf("VEL-03").pools;
    const [away] = lineOf("TAD-01").pools;
    expect(away?.noSpare).toBe(here?.noSpare);
    expect((away?.hoursWithSpare ?? 0) - (here?.hoursWithSpare ?? 0)).toBeCloseTo(
      likelyAssumptions.transferHours,
      9,
    );
  });
  test("a spare further off than the way round it is not waited for", () => {
    const far = evaluate(smallGroup, { ...likelyAssumptions, transferHours: 10_000 });
    const [away] = lineOf("TAD-01", far).pools;
    expect(away?.hoursWithSpare).toBe(away?.hoursWithoutSpare);
    expect(away?.costWithSpare).toBe(away?.costWithoutSpare);
    expect(away?.costWithoutSpare).toBe(lineOf("TAD-01").pools[0]?.costWithoutSpare);
  });
  test("with no spare anywhere there is nothing to transfer, and every failure finds the shelf empty", () => {
    const bare = evaluate(withPool("oak", { stock: [] }), likelyAssumptions);
    expect(lineOf("TAD-01", bare).pools[0]?.hoursWithSpare).toBe(lineOf("VEL-03").pools[0]?.hoursWithSpare);
    expect(poolOf("oak", bare).noSpare.mean).toBe(1);
    expect(lineOf("TAD-01", bare).pools[0]?.baseLoss).toBe(0);
  });
  test("a rate stands beside its events, its unit-years and what it borrowed", () => {
    const { removal, removalsPerYear, installed } = poolOf("oak");
    expect(removal).toMatchObject({ events: 25, unitYears: 450, priorUnitYears: 100 });
    expect(removal.mean).toBeCloseTo(removal.a / removal.b, 12);
    expect(removalsPerYear).toBe(installed * removal.mean);
    expect(poolOf("oak").failure.events).toBe(17);
  });
  test("one family lends its experience to a part that has none", () => {
    const newborn = {
      ...smallGroup,
      pools: [...smallGroup.pools, { ...(smallGroup.pools[0] as PoolInput), id: "oak-2", familyId: "oak" }],
    };
    expect(poolOf("oak-2", evaluate(newborn, likelyAssumptions)).removal.mean).toBeCloseTo(
      (2 + 25) / (50 + 450),
      12,
    );
  });
  test("an undated part lies between a sure order and none", () => {
    const undated = evaluate(withPool("oak", { dates: { ...noDates, checkedOn: null } }), likelyAssumptions);
    const open = evaluate(withPool("oak", { dates: noDates }), likelyAssumptions);
    const half = (poolOf("oak").noSpare.mean + poolOf("oak", open).noSpare.mean) / 2;
    expect(poolOf("oak", undated).stage).toBe("undated");
    expect(poolOf("oak", undated).noSpare.mean).toBeCloseTo(half, 9);
  });
  test("repair while it lasts keeps the shelf fuller", () => {
    const dates = {
      ...noDates,
      lastOrderOn: "2021-06-30",
      lastShipOn: "2022-06-30",
      repairUntilOn: "2030-12-31",
    };
    const repair = { turnaroundYears: 0.1, yield: 0.6 };
    const fed = evaluate(withPool("oak", { dates, repair }), likelyAssumptions);
    expect(poolOf("oak", fed).stage).toBe("repair-fed");
    expect(poolOf("oak", fed).noSpare.mean).toBeLessThan(poolOf("oak").noSpare.mean / 2);
  });
});

describe("unknown is not zero", () => {
  test("a part nobody has read has an assumed chance with a full span, and says so", () => {
    const unread = poolOf("unidentified:drive");
    expect(unread).toMatchObject({ stage: "undated", book: null, noSpare: { mean: 0.5, low: 0, high: 1 } });
    expect(unread.assumed.join()).toContain("not identified");
    expect(lineOf("TAD-01").assumed.join()).toContain("5 units not identified");
  });
  test("no cost per hour leaves the money unknown and the score as it is", () => {
    const lines = [
      line("VEL-03", "VEL", { costPerHour: null, bufferHours: 0.5 }),
      ...smallGroup.lines.slice(1),
    ];
    const group = evaluate({ ...smallGroup, lines }, likelyAssumptions);
    expect(lineOf("VEL-03", group)).toMatchObject({ stopLoss: null, baseLoss: null, shortageLoss: null });
    expect(lineOf("VEL-03", group).score).toBe(lineOf("VEL-03").score);
    expect(lineOf("VEL-03", group).assumed.join()).toContain("Cost per hour");
    expect(group.stopLoss.mean).toBe(sum(group.lines.slice(1).map(({ stopLoss }) => stopLoss?.mean ?? null)));
  });
  test("no buffer counts as none, and says so", () => {
    const at = (bufferHours: number | null) =>
      lineOf(
        "TAD-01",
        evaluate(
          { ...smallGroup, lines: smallGroup.lines.map((l) => ({ ...l, bufferHours })) },
          likelyAssumptions,
        ),
      );
    expect(at(null).stopLoss).toEqual(at(0).stopLoss);
    expect(at(null).assumed.join()).toContain("Buffer");
    expect(at(0).assumed.join()).not.toContain("Buffer");
  });
  test("a lead time, a count and a power-up not known are listed", () => {
    const stock = [lot("VEL", null), { ...lot("VEL", 2), lastPoweredOn: null }];
    const { assumed } = poolOf(
      "heron",
      evaluate(withPool("heron", { leadYears: null, stock }), likelyAssumptions),
    );
    expect(assumed.join(" ")).toMatch(/Lead time.*1 stock lots not counted.*2 pieces/);
    expect(poolOf("heron").assumed).toEqual([]);
  });
});

test("a line with nothing on it loses nothing and scores nothing", () => {
  const group = evaluate(
    { ...smallGroup, lines: [...smallGroup.lines, line("NEW", "VEL")] },
    likelyAssumptions,
  );
  expect(lineOf("NEW", group)).toMatchObject({ stopLoss: { mean: 0 }, stopsPerYear: 0, depletionP80: null });
  expect(lineOf("NEW", group).score).toBeCloseTo(0, 12);
});

test("the line's first empty shelf and worst stage are named", () => {
  expect(lineOf("VEL-03")).toMatchObject({
    depletionPoolId: "oak",
    depletionP80: poolOf("oak").depletionP80,
    worstStage: "own-stock",
  });
  expect(lineOf("VEL-04")).toMatchObject({ depletionPoolId: null, depletionP80: null, worstStage: "open" });
});

test("input that points nowhere is refused by name", () => {
  const installed = (row: object) => ({
    ...smallGroup,
    installed: [{ lineId: "VEL-03", poolId: "oak", units: 1, ...row }],
  });
  expect(() => evaluate(installed({ lineId: "X" }), likelyAssumptions)).toThrow("lineId");
  expect(() => evaluate(installed({ poolId: "X" }), likelyAssumptions)).toThrow("poolId");
  expect(() => evaluate(installed({ units: -1 }), likelyAssumptions)).toThrow("units");
  expect(() =>
    evaluate({ ...smallGroup, lines: [line("A", "V"), line("A", "V")] }, likelyAssumptions),
  ).toThrow("lines");
  expect(() => evaluate(smallGroup, { ...likelyAssumptions, horizonMonths: 61 })).toThrow("horizonMonths");
});
