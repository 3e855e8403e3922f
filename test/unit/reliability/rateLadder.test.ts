import { describe, expect, it } from "vitest";
import { rateLadder } from "@/lib/reliability/rateLadder";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { classPrior, groupRates } from "@/lib/risk/groupRates";
import { pool, smallGroup } from "../../support/smallGroup";

const oak = pool("oak", {});
const sites = [
  { events: 8, unitYears: 240 },
  { events: 9, unitYears: 210 },
];
const all = { events: 17, unitYears: 450 };

describe("a rate opened by level", () => {
  const prior = classPrior(oak, "failures", likelyAssumptions);
  const ladder = rateLadder(prior, { family: all, part: all, sites });

  it("ends in the rates the evaluation computes, of the part and of each site", () => {
    const rates = groupRates(smallGroup, likelyAssumptions);
    const part = rates.failure(oak);
    expect(ladder.part).toMatchObject({ mean: part.mean, low: part.low, high: part.high });
    expect(ladder.part.borrowed?.mean).toBeCloseTo(part.priorMean, 12);
    expect(ladder.part.borrowed?.unitYears).toBeCloseTo(part.priorUnitYears, 12);
    const [vel, tad] = ladder.sites;
    expect(vel?.mean).toBeCloseTo(rates.failureAt(oak, "VEL").mean, 12);
    expect(tad?.mean).toBeCloseTo(rates.failureAt(oak, "TAD").mean, 12);
  });

  it("borrows the class at its full weight into the family, and at most 100 unit-years below", () => {
    expect(ladder.itemClass).toMatchObject({ borrowed: null, counted: null });
    expect(ladder.family?.borrowed?.unitYears).toBe(prior.b);
    expect(ladder.family?.mean).toBeCloseTo((prior.a + 17) / (prior.b + 450), 12);
    expect(ladder.sites[0]?.borrowed).toEqual({ mean: expect.closeTo(ladder.part.mean, 12), unitYears: 100 });
  });

  it("gives a part without a family the class itself, and one without an event a rate above nothing", () => {
    const alone = rateLadder(prior, { family: null, part: { events: 0, unitYears: 24 }, sites: [] });
    expect(alone.family).toBeNull();
    expect(alone.part.borrowed?.mean).toBeCloseTo(prior.a / prior.b, 12);
    expect(alone.part.mean).toBeCloseTo(prior.a / (prior.b + 24), 12);
    expect(alone.part.low).toBeGreaterThan(0);
  });
});
