import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readCoverLadder, readCoverLadders } from "@/lib/data/coverLadder";
import { readSpend } from "@/lib/data/spend";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, day, fillSharedShelf, personWith, type SharedShelf } from "../support/sharedShelf";

let made: FreshDatabase;
let group: SharedShelf;

beforeAll(async () => {
  made = await freshDatabase("spend_and_cover");
  group = await fillSharedShelf();
  // One usable piece for ten units of a part whose last order is in five months.
  await database().stockLot.update({ where: { id: group.southLot }, data: { quantity: 0 } });
});
afterAll(() => made.close());

const everywhere = () => personWith("planner", null);
const setPart = (data: { price?: string | null; priceCurrency?: string | null }) =>
  database().part.update({ where: { id: group.partId }, data });
/** What reads the evaluation must see the change, as one made through the product would. */
const changed = () =>
  database().dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });

describe("the next best pieces to buy", () => {
  it("keep within the budget, add up, and avoid less and less", async () => {
    const list = await readSpend(everywhere(), { asOf, budget: 9100 });
    expect(list.steps.map(({ number }) => number)).toEqual([
      "TM-HR-020",
      "TM-HR-020",
      "TM-HR-020",
      "TM-HR-020",
    ]);
    expect(list.steps.at(-1)?.spent).toBe(9000);
    const avoided = list.steps.reduce((sum, step) => sum + step.avoids, 0);
    expect(list.steps.at(-1)?.avoided).toBeCloseTo(avoided, 6);
    expect(list.steps.every(({ noSpare }) => noSpare.after < noSpare.before)).toBe(true);
    expect(list.curve.at(-1)?.spent).toBeGreaterThan(9100);
  });

  it("go to the shelf that has none before the one that has", async () => {
    const list = await readSpend(everywhere(), { asOf, budget: 2250 });
    expect(list.steps.map(({ siteCode, unitCost }) => [siteCode, unitCost])).toEqual([["SUD", 2250]]);
  });

  it("buy nothing without a price, and say what a piece would avoid", async () => {
    await setPart({ price: null, priceCurrency: null });
    const list = await readSpend(everywhere(), { asOf, budget: 9100 });
    expect(list.steps).toEqual([]);
    const part = list.notOffered.find(({ partId }) => partId === group.partId);
    expect(part?.why).toBe("no-price");
    expect(part?.firstAvoids).toBeGreaterThan(0);
    await setPart({ price: "2250.00", priceCurrency: "EUR" });
  });

  it("buy nothing that can no longer be ordered, nor what has no sourced date", async () => {
    const shut = await database().lifecycleFact.create({
      data: {
        ...{ familyId: group.familyId, source: "Bulletin", lastOrderOn: day("2026-06-30") },
        ...{ checkedOn: day("2026-11-28"), recordedOn: day("2026-11-28") },
      },
    });
    await changed();
    const list = await readSpend(everywhere(), { asOf, budget: 9100 });
    expect(list.steps).toEqual([]);
    expect(list.notOffered.find(({ partId }) => partId === group.partId)?.why).toBe("not-orderable");
    await database().lifecycleFact.delete({ where: { id: shut.id } });
    await changed();
  });

  it("are for the person's own sites, by the losses of their lines", async () => {
    const [all, own] = await Promise.all([
      readSpend(everywhere(), { asOf, budget: 20_000 }),
      readSpend(personWith("viewer", group.south), { asOf, budget: 20_000 }),
    ]);
    expect(new Set(own.steps.map(({ siteCode }) => siteCode))).toEqual(new Set(["SUD"]));
    expect(own.steps.at(-1)?.avoided).toBeLessThan(all.steps.at(-1)?.avoided ?? 0);
    expect(JSON.stringify(own)).not.toContain("NOR");
  });
});

describe("the cover ladder", () => {
  it("counts a planned removal only from its day, times the chance that a piece passes its test", async () => {
    const before = await readCoverLadder(everywhere(), { partId: group.partId, asOf });
    expect(before?.exit).toEqual({ kind: "none" });
    const { id: lineId } = await database().line.findFirstOrThrow({ where: { code: "NOR-01" } });
    const project = await database().project.create({
      data: {
        ...{ code: "NOR-01-R1", name: "Retrofit", siteId: group.north, lineId, currency: "EUR" },
        budget: "1000.00",
      },
    });
    await database().plannedRemoval.create({
      data: {
        projectId: project.id,
        lineId,
        partId: group.partId,
        units: 8,
        leavesOn: day("2027-08-15"),
        kept: true,
      },
    });
    await changed();
    const after = await readCoverLadder(everywhere(), { partId: group.partId, asOf });
    expect(after?.exit).toEqual({ kind: "some", leaving: 8, staying: 2, lastOn: "2027-08-15" });
    expect(after?.coming).toEqual([{ from: "retrofit", on: "2027-08-15", pieces: 8, works: 0.65 }]);
    const at = (ladder: typeof after, month: number) => ladder?.noSpareByMonth[month]?.mean ?? Number.NaN;
    for (const month of [0, 4, 8]) expect(at(after, month)).toBe(at(before, month));
    expect(at(after, 9)).toBeLessThan(at(before, 9));
  });

  it("weighs loss against price, and knows when it cannot", async () => {
    const [priced] = await readCoverLadders(everywhere(), asOf);
    expect(priced?.lossPerPrice).toBeCloseTo((priced?.shortageLoss ?? 0) / 2250, 9);
    await setPart({ price: null, priceCurrency: null });
    const [unpriced] = await readCoverLadders(everywhere(), asOf);
    expect(unpriced).toMatchObject({ price: null, priceEuro: null, lossPerPrice: null });
    await setPart({ price: "2250.00", priceCurrency: "EUR" });
  });

  it("counts the money of the person's lines only, and nothing for who may read nowhere", async () => {
    const [all, own] = await Promise.all([
      readCoverLadders(everywhere(), asOf),
      readCoverLadders(personWith("viewer", group.south), asOf),
    ]);
    expect(own[0]?.shortageLoss).toBeLessThan(all[0]?.shortageLoss ?? 0);
    expect(own[0]?.noSpare).toEqual(all[0]?.noSpare);
    expect(await readCoverLadders({ ...everywhere(), grants: [] }, asOf)).toEqual([]);
  });
});
