import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readPart } from "@/lib/data/part";
import { readParts } from "@/lib/data/partList";
import { changeStock } from "@/lib/data/stockChange";
import { changeStockLot } from "@/lib/schema/stockLot";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, day, fillSharedShelf, personWith, type SharedShelf } from "../support/sharedShelf";

let made: FreshDatabase;
let group: SharedShelf;

beforeAll(async () => {
  made = await freshDatabase("part");
  group = await fillSharedShelf();
  for (const [siteId, reference, dueOn, returnedOn] of [
    [group.north, "R-1", "2026-09-01", null],
    [group.north, "R-2", "2026-12-24", null],
    [group.north, "R-3", "2026-09-01", "2026-11-01"],
    [group.south, "R-4", "2026-10-01", null],
  ] as const)
    await database().repairOrder.create({
      data: {
        ...{ siteId, partId: group.partId, reference, sentOn: day("2026-07-01"), dueOn: day(dueOn) },
        returnedOn: returnedOn === null ? null : day(returnedOn),
      },
    });
});

afterAll(() => made.close());

const read = (actor: Actor, id = group.partId, on = asOf) => readPart(actor, { id, asOf: on });

describe("the page of a part", () => {
  it("is not found when it is missing, is no id, or the reader has no site", async () => {
    const everywhere = personWith("viewer", null);
    expect(await read(everywhere, "018f0000-0000-7000-8000-000000000000")).toBeNull();
    expect(await read(everywhere, "drive")).toBeNull();
    expect(await read({ ...everywhere, grants: [] })).toBeNull();
    expect(await read(everywhere)).not.toBeNull();
  });

  it("names nothing of a site the reader may not see, only one sum", async () => {
    const part = await read(personWith("viewer", group.north));
    expect(part?.places).toHaveLength(8);
    expect(part?.lots.map((lot) => lot.bin)).toEqual(["R1-N"]);
    expect(part?.aliases.map(({ alias }) => alias)).toEqual(["100045871", "Axis drive 20"]);
    expect(part?.elsewhere).toMatchObject({ installed: 2, book: 7, repairsOut: 1, repairsOverdue: 1 });
    expect(part?.elsewhere?.usable).toBeCloseTo(7 * 0.97, 9);
    expect(JSON.stringify(part)).not.toMatch(/SUD|R9-S|77-1234|R-4/);
    expect(JSON.stringify(part)).not.toContain(group.south);
  });

  it("shows a reader of all sites every bin, and no sum", async () => {
    const part = await read(personWith("viewer", null));
    expect(part?.lots.map((lot) => [lot.siteCode, lot.bin])).toEqual([
      ["NOR", "R1-N"],
      ["SUD", "R9-S"],
    ]);
    expect(part?.elsewhere).toBeNull();
    expect(part?.pool?.installed).toBe(10);
  });

  it("says what was known on the day, and keeps older statements", async () => {
    const now = await read(personWith("viewer", null));
    expect(now?.stage).toBe("buy-window");
    expect(now?.facts.map((fact) => fact.source)).toEqual(["Notice of the maker", "Catalogue of the maker"]);
    expect(now?.factInForce).toBe(now?.facts[0]?.id);
    const earlier = await read(personWith("viewer", null), group.partId, "2026-11-24");
    expect(earlier?.stage).toBe("open");
    expect(earlier?.facts.map((fact) => fact.source)).toEqual(["Catalogue of the maker"]);
  });

  it("counts units out for repair on the day, and by how many days they are late", async () => {
    const part = await read(personWith("viewer", group.north));
    expect(part?.repairs.map((one) => [one.reference, one.daysOverdue])).toEqual([
      ["R-1", 90],
      ["R-2", 0],
    ]);
  });

  it("adds its lots up to the usable pieces of the evaluation", async () => {
    const part = await read(personWith("viewer", null));
    const sum = part?.lots.reduce((all, lot) => all + lot.usable, 0);
    expect(sum).toBeCloseTo(part?.pool?.usable ?? Number.NaN, 9);
  });

  it("names the successor with its condition, both ways", async () => {
    const part = await read(personWith("viewer", null));
    expect(part?.successors).toMatchObject([
      { number: "TM-HE-020", condition: "Controller firmware 24 or newer" },
    ]);
    const next = await read(personWith("viewer", null), group.successorId);
    expect(next?.successorOf).toMatchObject([{ number: "TM-HR-020" }]);
    expect(next?.pool).toBeNull();
  });

  it("leaves the store as plain values", async () => {
    const part = await read(personWith("viewer", group.north));
    expect(JSON.parse(JSON.stringify(part))).toEqual(part);
  });
});

