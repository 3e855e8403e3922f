import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { search } from "@/lib/data/search";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, day, fillSharedShelf, personWith, type SharedShelf } from "../support/sharedShelf";

let made: FreshDatabase;
let group: SharedShelf;

beforeAll(async () => {
  made = await freshDatabase("search");
  group = await fillSharedShelf();
});

afterAll(() => made.close());

const find = (asked: string, actor: Actor = personWith("viewer", null), on = asOf) =>
  search(actor, { asked, asOf: on });
const titles = async (asked: string, actor?: Actor) => (await find(asked, actor)).map((hit) => hit.title);

describe("a search", () => {
  it.each(["TM-HR-020", "tmhr020", "tm hr 020", "TM–HR–020", "ＴＭ-HR-020"])(
    "finds a part written %s",
    async (asked) => {
      expect((await find(asked))[0]).toMatchObject({
        kind: "part",
        title: "TM-HR-020",
        href: `/parts/${group.partId}`,
      });
    },
  );

  it("finds a part by another spelling, and says which", async () => {
    expect((await find("axis drive 20"))[0]).toMatchObject({
      title: "TM-HR-020",
      detail: expect.stringContaining("also Axis drive 20"),
    });
  });

  it("finds a serial number and says where the unit is", async () => {
    expect((await find("nor-883"))[0]).toEqual({
      kind: "serial",
      title: "NOR-883",
      detail: "TM-HR-020 revision B1 · in NOR-01 / M04 / -U13",
      href: "/lines/NOR-01#place-M04--U13",
    });
  });

  it("knows that a unit was taken out, from that day on", async () => {
    await database().placement.updateMany({
      where: { unit: { serial: "NOR-884" } },
      data: { untilOn: day("2026-11-20") },
    });
    expect((await find("NOR-884"))[0]).toMatchObject({
      detail: "TM-HR-020 revision B1 · taken out of NOR-01 / M04 / -U14 on 2026-11-20",
      href: `/parts/${group.partId}#NOR-884`,
    });
    expect((await find("NOR-884", personWith("viewer", null), "2026-11-19"))[0]?.href).toBe(
      "/lines/NOR-01#place-M04--U14",
    );
  });

  it("finds lines, machines, axes, places and controllers", async () => {
    expect((await find("Carton NOR"))[0]).toMatchObject({ kind: "line", title: "NOR-01" });
    expect((await find("NOR-01 M04"))[0]).toMatchObject({ kind: "machine", title: "NOR-01 / M04" });
    expect((await find("NOR-01/M04/X7"))[0]).toMatchObject({ kind: "axis", title: "NOR-01 / M04 / X7" });
    expect((await find("Feed 7"))[0]).toMatchObject({ kind: "axis", title: "NOR-01 / M04 / X7" });
    expect((await find("-U12"))[0]).toMatchObject({ kind: "position", title: "NOR-01 / M04 / -U12" });
    expect((await find("NOR-K1"))[0]).toMatchObject({
      kind: "controller",
      href: "/lines/NOR-01#controller-NOR-K1",
    });
  });

  it("finds what lies in a bin, only at the reader's sites", async () => {
    expect((await find("r9 s"))[0]).toEqual({
      kind: "bin",
      title: "R9-S",
      detail: "TM-HR-020 at SUD",
      href: `/parts/${group.partId}#bin-SUD-R9-S`,
    });
    expect(await find("R9-S", personWith("viewer", group.north))).toEqual([]);
  });

  it("leads each hit to a place of its own", async () => {
    const hrefs = (await find("NOR-01")).map((hit) => hit.href);
    expect(new Set(hrefs).size).toBe(hrefs.length);
    expect(hrefs.length).toBeGreaterThan(5);
  });

  it("puts the whole text before beginnings, and beginnings before the inside", async () => {
    const drive = { maker: "Tarnholt Motion", description: "Drive" };
    await database().part.createMany({
      data: ["ZQ-1", "ZQ-12", "AZQ-1"].map((number) => ({ ...drive, number, itemClass: "drive" as const })),
    });
    expect(await titles("zq1")).toEqual(["ZQ-1", "ZQ-12", "AZQ-1"]);
  });

  it("finds nothing of another site", async () => {
    const viewer = personWith("viewer", group.north);
    for (const asked of ["SUD-01", "SUD-881", "SUD-K1", "77-1234", "Carton SUD"])
      expect(await find(asked, viewer)).toEqual([]);
    expect(JSON.stringify(await find("M04", viewer))).not.toContain("SUD");
    expect(await titles("SUD-01")).toContain("SUD-01");
    expect(await titles("77-1234")).toEqual(["TM-HR-020"]);
  });

  it("finds nothing for somebody without a site", async () => {
    const nobody = { ...personWith("viewer", null), grants: [] };
    for (const asked of ["TM-HR-020", "NOR-01", "NOR-883", "Slate"])
      expect(await find(asked, nobody)).toEqual([]);
  });

  it("takes the signs of a pattern as nothing, and a single sign as too little", async () => {
    expect(await find("%%")).toEqual([]);
    expect(await find("__")).toEqual([]);
    expect(await find("X")).toEqual([]);
    expect(await find('\'; DROP TABLE "Part"; --')).toEqual([]);
    expect(await titles("TM%HR")).toContain("TM-HR-020");
  });

  it("gives twenty hits at most", async () => {
    await database().part.createMany({
      data: Array.from({ length: 30 }, (_, i) => ({
        ...{ maker: "Many", number: `MANY-${i}`, description: "Drive", itemClass: "drive" as const },
      })),
    });
    expect(await find("many")).toHaveLength(20);
  });
});
