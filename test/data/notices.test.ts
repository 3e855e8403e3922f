import { createHash } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readDatesAhead } from "@/lib/data/datesAhead";
import { keepNotice, withdrawNotice } from "@/lib/data/noticeChange";
import { previewNotice, proposeNotice } from "@/lib/data/noticeEffect";
import { readNotice, readNoticeSource, readNotices } from "@/lib/data/notices";
import { readPartFacts } from "@/lib/data/partFacts";
import type { NoticeFields, NoticeSource } from "@/lib/schema/notice";
import { datesAhead } from "@/lib/view/datesAhead";
import { noticeRows } from "@/lib/view/noticeList";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let openPart = "";
const planner = () => personWith("planner", null);
const TEXT =
  "Bulletin 7 of 30 October 2026. BW-HX-100 and TM HE 020 end: last orders six months after this notice.";
const pasted = (text: string): NoticeSource => ({
  fileName: null,
  bytes: async () => new TextEncoder().encode(text),
});

const fields = (own: Partial<NoticeFields> = {}): NoticeFields => ({
  ...{ maker: "", document: "Bulletin 7", patterns: "TM-HE-*", successor: "", note: "" },
  ...{ noticeOn: "2026-10-30", lastOrderOn: "2027-04-30", lastShipOn: null, repairUntilOn: null },
  ...{ quoteWeeks: 3, approvalWeeks: 5, purchaseWeeks: 1, checkedOn: asOf, evidence: "documented" },
  ...own,
});

const versionNow = async () => (await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } })).version;

async function keep(own: Partial<NoticeFields> = {}, source: NoticeSource | null = null) {
  const preview = await previewNotice(planner(), fields(own));
  if (!preview.ok) throw new Error(preview.error.reason);
  return keepNotice(planner(), { fields: fields(own), basis: preview.value.basis, source });
}

beforeAll(async () => {
  made = await freshDatabase("notices");
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  world = await makeTwoSites();
  await database().line.update({ where: { code: "SUD-02" }, data: { costPerHour: 40_000 } });
  openPart = (await database().part.findFirstOrThrow({ where: { number: "TM-HE-020" } })).id;
  await database().stockLot.create({
    data: { siteId: world.south, partId: openPart, bin: "R3", state: "usable", quantity: 1 },
  });
});

afterAll(() => made.close());

