import { describe, expect, test } from "vitest";
import { rateInterval } from "@/lib/reliability/rate";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { groupRates } from "@/lib/risk/groupRates";
import { pool, smallGroup } from "../../support/smallGroup";

const [oak] = smallGroup.pools;
if (!oak) throw new Error("no pool");
const rates = groupRates(smallGroup, likelyAssumptions);

describe("the chain class, family, part, site, added up by hand", () => {
  test("removals: class 2 in 50, family 27 in 500, part 100 unit-years of that and 25 in 450", () => {
    const { a, b, priorMean } = rates.removal(oak);
    expect(priorMean).toBeCloseTo(27 / 500, 12);
    expect(a).toBeCloseTo(100 * (27 / 500) + 25, 10);
    expect(b).toBe(550);
  });
  test("failures start from the class less the units without a fault, 1.4 in 50", () => {
    const { a, b } = rates.failure(oak);
    expect(a).toBeCloseTo(100 * ((1.4 + 17) / 500) + 17, 10);
    expect(b).toBe(550);
  });
  test("a site adds its own to 100 unit-years of the part", () => {
    const part = rates.failure(oak);
    const site = rateInterval({ a: 100 * part.mean + 9, b: 310 }, 0.9);
    const { mean, low, high } = rates.failureAt(oak, "TAD");
    expect(mean).toBeCloseTo(site.mean, 12);
    expect(low).toBeCloseTo(site.low, 12);
    expect(high).toBeCloseTo(site.high, 12);
  });
  test("a site without a record has the part's mean and a wider span", () => {
    const part = rates.failure(oak);
    const site = rates.failureAt(oak, "OST");
    expect(site.mean).toBeCloseTo(part.mean, 12);
    expect(site.high - site.low).toBeGreaterThan(part.high - part.low);
  });
});
test("without family or record a part has its class and no more", () => {
  const { mean, events, unitYears, b } = rates.removal(pool("new", { familyId: null, itemClass: "hmi" }));
  expect({ events, unitYears, b }).toEqual({ events: 0, unitYears: 0, b: 50 });
  expect(mean).toBeCloseTo(likelyAssumptions.classes.hmi.removalRate, 12);
});
