import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { partEvents, settleEvents } from "@/lib/data/eventMatchChange";
import { readEvents, readLikelyPairs, readSettledPairs } from "@/lib/data/events";
import { loadExperience } from "@/lib/data/group/loadExperience";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
const ids: Record<string, string> = {};
const engineer = () => personWith("engineer", null);

interface Told {
  readonly at: string;
  readonly source?: string;
  readonly line?: string;
  readonly bare?: boolean;
  readonly hours?: number;
}

/** An event at the first place of a line; bare ones know the line and the class alone, as a stop log does. */
async function tell(
  reference: string,
  { at, source = "work order", line = "NOR-01", bare = false, hours }: Told,
) {
  const lineId = world.lines[line] ?? "";
  const position = await database().position.findFirstOrThrow({
    where: { machine: { lineId } },
    include: { machine: { include: { line: true } } },
    orderBy: { designation: "asc" },
  });
  const place = bare ? {} : { positionId: position.id, partId: position.partId };
  const { id } = await database().event.create({
    data: {
      ...{ siteId: position.machine.line.siteId, lineId, machineId: position.machineId, ...place },
      ...{ itemClass: "drive", kind: "failure", happenedAt: new Date(at), source, reference },
      downtimeHours: hours ?? null,
    },
  });
  ids[reference] = id;
}

const id = (reference: string) => ids[reference] ?? "";
const versionNow = async () => (await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } })).version;
const pairsNow = async (actor = engineer()) =>
  (await readLikelyPairs(actor, asOf)).map(({ first, second }) => [first.reference, second.reference].sort());
const failures = async () =>
  (await loadExperience(database(), asOf)).reduce((sum, row) => sum + row.failures, 0);
const said = (verdict: "same" | "different", keptId = id("WO-1"), otherId = id("SL-1")) =>
  settleEvents(engineer(), { keptId, otherId, verdict, reason: "Same shift, same drive" });

beforeAll(async () => {
  made = await freshDatabase("event_matches");
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  world = await makeTwoSites();
  await tell("WO-1", { at: "2026-05-04T08:00:00Z" });
  await tell("SL-1", { at: "2026-05-04T08:20:00Z", source: "stop log", bare: true, hours: 5 });
  await tell("SL-2", { at: "2026-05-09T08:00:00Z", source: "stop log", bare: true });
  await tell("WO-3", { at: "2026-05-05T08:00:00Z" });
  await tell("SL-9", { at: "2026-05-04T09:00:00Z", source: "stop log", line: "SUD-01", bare: true });
  await tell("WO-9", { at: "2026-05-07T08:59:00Z", line: "SUD-01" });
});

afterAll(() => made.close());

describe("one event in two registers", () => {
  it("is looked for on one line, within three days, in different registers, where nothing differs", async () => {
    // SL-2 is five days away, WO-1 and WO-3 are of one register.
    expect(await pairsNow()).toEqual(
      expect.arrayContaining([
        ["SL-1", "WO-1"],
        ["SL-1", "WO-3"],
        ["SL-9", "WO-9"],
      ]),
    );
    expect(await pairsNow()).toHaveLength(3);
    const other = await database().part.findFirstOrThrow({ where: { number: "TM-HE-020" } });
    await database().event.update({ where: { id: id("SL-9") }, data: { partId: other.id } });
    expect(await pairsNow()).toHaveLength(2);
    await database().event.update({ where: { id: id("SL-9") }, data: { partId: null } });
  });

  it("shows a person of one site that site's pairs alone", async () => {
    expect(await pairsNow(personWith("engineer", world.south))).toEqual([["SL-9", "WO-9"]]);
    const { events } = await readEvents(personWith("engineer", world.south), { asOf, days: 366 });
    expect(events.map(({ reference }) => reference).sort()).toEqual(["SL-9", "WO-9"]);
  });

  it("counts twice until a person says it is one; then once, with what the other knew, and both stay in sight", async () => {
    const [before, counted] = [await versionNow(), await failures()];
    const done = await said("same");
    if (!done.ok) throw new Error(done.error.reason);
    expect(await versionNow()).toBe(before + 1n);
    expect(await failures()).toBe(counted - 1);
    const kept = await database().event.findUniqueOrThrow({ where: { id: id("WO-1") } });
    expect(kept.downtimeHours?.toNumber()).toBe(5);
    const { events } = await readEvents(engineer(), { asOf, days: 366 });
    const aside = events.find(({ reference }) => reference === "SL-1");
    expect(aside?.setAside).toBe("Same event as work order WO-1");
    // The stop log's record is spoken for: it is offered with no other either.
    expect(await pairsNow()).toEqual([["SL-9", "WO-9"]]);
    const [pair] = await readSettledPairs(engineer());
    expect(pair).toMatchObject({
      verdict: "same",
      reason: "Same shift, same drive",
      filled: ["stop"],
      mayPart: true,
    });
    expect((await said("same", id("WO-3"))).ok).toBe(false);
  });

  it("is parted again: both count, and what was taken over goes", async () => {
    const [pair] = await readSettledPairs(engineer());
    const [before, counted] = [await versionNow(), await failures()];
    expect((await partEvents(engineer(), { matchId: pair?.matchId ?? "" })).ok).toBe(true);
    expect(await versionNow()).toBe(before + 1n);
    expect(await failures()).toBe(counted + 1);
    const rows = await database().event.findMany({ where: { id: { in: [id("WO-1"), id("SL-1")] } } });
    expect(rows.map(({ setAside }) => setAside)).toEqual([null, null]);
    expect(rows.find((row) => row.id === id("WO-1"))?.downtimeHours).toBeNull();
    expect((await partEvents(engineer(), { matchId: pair?.matchId ?? "" })).ok).toBe(false);
  });

  it("keeps a value somebody corrected since when it is parted", async () => {
    const done = await said("same");
    await database().event.update({ where: { id: id("WO-1") }, data: { downtimeHours: 6 } });
    await partEvents(engineer(), { matchId: done.ok ? done.value.matchId : "" });
    const kept = await database().event.findUniqueOrThrow({ where: { id: id("WO-1") } });
    expect(kept.downtimeHours?.toNumber()).toBe(6);
  });

  it("is not asked about again when they are two, and no figure moves", async () => {
    const [before, counted] = [await versionNow(), await failures()];
    expect((await said("different")).ok).toBe(true);
    expect(await pairsNow()).toEqual(
      expect.arrayContaining([
        ["SL-1", "WO-3"],
        ["SL-9", "WO-9"],
      ]),
    );
    expect(await pairsNow()).toHaveLength(2);
    expect([await versionNow(), await failures()]).toEqual([before, counted]);
  });

  it("is settled by one of two people at once, and by nobody from another site", async () => {
    const both = await Promise.all([
      said("same", id("WO-3"), id("SL-1")),
      said("same", id("SL-1"), id("WO-3")),
    ]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    const foreign = await settleEvents(personWith("engineer", world.north), {
      ...{ keptId: id("WO-9"), otherId: id("SL-9"), verdict: "same", reason: "guessed" },
    });
    expect(foreign.ok || foreign.error.code).toBe("missing");
  });

  it("counts again when the record it was merged into goes", async () => {
    const [pair] = await readSettledPairs(engineer());
    await database().event.delete({ where: { id: pair?.keptId ?? "" } });
    const left = await database().event.findMany({ where: { id: { in: [id("WO-3"), id("SL-1")] } } });
    expect(left.map(({ setAside }) => setAside)).toEqual([null]);
  });
});
