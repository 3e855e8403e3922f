import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readLastBuy } from "@/lib/data/lastBuy";
import { buyBasis } from "@/lib/view/lastBuyBasis";
import { buyCases, lastBuySheet, priceOfBuy } from "@/lib/view/lastBuySheet";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let familyId = "";
const day = (text: string) => new Date(`${text}T00:00:00Z`);

beforeAll(async () => {
  made = await freshDatabase("last_buy");
  world = await makeTwoSites();
  const family = await database().family.create({
    data: { maker: "Brindlewick", name: "Oak", itemClass: "drive" },
  });
  familyId = family.id;
  await database().part.updateMany({
    where: { number: "BW-OK-020" },
    data: { familyId, price: "8000.00", priceCurrency: "PLN", pricedOn: day("2026-10-01") },
  });
});

afterAll(() => made.close());

const everywhere = () => personWith("planner", null);

async function sheetOf(actor: ReturnType<typeof everywhere>) {
  const input = await readLastBuy(actor, { familyId, asOf });
  if (!input) throw new Error("no family");
  const sheet = lastBuySheet(buyBasis(input));
  return { input, sheet, cases: buyCases(sheet) };
}

describe("the sheet of a last buy", () => {
  it("reads units, shelf, rate, price in EUR and what a missing spare costs", async () => {
    const { input, sheet, cases } = await sheetOf(everywhere());
    const positions = await database().position.count({ where: { part: { number: "BW-OK-020" } } });
    expect(input.installed.reduce((sum, { units }) => sum + units, 0)).toBe(positions);
    // 8000 PLN at 4 PLN for a EUR.
    expect(input.parts[0]?.price).toBe(2000);
    expect(sheet.unpriced).toEqual([]);
    const [group] = cases[0]?.buy.groups ?? [];
    expect(group?.usable).toBe(0);
    expect(group?.exposure).toBeGreaterThan(0);
    expect(group?.underCost).toBeGreaterThan(group?.overCost ?? 0);
    expect(priceOfBuy(cases[0]?.buy ?? { groups: [], quantity: 0, low: 0, high: 0 }, input.parts)).toBe(
      2000 * (cases[0]?.buy.quantity ?? 0),
    );
  });

  it("asks for more when every site stands alone, repair stops or the retrofits slip", async () => {
    const { cases } = await sheetOf(everywhere());
    const [base, , site, slip, noRepair] = cases.map(({ buy }) => buy.quantity);
    expect(site).toBeGreaterThanOrEqual(base ?? 0);
    expect(slip).toBeGreaterThanOrEqual(base ?? 0);
    expect(noRepair).toBeGreaterThanOrEqual(base ?? 0);
  });

  it("provides for units a project takes out only until then", async () => {
    const before = (await sheetOf(everywhere())).cases[0]?.buy.groups[0]?.exposure ?? 0;
    const lineId = world.lines["SUD-01"] ?? "";
    const part = await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } });
    const project = await database().project.create({
      data: {
        siteId: world.south,
        lineId,
        code: "SUD-01-R1",
        name: "Retrofit",
        currency: "PLN",
        budget: "1.00",
      },
    });
    const leaves = { lineId, partId: part.id, units: 1, leavesOn: day("2027-11-30") };
    await database().plannedRemoval.create({ data: { projectId: project.id, ...leaves } });
    const after = (await sheetOf(everywhere())).cases[0]?.buy.groups[0]?.exposure ?? 0;
    // One unit for one year (365 days of 365.25) instead of five.
    expect(before - after).toBeCloseTo(5 - 365 / 365.25, 6);
    await database().project.update({ where: { id: project.id }, data: { status: "parked" } });
    expect((await sheetOf(everywhere())).cases[0]?.buy.groups[0]?.exposure).toBeCloseTo(before, 9);
  });

  it("tells a person of one site nothing of the other", async () => {
    const { input } = await sheetOf(personWith("planner", world.south));
    expect(input.everySite).toBe(false);
    expect(Object.keys(input.sites)).toEqual([world.south]);
    for (const list of [input.installed, input.costs, input.leaving])
      for (const { siteId } of list) expect(siteId).toBe(world.south);
    expect(await readLastBuy({ ...everywhere(), grants: [] }, { familyId, asOf })).toBeNull();
    expect(await readLastBuy(everywhere(), { familyId: "no-id", asOf })).toBeNull();
  });

  it("buys to a level, and says so, where no cost of a stop is known", async () => {
    await database().line.updateMany({ data: { costPerHour: null, costApprovedOn: null } });
    await database().dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });
    const { sheet, cases } = await sheetOf(everywhere());
    expect(sheet.unpriced).toEqual(["BW-OK-020"]);
    expect(cases[0]?.buy.groups[0]?.fractile).toBeCloseTo(0.975, 12);
  });
});
