import { array, assert, double, integer, property } from "fast-check";
import { describe, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, StandbyInput } from "@/lib/risk/evaluation";
import { chanceAtLeast } from "@/lib/risk/stopShares";
import { anyGroup } from "../support/anyGroup";

const runs = { numRuns: 60 };
const EPS = 1e-9;
const MACHINES = ["a", "b", "c"];

/** Chance of at least `least`, by going through every combination. */
function byEnumeration(chances: readonly number[], least: number): number {
  let sum = 0;
  for (let state = 0; state < 2 ** chances.length; state += 1) {
    const happens = chances.map((_, i) => ((state >> i) & 1) === 1);
    if (happens.filter(Boolean).length < least) continue;
    sum += chances.reduce((product, p, i) => product * (happens[i] ? p : 1 - p), 1);
  }
  return sum;
}

/** The same units, spread over three machines of each line. */
function onMachines(
  input: GroupInput,
  standby: (machineId: string) => { standby?: StandbyInput },
): GroupInput {
  const installed = input.installed.flatMap((row) =>
    MACHINES.map((machine, i) => ({
      ...row,
      units: Math.floor((row.units + i) / MACHINES.length),
      ...standby(`${row.lineId} ${machine}`),
    })),
  );
  return { ...input, installed };
}
const needing = (input: GroupInput, needed: number) =>
  onMachines(input, (machineId) => ({ standby: { machineId, group: "G", needed } }));
const lossOf = (input: GroupInput) => evaluate(input, likelyAssumptions).stopLoss.mean;

describe("machines that stand in for each other", () => {
  test("the chance of so many down is that of going through every combination", () => {
    assert(
      property(
        array(double({ min: 0, max: 1, noNaN: true }), { maxLength: 9 }),
        integer({ min: 0, max: 10 }),
        (chances, least) => Math.abs(chanceAtLeast(chances, least) - byEnumeration(chances, least)) < EPS,
      ),
    );
  });
  test("as many needed as there are gives the same bytes as no group at all", () => {
    assert(
      property(anyGroup, (input) => {
        const bytes = (group: GroupInput) => JSON.stringify(evaluate(group, likelyAssumptions));
        return bytes(needing(input, MACHINES.length)) === bytes(onMachines(input, () => ({})));
      }),
      runs,
    );
  });
  test("the more of them are needed, the more is lost, and a group never loses more than a series", () => {
    assert(
      property(anyGroup, (input) => {
        const [one, two, three] = [1, 2, 3].map((needed) => lossOf(needing(input, needed)));
        const slack = 1 + EPS;
        return (one ?? 0) <= (two ?? 0) * slack && (two ?? 0) <= (three ?? 0) * slack;
      }),
      runs,
    );
  });
  test("units times rate times share are the stops, and stops times cost the loss", () => {
    assert(
      property(anyGroup, (input) =>
        evaluate(needing(input, 2), likelyAssumptions).lines.every(({ pools, stopsPerYear }) => {
          const stops = pools.map((pool) => pool.failuresPerYear * pool.stopShare);
          const sum = stops.reduce((all, one) => all + one, 0);
          return (
            sum === stopsPerYear &&
            pools.every(({ baseLoss, costWithSpare, noSpare, stopShare, failuresPerYear }) => {
              if (baseLoss === null || costWithSpare === null) return true;
              const product = failuresPerYear * stopShare * (1 - noSpare) * costWithSpare;
              return stopShare >= 0 && stopShare <= 1 && Math.abs(product - baseLoss) <= EPS * (1 + baseLoss);
            })
          );
        }),
      ),
      runs,
    );
  });
});
