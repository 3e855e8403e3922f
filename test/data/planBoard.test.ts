import { randomUUID } from "node:crypto";
import { readSheet } from "read-excel-file/node";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { acceptRisk, endAcceptance } from "@/lib/data/acceptanceChange";
import { readAcceptances } from "@/lib/data/acceptances";
import { database } from "@/lib/data/client";
import { readBoard } from "@/lib/data/planBoard";
import { makeBoard, pinLine, placeWay } from "@/lib/data/planBoardChange";
import { nextIssue, submitBoard } from "@/lib/data/planBoardIssue";
import { readPlanInputs } from "@/lib/data/planInputs";
import { stateFigure, withdrawFigure } from "@/lib/data/planInputsChange";
import { workbookOfSheets } from "@/lib/reports/workbook";
import { acceptanceState } from "@/lib/view/acceptance";
import type { BoardPage } from "@/lib/view/planBoard";
import { figureAt } from "@/lib/view/planInputs";
import { requestSheets, requestTables } from "@/lib/view/planRequest";
import { load } from "@/seed/load";
import { lineId, siteId } from "@/seed/scenarios/showcase/sites";
import { small } from "@/seed/scenarios/small";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

const asOf = "2026-11-30";
let fresh: FreshDatabase;
let admin: Actor;
let engineer: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("plan board");
  await load(fresh.url, "small", small());
  admin = await makeActor("admin");
  engineer = await makeActor("engineer", siteId("THO"));
});

afterAll(() => fresh.close());

const said = { source: "Letter", owner: "Finance controller", evidence: "documented" as const };
const group = {
  kind: "budget" as const,
  siteId: null,
  regionId: null,
  obligationId: null,
  year: 2027,
  currency: "EUR",
};

describe("planning figures", () => {
  it("are stated by one of two who saw the same; the other hears what stands there now", async () => {
    const { figures } = await readPlanInputs(admin, asOf);
    const version = figureAt(figures, { kind: "budget", year: 2027 })?.version ?? null;
    const state = (value: string) => stateFigure(admin, { ...group, ...said, value, version });
    const first = await state("2000000");
    const second = await state("100");
    expect(first.ok).toBe(true);
    expect(second).toMatchObject({ error: { code: "conflict", reason: expect.stringContaining("2000000") } });
    const now = figureAt((await readPlanInputs(admin, asOf)).figures, { kind: "budget", year: 2027 });
    expect([now?.value, now?.statedOn, now?.owner]).toEqual([2_000_000, asOf, "Finance controller"]);
    expect(await database().auditEntry.count({ where: { entity: "PlanFigure", deed: "figure:state" } })).toBe(
      1,
    );
  });

  it("of the group are neither seen nor written by somebody of one site", async () => {
    const { figures, years, seesGroup } = await readPlanInputs(engineer, asOf);
    expect([figureAt(figures, { kind: "budget", year: 2027 }), years, seesGroup]).toEqual([null, [], false]);
    expect(figures.some((one) => one.siteId === siteId("KAR"))).toBe(false);
    expect(await stateFigure(engineer, { ...group, ...said, value: "1", version: null })).toMatchObject({
      error: { code: "missing" },
    });
    const weeks = {
      ...group,
      kind: "engineer_weeks" as const,
      currency: null,
      ...said,
      value: "9",
      year: 2028,
    };
    const own = figureAt(figures, { kind: "engineer_weeks", siteId: siteId("THO"), year: 2028 });
    const written = await stateFigure(engineer, {
      ...weeks,
      siteId: siteId("THO"),
      version: own?.version ?? null,
    });
    expect(written.ok).toBe(true);
    const foreign = await stateFigure(engineer, { ...weeks, siteId: siteId("KAR"), version: 1 });
    expect(foreign).toMatchObject({ error: { code: "missing" } });
  });

  it("that are withdrawn are not stated, which is not zero", async () => {
    const before = figureAt((await readPlanInputs(admin, asOf)).figures, { kind: "reserve" });
    expect(before?.value).toBe(0.1);
    const gone = await withdrawFigure(admin, { figureId: before?.id ?? "", version: before?.version ?? 0 });
    expect(gone.ok).toBe(true);
    expect(figureAt((await readPlanInputs(admin, asOf)).figures, { kind: "reserve" })).toBeNull();
    const back = { ...group, ...said, kind: "reserve" as const, year: null, currency: null, value: "10" };
    expect((await stateFigure(admin, { ...back, version: null })).ok).toBe(true);
    expect(figureAt((await readPlanInputs(admin, asOf)).figures, { kind: "reserve" })?.value).toBe(0.1);
  });
});

