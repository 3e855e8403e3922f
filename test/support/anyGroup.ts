import { array, constantFrom, double, integer, option, record } from "fast-check";
import type { GroupInput, ItemClass, PoolInput } from "@/lib/risk/evaluation";
import { line, noDates, oldDates, pool } from "./smallGroup";

const between = (min: number, max: number) => double({ min, max, noNaN: true });
export const SITES = ["N", "S"] as const;
const stock = record({
  siteId: constantFrom(...SITES),
  state: constantFrom("usable", "unproven", "on_hold", "removed_untested"),
  quantity: option(integer({ min: 0, max: 6 })),
  lastPoweredOn: option(constantFrom("2026-09-01", "2024-09-01", "2018-09-01")),
});
const dates = constantFrom(
  noDates,
  oldDates,
  { ...noDates, checkedOn: null },
  {
    ...oldDates,
    repairUntilOn: "2029-12-31",
  },
);
const anyPool = record({
  itemClass: constantFrom<ItemClass>("drive", "motor", "power_supply", "converter"),
  familyId: option(constantFrom("f", "g")),
  dates,
  leadYears: option(between(0, 0.8)),
  repair: option(record({ turnaroundYears: between(0, 0.4), yield: between(0, 1) })),
  stock: array(stock, { maxLength: 4 }),
});
/** Small groups of all kinds: two sites, up to four pools, shared stock, some records, cost steps, no recorded stops. */
export const anyGroup = record({
  pools: array(anyPool, { minLength: 1, maxLength: 4 }),
  units: array(integer({ min: 0, max: 60 }), { minLength: 8, maxLength: 8 }),
  events: array(integer({ min: 0, max: 8 }), { minLength: 4, maxLength: 4 }),
  cost: option(between(0, 5000)),
  buffer: option(between(0, 6)),
  fixedCost: between(0, 5000),
  costSteps: array(record({ afterHours: between(0, 200), cost: between(0, 100_000) }), { maxLength: 2 }),
}).map(({ pools, units, events, cost, buffer, ...beyond }): GroupInput => {
  const list = pools.map((more, i) => pool(`p${i}`, more as Partial<PoolInput>));
  return {
    asOf: "2026-11-30",
    lines: SITES.map((site) =>
      line(`line ${site}`, site, { costPerHour: cost, bufferHours: buffer, ...beyond }),
    ),
    pools: list,
    installed: list.flatMap(({ id }, i) =>
      SITES.map((site, j) => ({ lineId: `line ${site}`, poolId: id, units: units[2 * i + j] ?? 0 })),
    ),
    experience: list.map(({ id }, i) => ({
      ...{ poolId: id, siteId: "N", unitYears: 100 },
      ...{ removals: events[i] ?? 0, failures: Math.floor((events[i] ?? 0) / 2) },
    })),
    restorations: [],
  };
});
