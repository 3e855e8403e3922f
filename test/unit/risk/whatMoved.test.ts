import { describe, expect, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, PoolInput } from "@/lib/risk/evaluation";
import { canonicalJson } from "@/lib/risk/moved/canonicalJson";
import { changedInputs } from "@/lib/risk/moved/changedInputs";
import { changedLeaves } from "@/lib/risk/moved/changedLeaves";
import { OTHER_SITES, seenFrom } from "@/lib/risk/moved/seenFrom";
import { MOVED_STEPS, type MovedStep, type SnapshotInput } from "@/lib/risk/moved/snapshotInput";
import { stepwise } from "@/lib/risk/moved/stepwise";
import { whatMoved } from "@/lib/risk/whatMoved";
import { line, lot, pool, smallGroup } from "../../support/smallGroup";

const start: SnapshotInput = { input: smallGroup, assumptions: likelyAssumptions };
const later = (change: Partial<GroupInput>): SnapshotInput => ({
  ...start,
  input: { ...smallGroup, ...change },
});
const withPool = (id: string, change: Partial<PoolInput>) =>
  smallGroup.pools.map((one) => (one.id === id ? { ...one, ...change } : one));

/** One change of each group of inputs. */
const changes: Readonly<Record<MovedStep, SnapshotInput>> = {
  corrections: later({
    installed: smallGroup.installed.map((row) =>
      row.lineId === "TAD-01" ? { ...row, units: row.units + 3 } : row,
    ),
  }),
  events: later({
    experience: smallGroup.experience.map((seen) => ({ ...seen, failures: seen.failures + 4 })),
  }),
  stock: later({ pools: withPool("oak", { stock: [lot("VEL", 1)] }) }),
  dates: later({
    pools: withPool("heron", { dates: { ...pool("x", {}).dates, lastOrderOn: "2026-12-31" } }),
  }),
  assumptions: { ...start, assumptions: { ...likelyAssumptions, transferHours: 48 } },
  clock: later({ asOf: "2027-06-30" }),
};

describe("a change of one group is that step's alone", () => {
  test.each(MOVED_STEPS)("%s", (step) => {
    const { total } = whatMoved(start, changes[step]);
    expect(total.change).not.toBe(0);
    for (const other of MOVED_STEPS) expect(total.steps[other]).toBe(other === step ? total.change : 0);
  });
});

test("nothing changed moves nothing", () => {
  const { total, lines } = whatMoved(start, start);
  expect(total.change).toBe(0);
  expect(lines.every(({ change }) => change === 0)).toBe(true);
  expect(changedInputs(start, start)).toEqual([]);
});

test("all at once: steps make the change and lines the group, to the last euro", () => {
  const after: SnapshotInput = {
    assumptions: changes.assumptions.assumptions,
    input: {
      ...changes.corrections.input,
      asOf: "2027-06-30",
      experience: changes.events.input.experience,
      pools: smallGroup.pools.map((one, i) => ({
        ...one,
        stock: changes.stock.input.pools[i]?.stock ?? [],
        dates: changes.dates.input.pools[i]?.dates ?? one.dates,
      })),
    },
  };
  const { lines, total, results } = whatMoved(start, after);
  for (const moved of [...lines, total])
    expect(MOVED_STEPS.reduce((sum, step) => sum + moved.steps[step], 0)).toBe(moved.change);
  expect(total.after - total.before).toBe(total.change);
  for (const step of MOVED_STEPS) {
    expect(lines.reduce((sum, one) => sum + one.steps[step], 0)).toBe(total.steps[step]);
    expect(total.steps[step]).not.toBe(0);
  }
  expect(results.after).toEqual(evaluate(after.input, after.assumptions));
  expect(Math.abs(total.after - results.after.stopLoss.mean)).toBeLessThan(0.5 * lines.length);
  expect(stepwise(start, after).at(-1)).toBe(after);
  expect([...new Set(changedInputs(start, after).map(({ step }) => step))]).toEqual(MOVED_STEPS);
});

describe("lines that come and go", () => {
  const without = later({
    lines: smallGroup.lines.filter(({ id }) => id !== "TAD-01"),
    installed: smallGroup.installed.filter(({ lineId }) => lineId !== "TAD-01"),
    pools: smallGroup.pools.filter(({ id }) => id !== "unidentified:drive"),
  });
  test("a line that is gone takes its loss along, as a correction", () => {
    const gone = whatMoved(start, without).lines.find(({ lineId }) => lineId === "TAD-01");
    expect(gone).toMatchObject({ code: "TAD-01", siteId: "TAD", isGone: true, after: null });
    expect(gone?.steps.corrections).toBe(-Math.round(gone?.before?.mean ?? Number.NaN));
    expect(gone?.change).toBe(gone?.steps.corrections);
  });
  test("a new line brings its loss, and is told with its counts only", () => {
    const moved = whatMoved(without, start).lines.find(({ lineId }) => lineId === "TAD-01");
    expect(moved).toMatchObject({ isNew: true, before: null });
    expect(moved?.change).toBe(Math.round(moved?.after?.mean ?? Number.NaN));
    const told = changedInputs(without, start).filter(({ lineId }) => lineId === "TAD-01");
    expect(told.map(({ fact, poolId, after }) => [fact, poolId, after])).toEqual([
      ["line", null, 1],
      ["units", "oak", 42],
      ["units", "unidentified:drive", 5],
    ]);
  });
  test("a part new on the shelf is a change of stock", () => {
    const stocked = later({ pools: [...smallGroup.pools, pool("birch", { stock: [lot("VEL", 2)] })] });
    expect(changedInputs(start, stocked)).toMatchObject([
      { step: "stock", fact: "stock:usable", poolId: "birch", siteId: "VEL", before: 0, after: 2 },
    ]);
    expect(stepwise(start, stocked)[0]?.input.pools.at(-1)).toMatchObject({ id: "birch", stock: [] });
  });
});

