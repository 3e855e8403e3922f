import { afterAll, beforeAll, beforeEach, expect, it, vi } from "vitest";
import { readAsOf } from "@/lib/data/asOf";
import { database } from "@/lib/data/client";
import { lookBack } from "@/lib/data/lookBack";
import { readZone } from "@/lib/data/readerZone";
import { knownOn } from "@/lib/view/knownAt";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

const admin = personWith("admin", null);
let made: FreshDatabase;
let sites: TwoSites;

beforeAll(async () => {
  made = await freshDatabase("ownDay");
  sites = await makeTwoSites();
});
beforeEach(() => {
  vi.useFakeTimers({ toFake: ["Date"], now: new Date("2026-05-12T22:30:00Z") });
  return () => vi.useRealTimers();
});
afterAll(() => made.close());

it("the day is that of the clock of most sites, not of UTC", async () => {
  // Half past midnight in Warsaw.
  expect(await readAsOf(admin, undefined)).toBe("2026-05-13");
  await database().site.updateMany({ data: { timeZone: "America/Chicago" } });
  expect(await readAsOf(admin, undefined)).toBe("2026-05-12");
});

it("somebody is told times by the clock of their own sites", async () => {
  await database().site.update({ where: { id: sites.south }, data: { timeZone: "Asia/Tokyo" } });
  expect(await readZone(personWith("viewer", sites.south))).toBe("Asia/Tokyo");
  expect(await readZone(personWith("viewer", sites.north))).toBe("America/Chicago");
  expect(await readZone({ ...admin, grants: [] })).toBe("UTC");
});

it("a look back is at its own day, though that ends on the next one of UTC", async () => {
  const known = knownOn("2026-05-10", "America/Chicago");
  expect(known.at.slice(0, 10)).toBe("2026-05-11");
  expect(await lookBack(known, () => readAsOf(admin, undefined))).toBe("2026-05-10");
});
