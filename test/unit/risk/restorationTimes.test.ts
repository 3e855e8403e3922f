import { expect, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { PoolInput, PoolResult } from "@/lib/risk/evaluation";
import { restorationTimes } from "@/lib/risk/restorationTimes";
import { ladderHours, openSteps } from "@/lib/risk/sourceLadder";
import { noDates, oldDates, pool, smallGroup } from "../../support/smallGroup";

const { drive } = likelyAssumptions.classes;
const repair = { turnaroundYears: 0.1, yield: 0.6 };

function timesOf(part: PoolInput, restorations = smallGroup.restorations) {
  const input = { ...smallGroup, pools: [part], installed: [], restorations };
  const [result] = evaluate(input, likelyAssumptions).pools;
  return restorationTimes(input, likelyAssumptions)(part, result as PoolResult);
}
const ladderOf = (orders: boolean, repairs: boolean) =>
  ladderHours(openSteps(drive.ladder, { orders, repair: repairs }));

test.each<[string, PoolInput, number]>([
  ["past repair: no order, no repair", pool("a", { dates: oldDates, repair }), ladderOf(false, false)],
  [
    "repair-fed: repair only",
    pool("a", { dates: { ...oldDates, repairUntilOn: "2030-01-01" }, repair }),
    ladderOf(false, true),
  ],
  ["open and repaired: both", pool("a", { repair }), ladderOf(true, true)],
  ["open, nobody repairs it: orders only", pool("a", {}), ladderOf(true, false)],
  [
    "undated: neither is counted on",
    pool("a", { dates: { ...noDates, checkedOn: null }, repair }),
    ladderOf(false, false),
  ],
])("without a spare, %s", (_, part, hours) => {
  expect(timesOf(part).hoursWithoutSpare).toBeCloseTo(hours, 8);
});
test("with a spare, 20 stops of 4.5 hours on average pull the class mean of 4.82, by hand", () => {
  const [seen] = smallGroup.restorations;
  if (!seen) throw new Error("no stops");
  const { hoursWithSpare } = timesOf(pool("a", {}), [{ ...seen, sumHours: 90 }]);
  expect(hoursWithSpare).toBeCloseTo((5 * 3.5 * Math.exp(0.32) + 90) / 25, 9);
});
test("where hours were not summed the logarithms stand for them: 4 hours in the middle, spread 0.5", () => {
  const { hoursWithSpare } = timesOf(pool("a", {}));
  expect(hoursWithSpare).toBeCloseTo((5 * 3.5 * Math.exp(0.32) + 80 * Math.exp(0.25)) / 25, 9);
});
test("stops of another class, or with a spare, say nothing about stops without one", () => {
  const stop = { stops: 50, sumLog: 50 * Math.log(900), sumLogSquared: 50 * Math.log(900) ** 2 };
  const plain = timesOf(pool("a", {}), []);
  expect(timesOf(pool("a", {}), [{ ...stop, itemClass: "motor", spareAtHand: false }])).toEqual(plain);
  const own = timesOf(pool("a", {}), [{ ...stop, itemClass: "drive", spareAtHand: false }]);
  expect(own.withSpare).toEqual(plain.withSpare);
  expect(own.hoursWithoutSpare).toBeGreaterThan(3 * plain.hoursWithoutSpare);
});
test("a drive past repair stands some 80 hours without a spare before anything is recorded", () => {
  const { hoursWithoutSpare, hoursWithSpare } = timesOf(pool("a", { dates: oldDates }), []);
  expect(Math.round(hoursWithoutSpare)).toBe(83);
  expect(hoursWithSpare).toBeCloseTo(3.5 * Math.exp(0.32), 9);
});
