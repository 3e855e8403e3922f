import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { database } from "@/lib/data/client";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { freezeInput, thaw } from "@/lib/data/group/snapshotBytes";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { asOf, day, fillSharedShelf, type SharedShelf } from "@/test/support/sharedShelf";

let fresh: FreshDatabase;
let world: SharedShelf;

beforeAll(async () => {
  fresh = await freshDatabase("ahead");
  world = await fillSharedShelf();
  await database().part.update({
    where: { id: world.partId },
    data: { repairYield: "0.6", repairTurnaroundDays: 35 },
  });
});
afterAll(() => fresh.close());
beforeEach(async () => {
  await database().repairOrder.deleteMany();
  await database().project.deleteMany();
});

const input = (on = asOf) => database().$transaction((tx) => loadGroupInput(tx, on));
const poolOf = async (on = asOf) => (await input(on)).pools.find(({ id }) => id === world.partId);

describe("units out for repair", () => {
  const out = (reference: string, sentOn: string, more: object = {}) => ({
    ...{ siteId: world.north, partId: world.partId, reference, sentOn: day(sentOn), ...more },
  });

  test("arrive on their day, those of one day together; without one a turn-around after they were sent", async () => {
    await database().repairOrder.createMany({
      data: [
        out("1", "2026-11-01", { dueOn: day("2026-12-20") }),
        out("2", "2026-11-05", { dueOn: day("2026-12-20"), siteId: world.south }),
        out("3", "2026-11-20"),
        out("4", "2026-06-01", { dueOn: day("2026-08-01") }),
      ],
    });
    expect((await poolOf())?.arrivals).toEqual([
      { on: "2026-08-01", pieces: 1, works: 0.6 },
      { on: "2026-12-20", pieces: 2, works: 0.6 },
      { on: "2026-12-25", pieces: 1, works: 0.6 },
    ]);
  });

  test("are those of the day: not sent yet, back already and beyond repair are none, back later is one", async () => {
    await database().repairOrder.createMany({
      data: [
        out("1", "2026-12-01"),
        out("2", "2026-10-01", { returnedOn: day("2026-11-30"), finding: "repaired" }),
        out("3", "2026-10-02", { finding: "beyond repair" }),
        out("4", "2026-10-03", { returnedOn: day("2026-12-03"), finding: "beyond repair" }),
      ],
    });
    expect((await poolOf())?.arrivals).toEqual([{ on: "2026-11-07", pieces: 1, works: 0.6 }]);
    expect((await poolOf("2026-12-05"))?.arrivals?.map(({ on }) => on)).toEqual(["2027-01-05"]);
  });

  test("reach the shelf in the evaluation", async () => {
    const before = evaluate(await input(), likelyAssumptions).pools.find(
      ({ poolId }) => poolId === world.partId,
    );
    await database().repairOrder.create({ data: out("1", "2026-11-01", { dueOn: day("2027-01-10") }) });
    const after = evaluate(await input(), likelyAssumptions).pools.find(
      ({ poolId }) => poolId === world.partId,
    );
    expect([before?.arrivals, after?.arrivals]).toEqual([0, 0.6]);
    expect(after?.noSpareByMonth[0]?.mean).toBe(before?.noSpareByMonth[0]?.mean);
    expect(after?.noSpareByMonth[24]?.mean).toBeLessThan(before?.noSpareByMonth[24]?.mean ?? 0);
  });
});

describe("units that projects take out", () => {
  async function plan(code: string, removal: { units: number; leavesOn: string; kept?: boolean }, more = {}) {
    const line = await database().line.findFirstOrThrow({ where: { code: "NOR-01" } });
    const { units, leavesOn, kept = true } = removal;
    await database().project.create({
      data: {
        ...{ siteId: world.north, lineId: line.id, code, name: code, currency: "EUR", budget: 1000 },
        ...{ status: "in_work", ...more },
        removals: { create: { lineId: line.id, partId: world.partId, units, leavesOn: day(leavesOn), kept } },
      },
    });
    return line.id;
  }
  const leaves = async (on = asOf) => (await input(on)).installed.filter((row) => row.leaves);

  test("leave their line on their day, kept or not, in the order of the days", async () => {
    const lineId = await plan("P1", { units: 5, leavesOn: "2027-08-01", kept: false });
    await plan("P2", { units: 2, leavesOn: "2027-02-26" });
    expect(await leaves()).toMatchObject([
      {
        ...{ lineId, poolId: world.partId },
        leaves: [
          { on: "2027-02-26", units: 2, kept: true },
          { on: "2027-08-01", units: 5, kept: false },
        ],
      },
    ]);
    const pool = evaluate(await input(), likelyAssumptions).pools.find(
      ({ poolId }) => poolId === world.partId,
    );
    expect([pool?.installed, pool?.leaving, pool?.released]).toEqual([10, 7, 1.3]);
  });

  test("stay when the project is closed or parked, and when their day has passed", async () => {
    await plan("P1", { units: 1, leavesOn: "2027-08-01" }, { status: "parked" });
    await plan("P2", { units: 2, leavesOn: "2027-08-01" }, { status: "closed" });
    await plan("P3", { units: 3, leavesOn: "2026-11-29" });
    expect(await leaves()).toEqual([]);
    expect((await leaves("2026-11-29"))[0]?.leaves).toEqual([{ on: "2026-11-29", units: 3, kept: true }]);
  });

  test("go into what a snapshot freezes; a set of assumptions of before has the likely values for them", async () => {
    await plan("P1", { units: 2, leavesOn: "2027-02-26" });
    const now = await input();
    const { releaseWorks: _, repairWorks: __, ...older } = likelyAssumptions;
    const thawed = thaw({ input: freezeInput(now), assumptions: older });
    expect(thawed.input.installed).toEqual(now.installed);
    expect(thawed.assumptions).toEqual(likelyAssumptions);
  });
});
