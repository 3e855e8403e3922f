import { describe, expect, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { bestKnown } from "@/lib/risk/bestKnown";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, PoolInput } from "@/lib/risk/evaluation";
import { lot, noDates, oldDates, pool, smallGroup } from "../../support/smallGroup";

const best = (one: PoolInput) => bestKnown(one, smallGroup, likelyAssumptions);
const undated = { ...noDates, checkedOn: null };

describe("the best a pool may be", () => {
  test("nothing unknown: there is no better", () => {
    expect(best(pool("oak", { dates: oldDates, stock: [lot("VEL", 2)] }))).toBeNull();
  });
  test("a lot nobody counted holds the most a draw gives it; one that could not be used stays", () => {
    const held = { ...lot("OST", null), state: "on_hold" as const };
    expect(best(pool("oak", { stock: [lot("VEL", null), held] }))?.pool.stock).toEqual([
      lot("VEL", likelyAssumptions.uncountedMost),
      held,
    ]);
  });
  test("pieces of unknown last power-up were powered today, where that makes a difference", () => {
    const stock = [{ ...lot("VEL", 2), lastPoweredOn: null }];
    expect(best(pool("oak", { stock }))?.pool.stock[0]?.lastPoweredOn).toBe(smallGroup.asOf);
    expect(best(pool("oak", { stock, itemClass: "motor" }))).toBeNull();
  });
  test("an undated part can be ordered; one with an old source stands as last recorded", () => {
    expect(best(pool("oak", { dates: undated }))?.pool.dates).toEqual({
      ...undated,
      checkedOn: smallGroup.asOf,
    });
    const stale = { ...oldDates, checkedOn: "2020-01-01" };
    expect(best(pool("oak", { dates: stale }))?.pool.dates).toEqual({
      ...oldDates,
      checkedOn: smallGroup.asOf,
    });
  });
});

describe("by hand", () => {
  const [loss] = [(input: GroupInput) => evaluate(input, likelyAssumptions)];
  const lineOf = (input: GroupInput, id: string) => {
    const line = loss(input).lines.find(({ lineId }) => lineId === id);
    if (!line) throw new Error(`no line ${id}`);
    return line;
  };
  test("parts nobody has read: half their stops find no spare, at the best none does", () => {
    const { pools, unknownLoss } = lineOf(smallGroup, "TAD-01");
    const unread = pools.find(({ poolId }) => poolId === "unidentified:drive");
    if (unread?.costWithSpare == null || unread.costWithoutSpare == null) throw new Error("no cost");
    expect(unread.unknownLoss).toBeCloseTo(
      unread.failuresPerYear * 0.5 * (unread.costWithoutSpare - unread.costWithSpare),
      6,
    );
    expect(unknownLoss).toBe(unread.unknownLoss);
  });
  test("a line of known parts owes nothing to not knowing, though it shares the group with others", () => {
    expect(lineOf(smallGroup, "VEL-03").unknownLoss).toBe(0);
    expect(loss(smallGroup).unknownLoss).toBe(lineOf(smallGroup, "TAD-01").unknownLoss);
  });
  test("without a cost per hour it is not known", () => {
    const lines = smallGroup.lines.map((line) => ({ ...line, costPerHour: null }));
    expect(lineOf({ ...smallGroup, lines }, "TAD-01")).toMatchObject({
      unknownLoss: null,
      horizonLoss: null,
    });
  });
});
