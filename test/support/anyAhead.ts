import { array, boolean, constantFrom, double, integer, option, record, tuple } from "fast-check";
import type { ArrivalInput, GroupInput, LeavingInput } from "@/lib/risk/evaluation";
import { anyGroup } from "./anyGroup";

const days = constantFrom("2026-11-30", "2026-12-20", "2027-02-26", "2027-08-15", "2028-11-30", "2031-01-10");
const arrival = record({
  on: constantFrom("2026-08-01", "2026-12-10", "2027-01-31", "2028-03-01"),
  pieces: integer({ min: 0, max: 3 }),
  works: option(double({ min: 0, max: 1, noNaN: true })),
});
const leave = record({ on: days, units: integer({ min: 0, max: 30 }), kept: boolean() });

/** Small groups of all kinds in which units leave, kept or scrapped, and units are out for repair, some overdue. */
export const anyAhead = tuple(
  anyGroup,
  array(array(arrival, { maxLength: 2 }), { minLength: 4, maxLength: 4 }),
  array(array(leave, { maxLength: 2 }), { minLength: 8, maxLength: 8 }),
).map(
  ([group, arrivals, leaves]: [GroupInput, ArrivalInput[][], LeavingInput[][]]): GroupInput => ({
    ...group,
    pools: group.pools.map((pool, i) => ({ ...pool, arrivals: arrivals[i] ?? [] })),
    installed: group.installed.map((row, i) => ({ ...row, leaves: leaves[i] ?? [] })),
  }),
);