describe("a notice", () => {
  it("is read against the parts on record", async () => {
    const found = await proposeNotice(planner(), pasted(TEXT));
    expect(found.ok && found.value).toMatchObject({ patterns: ["TM-HE-020"], unknown: ["BW-HX-100"] });
  });

  it("shows before it is kept what it touches, and keeps nothing", async () => {
    const before = await versionNow();
    const preview = await previewNotice(planner(), fields());
    expect(preview.ok && preview.value).toMatchObject({
      ...{ units: 3, lines: [{ code: "SUD-02", units: 3 }], sites: [{ code: "SUD", units: 3 }] },
      ...{ orderByOn: "2027-02-26", everySite: true, odd: [] },
    });
    const [part] = preview.ok ? preview.value.parts : [];
    expect([part?.stageBefore, part?.stageAfter]).toEqual(["open", "buy-window"]);
    // Once its one spare cannot be ordered again, the line loses more.
    const [line] = preview.ok ? preview.value.moved : [];
    expect(line?.code).toBe("SUD-02");
    expect(line?.after.mean).toBeGreaterThan(line?.before.mean ?? Infinity);
    expect(await versionNow()).toBe(before);
    expect(await database().notice.count()).toBe(0);
  });

  it("shows a person of one site that site alone", async () => {
    const preview = await previewNotice(
      personWith("planner", world.north),
      fields({ patterns: "BW-OK-020", lastShipOn: "2027-10-29" }),
    );
    const seen = preview.ok ? preview.value : null;
    expect(seen?.sites.map(({ code }) => code)).toEqual(["NOR"]);
    expect(seen?.everySite).toBe(false);
    expect(JSON.stringify(seen)).not.toContain("SUD");
  });

  it("is kept as one change: dates with their source, the file with its hash, the day to order by", async () => {
    const before = await versionNow();
    const kept = await keep({}, pasted(TEXT));
    if (!kept.ok) throw new Error(kept.error.reason);
    expect(await versionNow()).toBe(before + 1n);
    const { noticeId } = kept.value;
    const history = await readPartFacts(planner(), { partId: openPart, familyId: null, asOf });
    expect(history.dates).toMatchObject({
      noticeOn: "2026-10-30",
      lastOrderOn: "2027-04-30",
      orderByOn: "2027-02-26",
    });
    expect(history.facts[0]).toMatchObject({ source: "Bulletin 7", evidence: "documented", checkedOn: asOf });
    const file = await readNotice(planner(), { noticeId, asOf });
    expect(file?.file?.hash).toBe(createHash("sha256").update(TEXT).digest("hex"));
    const source = await readNoticeSource(planner(), noticeId);
    expect(Buffer.from(source?.bytes ?? []).toString()).toBe(TEXT);
    const dates = datesAhead(await readDatesAhead(planner(), asOf));
    expect(dates.find(({ kind, of }) => kind === "order-by" && of === "TM-HE-020")?.on).toBe("2027-02-26");
  });

  it("stands in the list with the days left, before what is decided or taken back", async () => {
    const [row] = noticeRows(await readNotices(planner(), asOf), asOf);
    // 30 November to 26 February: 31 + 31 + 26 days.
    expect(row).toMatchObject({ state: "open", daysLeft: 88, units: 3 });
    expect(await readNotices(planner(), "2026-11-29")).toEqual([]);
    expect(await readNotices({ ...planner(), grants: [] }, asOf)).toEqual([]);
    const own = await readNotices(personWith("planner", world.north), asOf);
    expect(own[0]?.units).toBe(0);
  });

  it("is refused when the records changed since it was looked over, and when no part fits", async () => {
    const stale = await keepNotice(planner(), { fields: fields(), basis: "of another day", source: null });
    expect(stale.ok || stale.error.code).toBe("conflict");
    const none = await previewNotice(planner(), fields({ patterns: "ZZ-*" }));
    expect(none.ok || none.error.fields?.patterns).toMatch(/No part/);
    const ahead = await previewNotice(planner(), fields({ checkedOn: "2026-12-01" }));
    expect(ahead.ok || ahead.error.fields?.checkedOn).toMatch(/ahead/);
    const early = await previewNotice(planner(), fields({ lastShipOn: "2027-04-29" }));
    expect(early.ok || early.error.fields?.lastShipOn).toMatch(/before the last order/);
    const old = { patterns: "BW-OK-020", lastOrderOn: "2027-04-30", noticeOn: null };
    const carried = await previewNotice(planner(), fields(old));
    expect(carried.ok || carried.error.fields?.lastShipOn).toMatch(
      /2022-06-30.*last shipment, .* as in bulletin/,
    );
    const round = await previewNotice(planner(), fields({ successor: "TM-HE-020" }));
    expect(round.ok || round.error.fields?.successor).toMatch(/follow itself/);
  });

  it("says which days give way and carries over what it does not name", async () => {
    const own = { document: "Letter 8", noticeOn: null, lastOrderOn: "2027-06-30", lastShipOn: "2028-01-31" };
    const preview = await previewNotice(planner(), fields(own));
    const [part] = preview.ok ? preview.value.parts : [];
    expect(part?.after).toMatchObject({
      noticeOn: "2026-10-30",
      lastOrderOn: "2027-06-30",
      orderByOn: "2027-04-28",
    });
    expect(part?.source).toBe("Letter 8; notice as in Bulletin 7");
  });

  it("is taken back in one step: what held before holds again", async () => {
    const { facts } = await readPartFacts(planner(), { partId: openPart, familyId: null, asOf });
    const own = { document: "Letter 9", lastOrderOn: "2026-12-31", successor: "BW-OK-020" };
    const kept = await keep(own);
    if (!kept.ok) throw new Error(kept.error.reason);
    const before = await versionNow();
    expect(await database().successor.count()).toBe(1);
    expect((await withdrawNotice(planner(), kept.value)).ok).toBe(true);
    expect(await versionNow()).toBe(before + 1n);
    expect((await readPartFacts(planner(), { partId: openPart, familyId: null, asOf })).facts).toEqual(facts);
    expect(await database().successor.count()).toBe(0);
    const rows = noticeRows(await readNotices(planner(), asOf), asOf);
    expect(rows.map(({ document, state }) => [document, state])).toEqual([
      ["Bulletin 7", "open"],
      ["Letter 9", "taken-back"],
    ]);
    expect((await withdrawNotice(planner(), kept.value)).ok).toBe(false);
  });

  it("is written once for a family when all its parts are meant", async () => {
    const family = await database().family.create({
      data: { maker: "Brindlewick", name: "Oak", itemClass: "drive" },
    });
    await database().part.updateMany({ where: { number: "TM-HE-020" }, data: { familyId: family.id } });
    const other = await database().part.create({
      data: {
        maker: "Brindlewick",
        number: "TM-HE-040",
        description: "",
        itemClass: "drive",
        familyId: family.id,
      },
    });
    const kept = await keep({ document: "Letter 10", patterns: "Oak" });
    if (!kept.ok) throw new Error(kept.error.reason);
    // TM-HE-020 has statements of its own, which a family's would not outweigh.
    const facts = await database().lifecycleFact.findMany({ where: { source: { startsWith: "Letter 10" } } });
    expect(facts.map(({ partId, familyId }) => [partId, familyId])).toEqual(
      expect.arrayContaining([
        [openPart, null],
        [null, family.id],
      ]),
    );
    expect(facts).toHaveLength(2);
    const dates = await readPartFacts(planner(), { partId: other.id, familyId: family.id, asOf });
    expect(dates.dates.lastOrderOn).toBe("2027-04-30");
  });
});
