import poissonAtMost from "@stdlib/stats-base-dists-poisson-cdf";
import { expect, test } from "vitest";
import { wallClock, zonedInstant } from "@/seed/zonedInstant";
import { codeOfLine, company, D0, familyOfPart, position } from "@/test/data/seedLookup";

const SINCE = "2021-12-01";

const orders = company.Event.filter(({ source }) => source === "work order");
const own = orders.filter(({ commonCause }) => commonCause === null);

// Installed times stated removals a unit-year times five years; KAR-02's 22 new axes count from January 2026.
test.each([
  ["Heron R", 560 * 0.041 * 5],
  ["Oak", 310 * 0.05 * 5],
  ["Heron E", 430 * 0.018 * 5 - 22 * 0.018 * 4.09],
  ["Elm", 240 * 0.022 * 5],
  ["Birch", 120 * 0.06 * 5],
  ["Larch", 100 * 0.02 * 5],
  ["unknown", 40 * 0.05 * 5],
])("removals of %s are a Poisson draw of their mean (false alarm 1 in 10,000)", (name, mean) => {
  const count = own.filter(({ positionId }) => {
    const there = position.get(positionId ?? "");
    return there?.itemClass === "drive" && familyOfPart(there.partId) === name;
  }).length;
  expect(poissonAtMost(count, mean)).toBeGreaterThan(5e-5);
  expect(1 - poissonAtMost(count - 1, mean)).toBeGreaterThan(5e-5);
});

test.each([
  ["motor", 40],
  ["controller", 6],
  ["hmi", 14],
  ["power_supply", 9],
  ["converter", 5],
])("removals of class %s are a Poisson draw of %i a year (false alarm 1 in 10,000)", (itemClass, perYear) => {
  const count = own.filter((event) => event.itemClass === itemClass).length;
  expect(poissonAtMost(count, perYear * 5)).toBeGreaterThan(5e-5);
  expect(1 - poissonAtMost(count - 1, perYear * 5)).toBeGreaterThan(5e-5);
});

test("3 in 10 removed drives had no fault, within 4 standard errors (false alarm 1 in 16,000)", () => {
  const drives = own.filter(({ itemClass }) => itemClass === "drive");
  const share = drives.filter(({ kind }) => kind === "no_fault_found").length / drives.length;
  expect(Math.abs(share - 0.3)).toBeLessThan(4 * Math.sqrt((0.3 * 0.7) / drives.length));
});

test("a stop with a spare at hand is half over in about 3.5 h, one without in about 60 h", () => {
  const median = (atHand: boolean) => {
    const hours = own
      .filter(({ spareAtHand, downtimeHours }) => spareAtHand === atHand && downtimeHours !== null)
      .map(({ downtimeHours }) => downtimeHours ?? 0)
      .sort((a, b) => a - b);
    return hours[Math.floor(hours.length / 2)] ?? 0;
  };
  expect(median(true)).toBeGreaterThan(3);
  expect(median(true)).toBeLessThan(4);
  expect(median(false)).toBeGreaterThan(42);
  expect(median(false)).toBeLessThan(85);
});

test("four Oak drives of PIN-03 went in one week of August 2026 and carry one cause", () => {
  const burst = orders.filter(({ commonCause }) => commonCause !== null);
  expect(burst).toHaveLength(4);
  expect(new Set(burst.map(({ commonCause }) => commonCause)).size).toBe(1);
  expect(new Set(burst.map(({ lineId }) => codeOfLine.get(lineId ?? "")))).toEqual(new Set(["PIN-03"]));
  const days = burst.map(({ happenedAt }) => Date.parse(happenedAt));
  expect(Math.max(...days) - Math.min(...days)).toBeLessThan(7 * 86_400_000);
});

test("stop logs repeat some work orders and none of the repeats counts", () => {
  const repeats = company.Event.filter(({ source }) => source === "stop log");
  expect(repeats.length / orders.length).toBeCloseTo(0.08, 1);
  expect(repeats.filter(({ setAside }) => setAside === null)).toEqual([]);
});

test("events lie within the sixty months, by the site's clock", () => {
  const zone = new Map(company.Site.map(({ id, timeZone }) => [id, timeZone]));
  const days = company.Event.map(({ happenedAt, siteId }) =>
    wallClock(happenedAt, zone.get(siteId) ?? "").slice(0, 10),
  );
  expect(days.filter((day) => day < SINCE || day > D0)).toEqual([]);
});

test("a wall clock reading is turned into the instant of that zone, in winter and summer", () => {
  expect(zonedInstant("2026-01-15T08:00", "America/New_York")).toBe("2026-01-15T13:00:00.000Z");
  expect(zonedInstant("2026-07-15T08:00", "Europe/Berlin")).toBe("2026-07-15T06:00:00.000Z");
  expect(wallClock("2026-07-15T06:00:00.000Z", "Europe/Berlin")).toBe("2026-07-15T08:00");
});