describe("the list of parts", () => {
  it("holds every part, with the units of the reader's sites beside those of the group", async () => {
    const parts = await readParts(personWith("viewer", group.north), asOf);
    expect(parts.map((part) => [part.number, part.installedHere, part.installed, part.book])).toEqual([
      ["TM-HE-020", 0, 0, null],
      ["TM-HR-020", 8, 10, 8],
    ]);
    expect(parts[1]).toMatchObject({ stage: "buy-window", lastOrderOn: "2027-04-30", family: "Heron R" });
    expect(JSON.parse(JSON.stringify(parts))).toEqual(parts);
  });

  it("is empty for somebody without a site", async () => {
    expect(await readParts({ ...personWith("viewer", null), grants: [] }, asOf)).toEqual([]);
  });
});

describe("a stock lot", () => {
  async function wish(lotId: string, changes: object) {
    const lot = (await read(personWith("viewer", null)))?.lots.find((one) => one.id === lotId);
    if (!lot) throw new Error("no lot");
    const { state, quantity, lastPoweredOn, countedOn } = lot;
    const seen = { state, quantity, lastPoweredOn, countedOn };
    return changeStockLot.parse({ lotId, seen, wanted: { ...seen, ...changes } });
  }

  it("is changed by a planner of its site, with an audit entry and new figures, and back again", async () => {
    const planner = personWith("planner", group.north);
    const before = await read(planner);
    const asked = await wish(group.northLot, { state: "on_hold", countedOn: "2026-11-29" });
    expect(await changeStock(planner, asked)).toEqual({ ok: true, value: null });
    const after = await read(planner);
    expect(after?.stock[0]).toMatchObject({
      book: 1,
      usable: 0,
      deductions: [{ reason: "on_hold", pieces: 1 }],
    });
    expect(after?.pool?.noSpare.mean).toBeGreaterThan(before?.pool?.noSpare.mean ?? Number.NaN);
    expect(
      await database().auditEntry.findFirst({ where: { entity: "StockLot", entityId: group.northLot } }),
    ).toMatchObject({
      ...{ deed: "stock:lot", userId: "person", siteId: group.north },
      ...{ before: asked.seen, after: asked.wanted },
    });
    const back = { ...asked, seen: asked.wanted, wanted: asked.seen };
    expect(await changeStock(planner, back)).toMatchObject({ ok: true });
    expect((await read(planner))?.lots).toEqual(before?.lots);
  });

  it("is not changed by a viewer, nor by a planner of another site", async () => {
    const asked = await wish(group.northLot, { quantity: 0 });
    for (const actor of [personWith("viewer", group.north), personWith("planner", group.south)])
      expect(await changeStock(actor, asked)).toMatchObject({ ok: false, error: { code: "missing" } });
    expect((await wish(group.northLot, {})).seen.quantity).toBe(1);
  });

  it("offers a change only where it is allowed", async () => {
    const mixed: Actor = {
      ...personWith("viewer", null),
      grants: [
        { role: "viewer", siteId: null },
        { role: "planner", siteId: group.south },
      ],
    };
    expect((await read(mixed))?.lots.map((lot) => lot.mayChange)).toEqual([false, true]);
  });

  it("is changed by one of two who saw the same, and the other hears of it", async () => {
    const planner = personWith("planner", null);
    const asked = await Promise.all([
      wish(group.southLot, { quantity: 6 }),
      wish(group.southLot, { quantity: 5 }),
    ]);
    const answers = await Promise.all(asked.map((one) => changeStock(planner, one)));
    expect(answers.filter((one) => one.ok)).toHaveLength(1);
    expect(answers.find((one) => !one.ok)).toMatchObject({ error: { code: "conflict" } });
  });

  it("keeps one lot for a state in a bin", async () => {
    const twin = await database().stockLot.create({
      data: {
        ...{ siteId: group.north, partId: group.partId, bin: "R1-N", revision: "B1" },
        ...{ state: "reserved", quantity: 2 },
      },
    });
    const asked = await wish(group.northLot, { state: "reserved" });
    expect(await changeStock(personWith("planner", null), asked)).toMatchObject({
      ok: false,
      error: { code: "impossible" },
    });
    await database().stockLot.delete({ where: { id: twin.id } });
  });

  it("is refused with a part of a piece, a day that is none, or a count without a number", async () => {
    await expect(wish(group.northLot, { quantity: 1.5 })).rejects.toThrow("whole number");
    await expect(wish(group.northLot, { lastPoweredOn: "2026-02-30" })).rejects.toThrow("day that exists");
    await expect(wish(group.northLot, { quantity: null, countedOn: "2026-11-01" })).rejects.toThrow(
      "leave the day of the count empty",
    );
  });
});
