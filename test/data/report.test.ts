import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readReport } from "@/lib/data/report";
import { firstLines, reportLoss, stageCounts } from "@/lib/view/report";
import { dueDates } from "@/lib/view/reportDates";
import { decisionsAsked } from "@/lib/view/reportDecisions";
import { reportGapRows } from "@/lib/view/reportGapRows";
import { worstPools } from "@/lib/view/reportPools";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;

beforeAll(async () => {
  made = await freshDatabase("report");
  world = await makeTwoSites();
  await database().project.create({
    data: {
      ...{ siteId: world.south, lineId: world.lines["SUD-01"] ?? "", code: "SUD-01-R1", name: "Retrofit" },
      ...{ currency: "PLN", budget: 1000 },
      milestones: {
        create: [{ sequence: 1, name: "Done", weight: 1, doneOn: new Date("2026-06-01T00:00:00Z") }],
      },
      costs: {
        create: [
          {
            kind: "actual",
            amount: 1500,
            spentOn: new Date("2026-06-01T00:00:00Z"),
            text: "All",
            reference: "L-1",
          },
        ],
      },
    },
  });
});

afterAll(() => made.close());

async function report(role: "viewer" | "engineer", siteId: string | null, siteCode: string | null = null) {
  const found = await readReport(personWith(role, siteId), { asOf, siteCode });
  if (!found) throw new Error("no report");
  return found;
}

const decided = (input: Parameters<typeof decisionsAsked>[0]) =>
  decisionsAsked(input).map(({ text }) => text);

describe("the monthly report", () => {
  it("adds the group up from its lines, and its sites to the group", async () => {
    const group = reportLoss(await report("viewer", null));
    const sites = await Promise.all(["NOR", "SUD"].map((code) => report("viewer", null, code)));
    const sum = sites.reduce((all, site) => all + (reportLoss(site).total?.mean ?? 0), 0);
    expect(group.lines).toBe(4);
    expect(sum).toBeCloseTo(group.total?.mean ?? Number.NaN, 6);
  });

  it("shows the drawn span of exactly its sum, and adds ends where the draws were not added up", async () => {
    const whole = await report("viewer", null);
    const ends = (lines: typeof whole.lines) =>
      lines.reduce((sum, { result }) => sum + (result.stopLoss?.high ?? 0), 0);
    const group = reportLoss(whole);
    expect(group.isDrawn).toBe(true);
    expect(group.total?.high).toBeLessThan(ends(whole.lines));
    expect(group.total?.low).toBeLessThan(group.total?.mean ?? 0);
    const site = await report("viewer", world.north, "NOR");
    expect(site.drawnTotal).toEqual((await report("viewer", null, "NOR")).drawnTotal);
    expect(reportLoss(site).isDrawn).toBe(true);
    expect((await report("viewer", world.north)).drawnTotal).toEqual(site.drawnTotal);
    // Site by site, and so without the sum of the group.
    const grants = [world.north, world.south].map((siteId) => ({ role: "viewer" as const, siteId }));
    const both = await readReport({ ...personWith("viewer", null), grants }, { asOf, siteCode: null });
    if (!both) throw new Error("no report");
    expect(both.drawnTotal).toBeNull();
    expect(reportLoss(both)).toMatchObject({ isDrawn: false, total: { high: ends(both.lines) } });
  });

  it("is not there for a site the person may not see, nor for one that does not exist", async () => {
    const viewer = personWith("viewer", world.north);
    expect(await readReport(viewer, { asOf, siteCode: "SUD" })).toBeNull();
    expect(await readReport(viewer, { asOf, siteCode: "XXX" })).toBeNull();
    expect(await readReport({ ...viewer, grants: [] }, { asOf, siteCode: null })).toBeNull();
  });

  it("tells somebody of one site nothing of another but the stock there as one sum", async () => {
    const own = await report("viewer", world.north);
    expect(own.wholeGroup).toBe(false);
    expect(own.choices.map(({ code }) => code)).toEqual(["NOR"]);
    expect(JSON.stringify(own)).not.toMatch(/SUD/);
    expect(JSON.stringify(own)).not.toContain(world.south);
    expect(worstPools(own, 5)[0]).toMatchObject({ units: 6, usableHere: 0 });
    expect(worstPools(own, 5)[0]?.usableElsewhere).toBeGreaterThan(0.9);
  });

  it("names the lines that lose most with what drives them", async () => {
    const lines = firstLines(await report("viewer", null), 2);
    expect(lines.map(({ line }) => line.code)).toEqual(["NOR-01", "SUD-01"]);
    expect(lines[0]?.drivers).toEqual([{ label: "BW-OK-020", share: expect.closeTo(1, 9) }]);
  });

  it("counts units by stage, and what nobody recorded", async () => {
    const group = await report("viewer", null);
    expect(stageCounts(group)).toEqual([
      { stage: "repair-fed", parts: 1, units: 9 },
      { stage: "open", parts: 1, units: 3 },
    ]);
    expect(reportGapRows(group).map(({ missing, of }) => [missing, of])).toEqual([
      [4, 4],
      [1, 2],
      [4, 4],
      [0, 4],
      [0, 12],
      [0, 12],
    ]);
  });

  it("asks who answers for a cost to confirm it again once its approval has run out", async () => {
    const approved = { costOwner: "Plant finance", costApprovedOn: new Date("2025-11-01T00:00:00Z") };
    const id = world.lines["NOR-02"] ?? "";
    const until = (day: string) =>
      database().line.update({
        where: { id },
        data: { ...approved, costEvidence: "documented", costValidUntil: new Date(`${day}T00:00:00Z`) },
      });
    const asked = async () => decided(await report("viewer", null)).filter((one) => /confirm/.test(one));
    const ended = async () =>
      reportGapRows(await report("viewer", null)).find(({ what }) => /run out/.test(what));
    await until(asOf);
    expect([await asked(), await ended()]).toMatchObject([[], { missing: 0, of: 4 }]);
    await until("2026-11-29");
    expect(await ended()).toMatchObject({ missing: 1, of: 4 });
    expect(await asked()).toEqual([
      "Ask Plant finance to confirm again what a stop costs on NOR-02; the approval ran out.",
    ]);
    await database().line.update({
      where: { id },
      data: { costOwner: null, costApprovedOn: null, costValidUntil: null, costEvidence: "assumed" },
    });
  });

  it("looks six months ahead for the days of supply", async () => {
    const group = await report("viewer", null);
    expect(dueDates(group)).toEqual([
      { on: "2027-02-28", what: "Repair ends", of: "BW-OK-020", units: 9, passed: false },
    ]);
    expect(dueDates({ ...group, asOf: "2026-08-27" })).toEqual([]);
    expect(dueDates({ ...group, asOf: "2026-08-28" })).toHaveLength(1);
  });

  it("says at which site more is held than its share of the units", async () => {
    const [pool] = worstPools(await report("viewer", null), 1);
    // All usable pieces at SUD, which has 3 of the 9 units: (1 / 1) / (3 / 9).
    expect(pool?.held).toEqual({ siteCode: "SUD", index: expect.closeTo(3, 9) });
  });

  it("asks for decisions on a project over its budget and on costs nobody approved", async () => {
    const group = decided(await report("viewer", null));
    expect(group.some((text) => text.startsWith("SUD-01-R1: take"))).toBe(true);
    expect(group.some((text) => text.includes("an hour's stop costs on NOR-01"))).toBe(true);
    const north = decided(await report("viewer", world.north));
    expect(north.some((text) => text.includes("SUD"))).toBe(false);
  });
});
