import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readStockLevels } from "@/lib/data/stockLevels";
import { bySurplus, levelReason, ordered, surplusEuro, surplusOf } from "@/lib/view/stockLevels";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let openPart = "";

beforeAll(async () => {
  made = await freshDatabase("stock_levels");
  world = await makeTwoSites();
  openPart = (await database().part.findFirstOrThrow({ where: { number: "TM-HE-020" } })).id;
  await database().part.update({
    where: { id: openPart },
    data: { price: 10_000, priceCurrency: "PLN", pricedOn: new Date("2026-06-01"), leadWeeks: 10 },
  });
});

afterAll(() => made.close());

const planner = () => personWith("planner", world.south);
const levels = async (target = 0.05) => readStockLevels(planner(), { asOf, target });

async function levelOf(part: string) {
  const row = (await levels()).find((one) => one.part === part);
  if (!row) throw new Error(`no level of ${part}`);
  return row;
}

describe("the levels of a site", () => {
  it("restock what can be ordered, and only keep what cannot", async () => {
    const open = await levelOf("TM-HE-020");
    expect(open).toMatchObject({ siteCode: "SUD", units: 3, usable: 0, book: 0, leadAssumed: false });
    expect(open.levels.kind).toBe("restock");
    expect(open.levels.max).toBeGreaterThanOrEqual(open.levels.min);
    expect(ordered(open)).toBe(open.levels.max);
    const old = await levelOf("BW-OK-020");
    expect(old.levels).toMatchObject({ kind: "ended", min: 0, max: 0 });
    expect(ordered(old)).toBe(0);
    expect((await levels(0.02)).find(({ part }) => part === "TM-HE-020")?.levels.min).toBeGreaterThanOrEqual(
      open.levels.min,
    );
  });

  it("see only the sites of the actor", async () => {
    expect(new Set((await levels()).map(({ siteCode }) => siteCode))).toEqual(new Set(["SUD"]));
    expect(await readStockLevels({ ...planner(), grants: [] }, { asOf, target: 0.05 })).toEqual([]);
  });

  it("are zero and blocked once every unit has a day to leave, and the rest is surplus with its value", async () => {
    const lot = { siteId: world.south, partId: openPart, bin: "L1", state: "usable" as const, quantity: 40 };
    await database().stockLot.create({ data: { ...lot, lastPoweredOn: new Date("2026-11-01") } });
    const lineId = world.lines["SUD-02"] ?? "";
    const project = await database().project.create({
      data: {
        ...{ siteId: world.south, lineId, code: "SUD-02-R1", name: "Retrofit", status: "funded" },
        ...{ currency: "PLN", budget: "1000.00" },
      },
    });
    const removal = { projectId: project.id, lineId, partId: openPart, leavesOn: new Date("2027-08-15") };
    const planned = await database().plannedRemoval.create({ data: { ...removal, units: 2 } });
    await database().dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });
    expect((await levelOf("TM-HE-020")).levels.kind).toBe("restock");
    await database().plannedRemoval.update({ where: { id: planned.id }, data: { units: 3 } });
    await database().dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });
    const row = await levelOf("TM-HE-020");
    expect(row.levels).toMatchObject({ kind: "retires", min: 0, max: 0 });
    expect(ordered({ ...row, usable: 0 })).toBe(0);
    expect(levelReason(row, asOf)).toBe("All its places here retire by 15 Aug 2027: never re-order.");
    // 40 pieces powered this month work with 0.97 each.
    expect(row.usable).toBeCloseTo(38.8, 10);
    expect(surplusOf(row)).toBe(Math.floor(38.8 - row.levels.keep));
    // 4 PLN for 1 EUR.
    expect(surplusEuro(row)).toBeCloseTo(surplusOf(row) * 2500, 6);
    expect(bySurplus(await levels())[0]?.part).toBe("TM-HE-020");
  });

  it("call everything surplus where nothing is installed", async () => {
    const part = await database().part.create({
      data: { maker: "Corvane", number: "=1+1", description: "Odd", itemClass: "io" },
    });
    await database().stockLot.create({
      data: { siteId: world.south, partId: part.id, bin: "L2", state: "wrong_revision", quantity: 5 },
    });
    await database().dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });
    const row = await levelOf("=1+1");
    expect(row.levels).toMatchObject({ kind: "unused", min: 0, max: 0, keep: 0 });
    expect([surplusOf(row), surplusEuro(row), ordered(row)]).toEqual([5, null, 0]);
    expect(bySurplus(await levels()).at(-1)).toMatchObject({ siteCode: "SUD", part: "=1+1", book: 5 });
  });
});
