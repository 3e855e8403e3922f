import { afterAll, beforeAll, expect, it } from "vitest";
import { readDrawnTotals } from "@/lib/data/drawnTotals";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readRanking } from "@/lib/data/ranking";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;

beforeAll(async () => {
  made = await freshDatabase("drawntotals");
  world = await makeTwoSites();
});
afterAll(() => made.close());

it("gives a person of the whole group its sum and that of each site", async () => {
  const { group, sites } = (await readRanking(personWith("viewer", null), asOf)).totals;
  expect(Object.keys(sites).sort()).toEqual(["NOR", "SUD"]);
  expect((sites.NOR?.mean ?? 0) + (sites.SUD?.mean ?? 0)).toBeCloseTo(group?.mean ?? Number.NaN, 4);
  // Both sites wait for one part, whose doubt moves them together: the ends nearly add up, by the luck of the draws.
  const ends = (sites.NOR?.high ?? 0) + (sites.SUD?.high ?? 0);
  expect(group?.high).toBeLessThan(1.1 * ends);
  expect(group?.high).toBeGreaterThan(0.7 * ends);
});

it("gives a person of one site that site's sum alone, and nobody without a site anything", async () => {
  const { id } = await currentEvaluation(asOf);
  const all = await readDrawnTotals(personWith("viewer", null), id);
  expect(await readDrawnTotals(personWith("viewer", world.north), id)).toEqual({
    group: null,
    sites: { NOR: all.sites.NOR },
  });
  expect(await readDrawnTotals({ ...personWith("viewer", null), grants: [] }, id)).toEqual({
    group: null,
    sites: {},
  });
});