test("a cost that becomes known counts from then on, under corrections", () => {
  const unknown = later({
    lines: smallGroup.lines.map((one) => (one.id === "VEL-04" ? { ...one, costPerHour: null } : one)),
  });
  const moved = whatMoved(unknown, start).lines.find(({ lineId }) => lineId === "VEL-04");
  expect(moved).toMatchObject({ before: null, isNew: false });
  expect(moved?.steps.corrections).toBe(Math.round(moved?.after?.mean ?? Number.NaN));
  expect(changedInputs(unknown, start)).toMatchObject([
    { fact: "costPerHour", lineId: "VEL-04", before: null, after: 2000 },
  ]);
});

test("a notice read between the days counts under dates, not under the clock", () => {
  const dates = { ...pool("x", {}).dates, noticeOn: "2026-12-03", checkedOn: "2026-12-04" };
  const after = later({ asOf: "2026-12-07", pools: withPool("heron", { dates }) });
  const days = (place: number) =>
    stepwise(start, after)[place]?.input.pools.find(({ id }) => id === "heron")?.dates;
  const at = (step: MovedStep) => MOVED_STEPS.indexOf(step);
  expect(days(at("stock"))?.noticeOn).toBeNull();
  expect(days(at("dates"))).toMatchObject({ noticeOn: "2026-11-30", checkedOn: "2026-11-30" });
  expect(days(at("clock"))).toMatchObject({ noticeOn: "2026-12-03", checkedOn: "2026-12-04" });
});

test("pieces of one state at one site are added, lots nobody counted are told apart", () => {
  const after = later({
    pools: withPool("oak", { stock: [lot("VEL", 1), lot("VEL", 2), lot("OST", null)] }),
  });
  const told = changedInputs(start, after).map(({ fact, siteId, ...rest }) => [
    fact,
    siteId,
    rest.before,
    rest.after,
  ]);
  expect(told).toEqual([
    ["stock:usable", "VEL", 2, 3],
    ["stock:usable", "OST", 1, 0],
    ["uncounted:usable", "OST", 0, 1],
  ]);
});

describe("seen from one site", () => {
  const after = later({
    lines: [...smallGroup.lines.map((one) => ({ ...one, bufferHours: 3 })), line("OST-01", "OST")],
    pools: withPool("oak", { stock: [lot("VEL", 1), lot("OST", 4), lot("TAD", 2)] }).map((one) =>
      one.id === "heron" ? { ...one, stock: [lot("VEL", 9)] } : one,
    ),
    experience: smallGroup.experience.map((seen) => ({ ...seen, removals: seen.removals + 1 })),
  });
  const told = changedInputs(...seenFrom(new Set(["TAD"]), [start, after]));
  test("no other site and none of its lines is named", () => {
    expect(new Set(told.map(({ siteId }) => siteId))).toEqual(new Set(["TAD", OTHER_SITES]));
    expect(new Set(told.map(({ lineId }) => lineId))).toEqual(new Set(["TAD-01", null]));
    expect(JSON.stringify(told)).not.toMatch(/VEL|OST/);
  });
  test("stock of other sites is a sum, and parts of no concern are left out", () => {
    expect(told.filter(({ fact }) => fact === "stock:usable")).toMatchObject([
      { poolId: "oak", siteId: OTHER_SITES, before: 3, after: 5 },
      { poolId: "oak", siteId: "TAD", before: 0, after: 2 },
    ]);
    expect(told.some(({ poolId }) => poolId === "heron")).toBe(false);
  });
});

describe("plain values", () => {
  test("equal values give equal text", () => {
    const text = '{"a":[{"x":0.1,"y":null}],"b":1}';
    expect(canonicalJson({ b: 1, a: [{ y: null, x: 0.1 }] })).toBe(text);
    expect(canonicalJson(JSON.parse(text))).toBe(text);
    expect(() => canonicalJson({ loss: Number.NaN })).toThrow(
      "loss must be finite to be kept as JSON, got NaN",
    );
  });
  test("leaves that differ are named by their way", () => {
    expect(changedLeaves({ a: { b: 1, c: [2, 3] } }, { a: { b: 1, c: [2] }, d: "x" })).toEqual([
      { path: "a.c.1", before: 3, after: null },
      { path: "d", before: null, after: "x" },
    ]);
  });
});

test("terms of a stop and machines that stand in are told as corrections, machine by machine added up", () => {
  const steps = [
    { afterHours: 48, cost: 10_000 },
    { afterHours: 72, cost: 25_000 },
  ];
  const [first, second] = smallGroup.lines;
  if (!first || !second) throw new Error("no lines");
  const input: GroupInput = {
    ...smallGroup,
    lines: [{ ...first, fixedCost: 700, costSteps: steps }, second, ...smallGroup.lines.slice(2)],
    installed: smallGroup.installed.flatMap((row) =>
      row.lineId !== first.id || row.poolId !== "oak"
        ? [row]
        : ["a", "b"].map((machineId) => ({
            ...{ ...row, units: row.units / 2 },
            standby: { machineId, group: "formers", needed: 1 },
          })),
    ),
  };
  const told = changedInputs(start, { ...start, input });
  expect(told.map(({ step, fact, before, after }) => [step, fact, before, after])).toEqual([
    ["corrections", "fixedCost", null, 700],
    ["corrections", "costSteps", null, "48:10000;72:25000"],
    ["corrections", "standIn", 0, 48],
    ["corrections", "machinesNeeded", null, "1 of formers"],
  ]);
});
