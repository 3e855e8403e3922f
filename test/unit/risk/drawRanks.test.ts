import { expect, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { drawRanks } from "@/lib/risk/draws/drawRanks";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput } from "@/lib/risk/evaluation";
import { line, lot, noDates, smallGroup } from "@/test/support/smallGroup";

const options = { draws: 2000, seed: 20261130 };

function placeOf(places: readonly LinePlace[], lineId: string): LinePlace {
  const place = places.find((one) => one.lineId === lineId);
  if (!place) throw new Error(`no place of ${lineId}`);
  return place;
}

function withLine(lineId: string, change: Partial<GroupInput["lines"][number]>): GroupInput {
  return {
    ...smallGroup,
    lines: smallGroup.lines.map((one) => (one.id === lineId ? { ...one, ...change } : one)),
  };
}

const ofPool = (poolId: string, more: Partial<GroupInput["pools"][number]>): GroupInput => ({
  ...smallGroup,
  pools: smallGroup.pools.map((one) => (one.id === poolId ? { ...one, ...more } : one)),
});

/** Many lines of the same kind as TAD-01, spread over a wide range of costs, so that places can move. */
const crowd: GroupInput = {
  ...smallGroup,
  lines: [
    ...smallGroup.lines,
    ...Array.from({ length: 20 }, (_, i) => line(`C-${i}`, "TAD", { costPerHour: 400 * 1.15 ** i })),
  ],
  installed: [
    ...smallGroup.installed,
    ...Array.from({ length: 20 }, (_, i) => ({ lineId: `C-${i}`, poolId: "oak", units: 42 })),
  ],
};

const undated = { ...noDates, checkedOn: null };
const stepped = {
  fixedCost: 1500,
  costSteps: [
    { afterHours: 24, cost: 20_000 },
    { afterHours: 72, cost: 150_000 },
  ],
};
const standIns = (input: GroupInput): GroupInput => ({
  ...input,
  installed: input.installed.flatMap((row) =>
    ["a", "b"].map((machine) => ({
      ...{ ...row, units: row.units / 2 },
      standby: { machineId: `${row.lineId} ${machine}`, group: "G", needed: 1 },
    })),
  ),
});
const leaving: GroupInput = {
  ...smallGroup,
  installed: smallGroup.installed.map((row) =>
    row.lineId === "TAD-01" && row.poolId === "oak"
      ? {
          ...row,
          leaves: [
            { on: "2027-02-20", units: 6, kept: true },
            { on: "2027-06-10", units: 30, kept: false },
          ],
        }
      : row,
  ),
};
const outForRepair = [
  { on: "2027-01-20", pieces: 3, works: 0.6 },
  { on: "2027-07-01", pieces: 2, works: null },
];
const meansAgree = [
  ["units that leave, some of them kept", leaving],
  ["units out for repair", ofPool("oak", { arrivals: outForRepair })],
  ["a fixed cost and steps", withLine("TAD-01", stepped)],
  ["machines that stand in for each other", standIns(smallGroup)],
  ["an assumed cost", withLine("TAD-01", { costEvidence: "assumed" })],
  ["a part that may or may not be orderable", ofPool("heron", { dates: undated, stock: [lot("VEL", 1)] })],
  ["spares only at another site", ofPool("oak", { stock: [lot("OST", 3)] })],
] as const;

test.each(meansAgree)(
  "the mean of the draws is the evaluation's, within four standard errors: %s",
  (_, input) => {
    const exact = evaluate(input, likelyAssumptions);
    for (const { lineId, stopLoss } of drawRanks(input, likelyAssumptions, { draws: 20_000, seed: 3 })) {
      const mean = exact.lines.find((one) => one.lineId === lineId)?.stopLoss?.mean ?? Number.NaN;
      expect(Math.abs(stopLoss.mean - mean)).toBeLessThan(4 * stopLoss.error);
      // An error that swallows the figure would make the line above say nothing.
      expect(stopLoss.error).toBeLessThan(0.01 * mean);
    }
  },
);

test("the same seed gives the same bytes, another seed other draws", () => {
  const draw = (seed: number) =>
    JSON.stringify(drawRanks(smallGroup, likelyAssumptions, { ...options, seed }).map((one) => one.stopLoss));
  expect(draw(1)).toBe(draw(1));
  expect(draw(1)).not.toBe(draw(2));
});

test("one more line shifts no draw of the others", () => {
  const before = drawRanks(smallGroup, likelyAssumptions, options);
  const more = { ...smallGroup, lines: [line("NEW-01", "VEL"), ...smallGroup.lines] };
  const after = drawRanks(more, likelyAssumptions, options);
  for (const { lineId, stopLoss } of before) expect(placeOf(after, lineId).stopLoss).toEqual(stopLoss);
});

