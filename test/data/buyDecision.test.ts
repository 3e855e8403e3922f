import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { keepBuyDecision, readBuyDecision, readBuyDecisions } from "@/lib/data/buyDecision";
import { readBuySheet } from "@/lib/data/buySheet";
import { database } from "@/lib/data/client";
import { keepNotice } from "@/lib/data/noticeChange";
import { previewNotice } from "@/lib/data/noticeEffect";
import { readNotices } from "@/lib/data/notices";
import { canonicalJson } from "@/lib/risk/moved/canonicalJson";
import { FIRST_CHOICE, type KeepDecision } from "@/lib/schema/buyDecision";
import { buyDocument } from "@/lib/view/buyDocument";
import { buyRows } from "@/lib/view/buyTable";
import { noticeRows } from "@/lib/view/noticeList";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let familyId = "";
const planner = () => personWith("planner", null);
const day = (text: string) => new Date(`${text}T00:00:00Z`);

beforeAll(async () => {
  made = await freshDatabase("buy_decision");
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  world = await makeTwoSites();
  const family = await database().family.create({
    data: { maker: "Brindlewick", name: "Oak", itemClass: "drive" },
  });
  familyId = family.id;
  await database().part.updateMany({
    where: { number: "BW-OK-020" },
    data: { familyId, price: "2000.00", priceCurrency: "EUR", pricedOn: day("2026-10-01") },
  });
  await database().compatibilityRule.create({
    data: {
      ...{
        code: "R6",
        version: 1,
        kind: "hardware_revision",
        note: "",
        source: "bulletin",
        evidence: "documented",
      },
      terms: { family: "Oak", revision: "C3", controllers: [{ model: "Slate 5", level: "21" }] },
      changedBy: "Person",
    },
  });
  await database().controller.updateMany({ where: { designation: "NOR-01-K1" }, data: { firmware: 22 } });
  await database().controller.updateMany({ where: { designation: "NOR-02-K1" }, data: { firmware: 20 } });
});

afterAll(() => made.close());

async function wanted(own: Partial<KeepDecision> = {}, actor: Actor = planner()): Promise<KeepDecision> {
  const read = await readBuySheet(actor, { familyId, asOf });
  if (!read) throw new Error("no sheet");
  const document = buyDocument(read.basis, own.choice ?? FIRST_CHOICE, read.lastBatch);
  return {
    ...{ familyId, choice: FIRST_CHOICE, dataVersion: document.basis.dataVersion, supersedes: null },
    quantities: document.shelves.map(({ partId, siteId, proposed }) => ({
      partId,
      siteId,
      quantity: proposed,
    })),
    ...{ orderBy: "2026-12-18", names: "P. Planner", reason: "Bridge to the retrofits" },
    ...own,
  };
}

async function keep(own: Partial<KeepDecision> = {}) {
  const done = await keepBuyDecision(planner(), await wanted(own));
  if (!done.ok) throw new Error(done.error.reason);
  return done.value.decisionId;
}

