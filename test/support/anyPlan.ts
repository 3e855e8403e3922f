import fc from "fast-check";
import type { PlanProblem } from "@/lib/portfolio/planProblem";
import { fullOf, option, planLine, smallPlan } from "./smallPlan";

const money = fc.integer({ min: 0, max: 26 }).map((tens) => tens * 10_000);
const cost = fc.integer({ min: 1, max: 15 }).map((tens) => ({
  ...{ low: tens * 8_000, typical: tens * 10_000, high: tens * 13_000 },
}));
const fate = fc.constantFrom("kept" as const, "scrapped" as const, "unproven" as const);
const full = (lineId: string, drives: Record<string, number>) =>
  fc
    .record({ cost, fate, share: fc.constantFrom(0.25, 0.5, 1), windowHours: fc.constantFrom(60, 150, 170) })
    .map(({ cost: price, fate: end, share, windowHours }) =>
      fullOf(lineId, drives, {
        ...{ cost: price, windowHours },
        removes: Object.entries(drives).map(([poolId, units]) => ({
          ...{ poolId, units: Math.ceil(units * share), fate: end, works: null },
        })),
      }),
    );

/** Uneven and tiny plans: three lines, up to ten candidates, all kinds of limits. */
export const anyPlan: fc.Arbitrary<PlanProblem> = fc
  .record({
    a: full("A", { oak: 24 }),
    b: full("B", { oak: 10, birch: 8 }),
    c: full("C", { oak: 16, heron: 6 }),
    spares: fc.integer({ min: 1, max: 6 }),
    budgets: fc.tuple(money, money, money),
    weeks: fc.integer({ min: 0, max: 12 }),
    crews: fc.integer({ min: 0, max: 2 }),
    chained: fc.boolean(),
    pin: fc.constantFrom(null, "A", "C"),
    ban: fc.constantFrom(null, "A", "B"),
    duty: fc.constantFrom(null, "2027-12-31", "2028-12-31", "2027-03-01"),
    worthPerEuro: fc.constantFrom(0, 0.2, 1),
    lead: fc.constantFrom(0, 30, 60),
  })
  .map(({ a, b, c, spares, budgets, weeks, crews, chained, pin, ban, duty, worthPerEuro, lead }) => {
    const crew = { region: "EU", crews: 1, weeks: 2 };
    const needs = { engineerWeeks: [{ region: "north", weeks: 6 }], crew, projectWeeks: lead };
    const controller = option("A/controller", {
      ...{ kind: "controller", cost: { low: 1, typical: 20_000, high: 2 }, windowHours: 40 },
    });
    const drives = { ...a, ...needs, id: "A/drives", stage: 2, after: ["A/controller"] };
    const two = planLine("A", "VEL", chained ? [controller, drives] : [{ ...a, ...needs }]);
    return {
      ...smallPlan,
      lines: [
        two,
        planLine("B", "VEL", [{ ...b, ...needs }]),
        {
          ...planLine("C", "TAD", [
            c,
            option("C/spares", {
              ...{ kind: "stock", cost: { low: 1, typical: 4_000 * spares, high: 2 }, windowHours: 1 },
              buys: [{ poolId: "oak", pieces: spares, works: 0.8 }],
            }),
          ]),
          mustDo: duty ? { by: duty, optionIds: [], reason: "mission time" } : null,
        },
      ],
      budgets: [
        { year: 2027, siteId: null, amount: budgets[0] },
        { year: 2028, siteId: null, amount: budgets[1] },
        { year: 2028, siteId: "VEL", amount: budgets[2] },
      ],
      reserveShare: 0.1,
      engineers: smallPlan.quarters.map(({ id }) => ({ region: "north", quarterId: id, weeks })),
      crews: [{ region: "EU", startsOn: "2027-01-01", endsOn: "2028-12-31", crews }],
      pins: pin ? [{ lineId: pin, optionId: null, slotId: null }] : [],
      bans: ban ? [{ lineId: ban, optionId: null, slotId: "VEL 2027" }] : [],
      worthPerEuro,
    };
  });