test("a line without a cost per hour has no place, and the others have theirs among themselves", () => {
  const places = drawRanks(withLine("VEL-04", { costPerHour: null }), likelyAssumptions, options);
  expect(places.map(({ lineId }) => lineId)).toEqual(["VEL-03", "TAD-01"]);
  for (const { place } of places) expect(place.high).toBeLessThanOrEqual(2);
});

test("the odds of two neighbours add up to one, and follow the order that is given", () => {
  const order = ["VEL-04", "VEL-03", "TAD-01"];
  const places = drawRanks(smallGroup, likelyAssumptions, { ...options, order });
  const { neighbours } = placeOf(places, "VEL-03");
  expect(neighbours.map(({ lineId, side }) => [lineId, side])).toEqual([
    ["VEL-04", "above"],
    ["TAD-01", "below"],
  ]);
  for (const { lineId, before } of neighbours) {
    const back = placeOf(places, lineId).neighbours.find((one) => one.lineId === "VEL-03");
    expect(before + (back?.before ?? Number.NaN)).toBeCloseTo(1, 12);
  }
});

test("a worse known cost widens the span, and only an inferred or assumed one is something to settle", () => {
  const grades = ["measured", "documented", "inferred", "assumed"] as const;
  const seen = grades.map((costEvidence) =>
    placeOf(drawRanks(withLine("TAD-01", { costEvidence }), likelyAssumptions, options), "TAD-01"),
  );
  const widths = seen.map(({ stopLoss }) => stopLoss.high - stopLoss.low);
  expect(widths).toEqual([...widths].sort((a, b) => a - b));
  const asked = seen.map(({ unknowns }) => unknowns.some(({ kind }) => kind === "cost"));
  expect(asked).toEqual([false, false, true, true]);
});

test("an assumed cost among many near ones makes a place fragile, dear at its high end; a settled one does not", () => {
  const among = (costEvidence: "documented" | "assumed") => {
    const lines = crowd.lines.map((one) => (one.id === "C-10" ? { ...one, costEvidence } : one));
    return placeOf(drawRanks({ ...crowd, lines }, likelyAssumptions, options), "C-10");
  };
  const open = among("assumed");
  const settled = among("documented");
  expect(open.fragile).toBe(true);
  expect(open.unknowns[0]).toMatchObject({ kind: "cost", poolId: null });
  const [cost] = open.unknowns;
  expect(cost && cost.placeAtHigh < cost.placeAtLow).toBe(true);
  expect(settled.fragile).toBe(false);
  expect(settled.place.high - settled.place.low).toBeLessThan(open.place.high - open.place.low);
});

test("lots nobody counted lower the loss by what they may hold, and counting them is asked of their sites", () => {
  const places = drawRanks(ofPool("oak", { stock: [lot("TAD", null)] }), likelyAssumptions, options);
  const none = drawRanks(ofPool("oak", { stock: [] }), likelyAssumptions, options);
  const full = drawRanks(ofPool("oak", { stock: [lot("TAD", 4)] }), likelyAssumptions, options);
  const loss = (from: readonly LinePlace[]) => placeOf(from, "TAD-01").stopLoss.mean;
  expect(loss(places)).toBeLessThan(loss(none));
  expect(loss(places)).toBeGreaterThan(loss(full));
  expect(placeOf(places, "VEL-03").unknowns).toMatchObject([
    { kind: "stock", poolId: "oak", siteIds: ["TAD"] },
  ]);
});

test("a lot that could not be used if it were counted is nothing to settle", () => {
  const stock = [{ ...lot("TAD", null), state: "on_hold" as const }];
  const places = drawRanks(ofPool("oak", { stock }), likelyAssumptions, options);
  expect(placeOf(places, "VEL-03").unknowns).toEqual([]);
});

test("parts nobody has read are to be identified, line by line", () => {
  const places = drawRanks(smallGroup, likelyAssumptions, options);
  expect(placeOf(places, "TAD-01").unknowns).toMatchObject([{ kind: "part", poolId: "unidentified:drive" }]);
  expect(placeOf(places, "VEL-03").unknowns).toEqual([]);
});

test("places and chances are what they say: first places shared out once a draw", () => {
  const places = drawRanks(smallGroup, likelyAssumptions, options);
  for (const { place, firstFive } of places) {
    expect(place.low).toBeLessThanOrEqual(place.mid);
    expect(place.mid).toBeLessThanOrEqual(place.high);
    expect(firstFive).toBe(1);
  }
});

test("too few draws and a broken seed are refused", () => {
  const draw = (draws: number, seed: number) => () =>
    drawRanks(smallGroup, likelyAssumptions, { draws, seed });
  expect(draw(19, 1)).toThrow("draws must be a whole number from 20 up, got 19");
  expect(draw(20, 0.5)).toThrow("seed must be an integer, got 0.5");
});
