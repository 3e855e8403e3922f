import { array, assert, boolean, constantFrom, double, property, record } from "fast-check";
import { expect, test } from "vitest";
import { assumptionFields, withAssumptions } from "@/lib/risk/assumptionFields";
import { productSets } from "@/lib/risk/assumptionSets";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, ItemClass, RestorationInput } from "@/lib/risk/evaluation";
import { readAssumptions } from "@/lib/risk/readAssumptions";
import { anyGroup } from "../support/anyGroup";
import { sumsOf } from "../support/sumsOf";

/** Rounding of sums in another order. */
const SLACK = 1 + 1e-9;
const { careful, likely, bold } = productSets;

const someStops = array(
  record({
    itemClass: constantFrom<ItemClass>("drive", "motor"),
    spareAtHand: boolean(),
    hours: array(double({ min: 0.01, max: 2000, noNaN: true }), { minLength: 1, maxLength: 12 }),
  }),
  { maxLength: 3 },
).map((rows) => rows.map(({ hours, ...of }): RestorationInput => ({ ...of, ...sumsOf(hours) })));

test("careful never gives a lower group loss than likely, nor likely than bold, whatever stops are recorded", () => {
  let apart = 0;
  assert(
    property(anyGroup, someStops, (group, restorations) => {
      const input = { ...group, restorations };
      const loss = ({ values }: typeof likely) => evaluate(input, values).stopLoss.mean;
      const [most, middle, least] = [loss(careful), loss(likely), loss(bold)];
      if (most > middle && middle > least) apart += 1;
      return most * SLACK >= middle && middle * SLACK >= least;
    }),
    { numRuns: 120 },
  );
  expect(apart).toBeGreaterThan(10);
});

test("any value within its bounds is read, and an evaluation of it is a number", () => {
  const changeable = assumptionFields.filter(({ fixed, note }) => fixed === null && note !== "weights");
  assert(
    property(
      anyGroup,
      constantFrom(...changeable),
      double({ min: 0, max: 1, noNaN: true }),
      (input: GroupInput, field, share) => {
        const { least, most } = field.range;
        const value = field.note === "uncountedMost" ? 7 : least + share * (most - least);
        const read = readAssumptions(withAssumptions(likelyAssumptions, { [field.path]: value }));
        // Storage chances must also stand in order.
        if (!read.ok) return field.note === "storage";
        const { mean, low, high } = evaluate(input, read.value).stopLoss;
        return Number.isFinite(mean) && low <= mean && mean <= high;
      },
    ),
    { numRuns: 120 },
  );
});