async function make(): Promise<BoardPage> {
  const made = await makeBoard(admin, { name: "=Three years", asOf });
  if (!made.ok) throw new Error(made.error.reason);
  return read(made.value.planId);
}

async function read(planId: string, whole = false): Promise<BoardPage> {
  const page = await readBoard(admin, { planId, whole });
  if (!page) throw new Error("no such plan");
  return page;
}

const KAR = lineId("KAR-03");

async function place(page: BoardPage, key: string, slotName: RegExp | null) {
  const way = page.view.lines.flatMap(({ ways }) => ways).find(({ id }) => id === key);
  const slot = slotName === null ? null : (way?.slots.find(({ name }) => slotName.test(name))?.id ?? "none");
  const { id: planId, version } = page;
  const placed = await placeWay(admin, { planId, version, lineId: KAR, option: key, slot });
  if (!placed.ok) throw new Error(placed.error.reason);
  return read(planId);
}

describe("a plan over years", () => {
  it("knows controllers first where they have to be swapped, and leaves lines with a project out", async () => {
    const { view } = await make();
    expect(view.years.map(({ year }) => year)).toEqual([2027, 2028, 2029]);
    const line = view.lines.find(({ code }) => code === "KAR-03");
    expect(line?.ways.map(({ id, stage }) => [id, stage])).toEqual([
      ["KAR-03:controller", 1],
      ["KAR-03:full", 2],
      ["KAR-03:weekends", 2],
    ]);
    expect(view.unplannable.find(({ code }) => code === "KAR-02")?.why).toMatch(/KAR-02-R1/);
  });

  it("shows at once what a place costs, breaks and brings, and the days that follow", async () => {
    let page = await make();
    page = await place(page, "KAR-03:full", /Summer shutdown 2028/);
    expect(page.view.broken.map(({ what }) => what)).toEqual(
      expect.arrayContaining([expect.stringMatching(/^KAR-03: .* waits for what comes first$/)]),
    );
    page = await place(page, "KAR-03:controller", /Summer shutdown 2027/);
    expect(page.view.broken.filter(({ lineIds }) => lineIds.includes(KAR))).toEqual([]);
    expect(page.view.worth.worth).toBeGreaterThan(0);
    const spent = page.view.years.reduce((sum, one) => sum + one.spent, 0);
    expect(spent).toBeCloseTo(page.view.worth.spent, 3);
    expect(page.view.cash.reduce((sum, { euros }) => sum + euros, 0)).toBeCloseTo(spent, 3);
    const [controller] = page.view.lines.find(({ lineId: id }) => id === KAR)?.placed ?? [];
    // Starts 5 Jul 2027; 22.5 weeks of lead time, purchase and test before it are 158 days.
    expect([controller?.startsOn, controller?.orderBy]).toEqual(["2027-07-05", "2027-01-28"]);
    const stored = await database().planLine.findFirstOrThrow({ where: { planId: page.id, lineId: KAR } });
    expect([stored.funded, stored.cost.toNumber()]).toEqual([true, expect.closeTo(spent, 1)]);
  });

  it("is changed by one of two who saw the same", async () => {
    const page = await make();
    const pin = (reason: string) =>
      pinLine(admin, { planId: page.id, version: page.version, lineId: KAR, pin: "in", reason });
    const answers = [await pin("Quotation in hand"), await pin("Another")];
    expect(answers.map(({ ok }) => ok)).toEqual([true, false]);
    const line = (await read(page.id)).view.lines.find(({ lineId: id }) => id === KAR);
    expect([line?.pin, line?.pinReason]).toEqual(["in", "Quotation in hand"]);
  });

  it("is not there for somebody of one of its sites, just as one that does not exist", async () => {
    const page = await make();
    expect(await readBoard(engineer, { planId: page.id, whole: false })).toBeNull();
    const option = { lineId: KAR, option: "KAR-03:controller", slot: null };
    for (const planId of [page.id, randomUUID()])
      expect(await placeWay(engineer, { planId, version: 1, ...option })).toMatchObject({
        error: { code: "missing" },
      });
  });

  it("stays as it was put forward whatever changes later, and the next issue starts from it", async () => {
    let page = await place(await make(), "KAR-03:controller", /Summer shutdown 2027/);
    const put = await submitBoard(admin, { planId: page.id, version: page.version });
    expect(put.ok).toBe(true);
    page = await read(page.id);
    const budget = page.view.years[0]?.budget;
    expect(budget).toBe(2_000_000);
    const { figures } = await readPlanInputs(admin, asOf);
    const version = figureAt(figures, { kind: "budget", year: 2027 })?.version ?? null;
    expect((await stateFigure(admin, { ...group, ...said, value: "777777", version })).ok).toBe(true);
    expect((await read(page.id)).view.years[0]?.budget).toBe(budget);
    const mark = { planId: page.id, version: page.version };
    const moved = { ...mark, lineId: KAR, option: "KAR-03:controller", slot: null };
    expect(await placeWay(admin, moved)).toMatchObject({ error: { code: "impossible" } });
    await expect(
      database().planSlot.deleteMany({ where: { planLine: { planId: page.id } } }),
    ).rejects.toThrow(/stays as it stood/);
    const next = await nextIssue(admin, mark);
    if (!next.ok) throw new Error(next.error.reason);
    const issue = await read(next.value.planId);
    expect([issue.issue, issue.former?.id, issue.status]).toEqual([2, page.id, "draft"]);
    expect(issue.view.choices).toEqual(page.view.choices);
    expect(issue.view.years[0]?.budget).toBe(777_777);
  });
});