describe("a decision to buy", () => {
  let first = "";

  it("splits what is bought over the shelves, whole and without a rest", async () => {
    const read = await readBuySheet(planner(), { familyId, asOf });
    const document = read && buyDocument(read.basis, FIRST_CHOICE, read.lastBatch);
    const [base] = document?.cases ?? [];
    expect(base?.quantity).toBeGreaterThan(0);
    expect(document?.shelves.reduce((sum, { proposed }) => sum + proposed, 0)).toBe(base?.quantity);
  });

  it("names the machines the last batch will not run on, and those nobody can tell of", async () => {
    const read = await readBuySheet(planner(), { familyId, asOf });
    const found = read?.lastBatch.map(({ line, machines, fails }) => [line, machines.join(), fails]);
    expect(found).toEqual([
      ["NOR-02", "M1", true],
      ["SUD-01", "M1", false],
    ]);
  });

  it("is frozen with every step, and answers the notice", async () => {
    const fields = {
      ...{ maker: "", document: "Letter 3", patterns: "Oak", successor: "", note: "" },
      ...{ noticeOn: "2020-06-15", lastOrderOn: "2027-04-30", lastShipOn: "2027-10-29", repairUntilOn: null },
      ...{
        quoteWeeks: 3,
        approvalWeeks: 5,
        purchaseWeeks: 1,
        checkedOn: asOf,
        evidence: "documented" as const,
      },
    };
    const preview = await previewNotice(planner(), fields);
    const basis = preview.ok ? preview.value.basis : "";
    const notice = await keepNotice(planner(), { fields, basis, source: null });
    const state = async () =>
      noticeRows(await readNotices(planner(), asOf), asOf).map(({ state: one }) => one);
    expect([notice.ok, await state()]).toEqual([true, ["open"]]);
    first = await keep();
    expect(await state()).toEqual(["decided"]);
    const kept = await readBuyDecision(planner(), first);
    expect(kept?.intact).toBe(true);
    expect(kept?.sheet).toMatchObject({
      names: "P. Planner",
      keptBy: "Person",
      keptOn: asOf,
      orderBy: "2026-12-18",
    });
    expect(kept?.sheet.money).toBe(2000 * (kept?.sheet.quantity ?? 0));
    expect(kept?.sheet.document.cases[0]?.groups[0]?.exposure).toBeGreaterThan(0);
  });

  it("reads the same to the byte whatever changes later", async () => {
    const before = await readBuyDecision(planner(), first);
    await database().stockLot.updateMany({ data: { quantity: 40 } });
    await database().part.updateMany({ where: { familyId }, data: { price: "9.00" } });
    await database().dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });
    const live = await readBuySheet(planner(), { familyId, asOf });
    const now = live && buyDocument(live.basis, FIRST_CHOICE, live.lastBatch);
    expect(now?.cases[0]?.quantity).not.toBe(before?.sheet.document.cases[0]?.quantity);
    const after = await readBuyDecision(planner(), first);
    expect(canonicalJson(after)).toBe(canonicalJson(before));
    expect(buyRows(after?.sheet.document ?? before?.sheet.document ?? (null as never))).toEqual(
      buyRows(before?.sheet.document ?? (null as never)),
    );
  });

  it("shows when somebody touched the stored text", async () => {
    const { sheet } = await database().buyDecision.findUniqueOrThrow({ where: { id: first } });
    const other = sheet.replace("P. Planner", "Q. Planner");
    await database().buyDecision.update({ where: { id: first }, data: { sheet: other } });
    expect((await readBuyDecision(planner(), first))?.intact).toBe(false);
    await database().buyDecision.update({ where: { id: first }, data: { sheet } });
  });

  it("gives way to a later one, and stays on record", async () => {
    const overtaken = await keepBuyDecision(planner(), await wanted());
    expect(overtaken.ok || overtaken.error.code).toBe("conflict");
    const second = await keep({ supersedes: first, reason: "Stock was counted" });
    expect((await readBuyDecision(planner(), first))?.supersededById).toBe(second);
    expect((await readBuyDecision(planner(), second))?.sheet.supersedes).toBe(first);
    const list = await readBuyDecisions(planner(), familyId);
    expect(list.map(({ id, stands }) => [id, stands])).toEqual([
      [second, true],
      [first, false],
    ]);
  });

  it("is refused on figures that changed since, and for shelves that are not on the sheet", async () => {
    const standing = (await readBuyDecisions(planner(), familyId))[0]?.id ?? null;
    const stale = await keepBuyDecision(planner(), {
      ...(await wanted({ supersedes: standing })),
      dataVersion: 0,
    });
    expect(stale.ok || stale.error.reason).toMatch(/figures changed/);
    const foreign = [{ partId: familyId, siteId: world.north, quantity: 1 }];
    const strange = await keepBuyDecision(
      planner(),
      await wanted({ supersedes: standing, quantities: foreign }),
    );
    expect(strange.ok).toBe(false);
  });

  it("is seen whole or not at all: not by a person of one of its sites", async () => {
    const own = personWith("planner", world.north);
    expect(await readBuyDecision(own, first)).toBeNull();
    expect(await readBuyDecisions(own, familyId)).toEqual([]);
    const mine = await keepBuyDecision(own, await wanted({}, own));
    expect(mine.ok).toBe(true);
    expect(JSON.stringify(await readBuyDecisions(own, familyId))).not.toContain("SUD");
  });
});
