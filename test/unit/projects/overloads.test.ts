import { array, assert, integer, property, record } from "fast-check";
import { expect, test } from "vitest";
import { addDays } from "@/lib/kernel/isoDate";
import { overloads } from "@/lib/projects/overloads";

const FIRST = "2027-08-01";
const need = (task: string, [from, to]: readonly [number, number], hands: number) => ({
  ...{ project: "P", task, hands },
  start: addDays(FIRST, from),
  finish: addDays(FIRST, to),
});

test("two tasks of two crews on the same days need four of two", () => {
  const found = overloads([need("a", [0, 4], 2), need("b", [3, 9], 2), need("c", [20, 21], 2)], 2);
  expect(
    found.map(({ from, to, needed, needs }) => [from, to, needed, needs.map(({ task }) => task)]),
  ).toEqual([["2027-08-04", "2027-08-05", 4, ["a", "b"]]]);
});

test("stretches next to each other are one, with the most needed on a day of it", () => {
  const found = overloads([need("a", [0, 5], 2), need("b", [0, 2], 1), need("c", [3, 5], 3)], 2);
  expect(found.map(({ from, to, needed }) => [from, to, needed])).toEqual([["2027-08-01", "2027-08-06", 5]]);
});

test("every day is over exactly when it lies in a stretch, each day counted on its own", () => {
  const drawn = record({
    from: integer({ min: 0, max: 20 }),
    long: integer({ min: 0, max: 6 }),
    hands: integer({ min: 0, max: 3 }),
  });
  assert(
    property(array(drawn, { maxLength: 6 }), integer({ min: 0, max: 5 }), (all, available) => {
      const needs = all.map(({ from, long, hands }, i) => need(`t${i}`, [from, from + long], hands));
      const found = overloads(needs, available);
      for (let i = 0; i < 30; i += 1) {
        const at = addDays(FIRST, i);
        const needed = needs.reduce(
          (sum, one) => sum + (one.start <= at && at <= one.finish ? one.hands : 0),
          0,
        );
        const lies = found.filter(({ from, to }) => from <= at && at <= to);
        expect(lies.length).toBe(needed > available ? 1 : 0);
        expect(needed).toBeLessThanOrEqual(Math.max(available, lies[0]?.needed ?? 0));
      }
    }),
  );
});