describe("the capital request", () => {
  it("has in its workbook the numbers and dates of the page, and no formula", async () => {
    const placed = await place(await make(), "KAR-03:controller", /Summer shutdown 2027/);
    const page = await read(placed.id, true);
    const bytes = Buffer.from(await workbookOfSheets(requestSheets(page)));
    const table = requestTables(page).find(({ title }) => title === "What is requested");
    const sheet = await readSheet(bytes, "What is requested");
    expect(sheet.slice(1).map((row) => row.map(plain))).toEqual(table?.rows);
    expect(sheet[1]?.[5]).toBeInstanceOf(Date);
    const considered = await readSheet(bytes, "KAR-03 ways considered");
    expect(considered[1]?.[0]).toBe("Do nothing");
    const cells = (
      await Promise.all(requestSheets(page).map(({ name }) => readSheet(bytes, name.slice(0, 31))))
    ).flat(2);
    expect(cells.filter((cell) => typeof cell === "string" && /^[=+@]/.test(cell))).toEqual([]);
  });
});

const plain = (cell: unknown) => (cell instanceof Date ? cell.toISOString().slice(0, 10) : cell);

describe("an acceptance of risk", () => {
  it("keeps the loss of its day, and comes back to be looked at when it runs out", async () => {
    const wanted = {
      lineId: KAR,
      acceptedBy: "Plant manager KAR",
      until: "2027-06-30",
      reason: "Product ends",
    };
    const made = await acceptRisk(admin, wanted);
    if (!made.ok) throw new Error(made.error.reason);
    const [one] = await readAcceptances(admin, { asOf, lineId: KAR });
    if (!one) throw new Error("not read");
    expect(one.loss?.mean).toBeGreaterThan(0);
    expect([one.acceptedOn, acceptanceState(one, "2027-06-30"), acceptanceState(one, "2027-07-01")]).toEqual([
      asOf,
      "held",
      "review",
    ]);
    expect(await acceptRisk(engineer, wanted)).toMatchObject({ error: { code: "missing" } });
    expect(await acceptRisk(admin, { ...wanted, until: asOf })).toMatchObject({
      error: { code: "impossible" },
    });
    expect((await endAcceptance(admin, made.value)).ok).toBe(true);
    expect(await endAcceptance(admin, made.value)).toMatchObject({ error: { code: "conflict" } });
  });
});
