import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { readAudit, readWholeAudit } from "@/lib/data/audit";
import { change } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { changeStock } from "@/lib/data/stockChange";
import { ok } from "@/lib/kernel/result";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

const admin = personWith("admin", null);
let made: FreshDatabase;
let sites: TwoSites;
let lotId = "";
let partId = "";
let ofNorth: Actor;

beforeAll(async () => {
  made = await freshDatabase("audit");
  sites = await makeTwoSites();
  ofNorth = personWith("viewer", sites.north);
  const lot = await database().stockLot.findFirstOrThrow({ where: { siteId: sites.south } });
  [lotId, partId] = [lot.id, lot.partId];
  const seen = {
    state: "usable" as const,
    quantity: 1,
    lastPoweredOn: "2026-06-01" as const,
    countedOn: null,
  };
  await changeStock(admin, {
    lotId,
    seen,
    wanted: { ...seen, quantity: 3 },
    why: "Found two behind the rack",
  });
});
afterAll(() => made.close());

const note = (count: number, siteId: string | null, entity = "Line") =>
  change(admin, async (_tx, record) => {
    for (let i = 0; i < count; i++)
      record({ deed: "line:figures", entity, entityId: sites.lines["NOR-01"] ?? "", siteId, after: { i } });
    return ok(null);
  });

describe("the changes", () => {
  it("tell who, what, before and after, and why; of the lot, of its part, and of nothing else", async () => {
    const [line] = (await readAudit(admin, { thing: { kind: "lot", id: lotId } })).lines;
    expect(line).toMatchObject({
      ...{ who: "Person", deed: "stock:lot", siteCode: "SUD", why: "Found two behind the rack" },
      changes: [{ field: "Quantity", from: "1", to: "3" }],
    });
    expect(line?.what?.label).toBe("SUD, BW-OK-020, bin R1");
    expect((await readAudit(admin, { thing: { kind: "part", id: partId } })).lines).toHaveLength(1);
    const nothing = { kind: "line", id: sites.lines["NOR-02"] ?? "" } as const;
    expect((await readAudit(admin, { thing: nothing })).lines).toEqual([]);
  });

  it("of a row that is gone are still those of what it belonged to", async () => {
    const lot = await database().stockLot.create({
      data: { siteId: sites.south, partId, bin: "R9", state: "usable", quantity: 1 },
    });
    await change(admin, async (tx, record) => {
      await tx.stockLot.delete({ where: { id: lot.id } });
      record({ deed: "stock:repair", entity: "StockLot", entityId: lot.id, siteId: sites.south });
      return ok(null);
    });
    const { lines } = await readAudit(admin, { thing: { kind: "part", id: partId } });
    expect(lines.map(({ deed }) => deed)).toEqual(["stock:repair", "stock:lot"]);
  });

  it("are those of the reader's sites; what belongs to no site is read by who reads all", async () => {
    await note(1, sites.north);
    await note(1, null);
    const codes = async (actor: Actor) => (await readAudit(actor, {})).lines.map(({ siteCode }) => siteCode);
    expect(new Set(await codes(ofNorth))).toEqual(new Set(["NOR"]));
    expect(new Set(await codes(admin))).toEqual(new Set(["NOR", "SUD", null]));
    const foreign = await readAudit(ofNorth, { thing: { kind: "lot", id: lotId } });
    expect(foreign).toEqual({ lines: [], next: null, of: null });
  });

  it("about people are read by who manages people", async () => {
    await note(1, null, "User");
    const viewer = personWith("viewer", null);
    const count = async (actor: Actor) => (await readAudit(actor, {})).lines.length;
    expect(await count(admin)).toBe((await count(viewer)) + 1);
  });

  it("show no values to whom amounts are not shown", async () => {
    const blind = {
      ...admin,
      grants: [{ role: "viewer" as const, siteId: null, without: ["money:read" as const] }],
    };
    const { lines } = await readAudit(blind, { thing: { kind: "lot", id: lotId } });
    expect(lines.map(({ changes, why }) => ({ changes, why }))).toEqual([
      { changes: null, why: "Found two behind the rack" },
    ]);
  });

  it("come page by page, each once, also where many were made at one instant", async () => {
    await note(25, sites.north);
    const whole = (await readAudit(admin, {}, 1000)).lines.map(({ id }) => id);
    const paged: string[] = [];
    for (let after: string | null | undefined; after !== null; ) {
      const page = await readAudit(admin, { after: after ?? undefined }, 7);
      paged.push(...page.lines.map(({ id }) => id));
      after = page.next;
    }
    expect(paged).toEqual(whole);
    const saved: string[] = [];
    for await (const { id } of readWholeAudit(admin, { area: "line" })) saved.push(id);
    expect(saved).toHaveLength(whole.length - 2);
  });

  it("are found by person, kind and period", async () => {
    const count = async (question: Parameters<typeof readAudit>[1]) =>
      (await readAudit(admin, question)).lines.length;
    expect(await count({ who: "erso", area: "stock" })).toBe(2);
    expect(await count({ who: "nobody" })).toBe(0);
    expect(await count({ who: "%" })).toBe(0);
    expect(await count({ from: "2999-01-01" })).toBe(0);
    expect(await count({ until: "2000-01-01" })).toBe(0);
  });

  it("belong to the day of the clock of the reader's sites", async () => {
    await database().auditEntry.create({
      data: {
        ...{ at: new Date("2026-05-12T22:30:00Z"), deed: "line:figures", entity: "Line" },
        ...{ entityId: "", siteId: sites.north },
      },
    });
    const count = async (day: string) => (await readAudit(admin, { from: day, until: day })).lines.length;
    // In Warsaw it was half past midnight.
    expect([await count("2026-05-12"), await count("2026-05-13")]).toEqual([0, 1]);
  });

  it("of an event that was taken back are those of its line all the same", async () => {
    const lineId = sites.lines["NOR-02"] ?? "";
    const event = await database().event.create({
      data: {
        ...{ siteId: sites.north, lineId, kind: "failure", happenedAt: new Date("2026-05-01T08:00:00Z") },
        ...{ source: "by hand", reference: "H1" },
      },
    });
    await change(admin, async (tx, record) => {
      await tx.event.delete({ where: { id: event.id } });
      record({ deed: "event:undo", entity: "Event", entityId: event.id, siteId: sites.north });
      return ok(null);
    });
    const deeds = async (code: string) =>
      (await readAudit(admin, { thing: { kind: "line", id: sites.lines[code] ?? "" } })).lines.map(
        ({ deed }) => deed,
      );
    expect(await deeds("NOR-02")).toEqual(["event:undo"]);
    expect(await deeds("SUD-01")).toEqual([]);
  });
});
