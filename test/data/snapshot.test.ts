import { execFile } from "node:child_process";
import { join } from "node:path";
import { promisify } from "node:util";
import { gunzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { resultHash, thaw } from "@/lib/data/group/snapshotBytes";
import { takeSnapshot } from "@/lib/data/group/takeSnapshot";
import { weeklySnapshot } from "@/lib/data/group/weeklySnapshot";
import { commitImport, stageImport } from "@/lib/data/import";
import { listSnapshots, readWeeklyRule, takeSnapshotNow } from "@/lib/data/snapshot";
import { readMoved } from "@/lib/data/snapshotMoved";
import type { RegisterKey } from "@/lib/intake/registers";
import { ENGINE, evaluate } from "@/lib/risk/evaluate";
import { canonicalJson } from "@/lib/risk/moved/canonicalJson";
import { MOVED_STEPS } from "@/lib/risk/moved/snapshotInput";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

let fresh: FreshDatabase;
let admin: Actor;
let viewer: Actor;

const stockHead = "Site;Bin;Maker;Part number;Quantity;State;Last powered on";
const files: readonly (readonly [RegisterKey, string])[] = [
  [
    "assets",
    `Site;Site name;Country;Time zone;Currency;Budget rate;Line;Cost per hour;Buffer hours;Machine
OST;Ostrowka Mała;PL;Europe/Warsaw;PLN;4,30;OST-01;6450;1,0;M1
THO;Thornby;GB;Europe/London;GBP;0,86;THO-01;900;1,0;M1`,
  ],
  [
    "axes",
    `Line;Machine;Axis;Drive maker;Drive part;Drive serial
OST-01;M1;A01;Tarnholt Motion;TM-HR-020;S1
OST-01;M1;A02;Tarnholt Motion;TM-HR-020;S2
THO-01;M1;A01;Tarnholt Motion;TM-HR-020;S3`,
  ],
  [
    "stock",
    `${stockHead}
OST;A-1;Tarnholt Motion;TM-HR-020;3;usable;2026-10-01
THO;B-1;Tarnholt Motion;TM-HR-020;1;usable;2026-10-01`,
  ],
];

beforeAll(async () => {
  fresh = await freshDatabase("snapshot");
  admin = await makeActor("admin");
  for (const [register, text] of files) await load(register, text);
  const thornby = await database().site.findUniqueOrThrow({ where: { code: "THO" } });
  viewer = await makeActor("viewer", thornby.id);
});
afterAll(() => fresh.close());

describe("a snapshot", () => {
  test("is taken once for a day, by two callers at the same time", async () => {
    const taken = await Promise.all([takeSnapshot("2026-11-23", null), takeSnapshot("2026-11-23", null)]);
    expect(taken.map(({ isNew }) => isNew).sort()).toEqual([false, true]);
    expect(new Set(taken.map(({ id }) => id)).size).toBe(1);
  });

  test("is taken once for a day, by two processes at the same time", async () => {
    const script = join(import.meta.dirname, "../support/takeSnapshotAlone.mts");
    const options = ["--conditions=react-server", "--import", "tsx", script, "2026-11-09"];
    const run = () => promisify(execFile)(process.execPath, options, { env: process.env });
    const said = await Promise.all([run(), run()]);
    const taken = said.map(({ stdout }) => JSON.parse(stdout) as { id: string; isNew: boolean });
    expect(taken.map(({ isNew }) => isNew).sort()).toEqual([false, true]);
    expect(new Set(taken.map(({ id }) => id)).size).toBe(1);
    expect(await database().snapshot.count({ where: { asOf: new Date("2026-11-09") } })).toBe(1);
  });

  test("cannot be stored twice, whatever the program does", async () => {
    const { id: _, ...row } = await stored("2026-11-23");
    const again = { ...row, input: Uint8Array.from(row.input), assumptions: row.assumptions ?? {} };
    await expect(database().snapshot.create({ data: again })).rejects.toThrow(/Unique constraint/);
  });

  test("computes again to the same bytes, also after the data moved on", async () => {
    const { id } = await takeSnapshot("2026-11-24", null);
    await load("stock", `${stockHead}\nOST;A-1;Tarnholt Motion;TM-HR-020;2;usable;2026-10-01`);
    const row = await database().snapshot.findUniqueOrThrow({ where: { id } });
    const { input, assumptions } = thaw(row);
    expect(resultHash(evaluate(input, assumptions))).toBe(row.resultHash);
    expect(gunzipSync(row.input).toString()).toBe(canonicalJson(input));
    const lots = input.pools.flatMap(({ stock }) => stock.map(({ quantity }) => quantity));
    expect(lots.sort()).toEqual([1, 3]);
    expect(resultHash(evaluate({ ...input, asOf: "2026-11-25" }, assumptions))).not.toBe(row.resultHash);
    await load("stock", `${stockHead}\nOST;A-1;Tarnholt Motion;TM-HR-020;3;usable;2026-10-01`);
  });

  test("says on what it was taken, by whom, and leaves a trace", async () => {
    const taken = await takeSnapshotNow(admin, { asOf: "2026-11-25" });
    if (!taken.ok) throw new Error(taken.error.reason);
    const row = await database().snapshot.findUniqueOrThrow({ where: { id: taken.value.id } });
    const { version } = await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
    expect(row).toMatchObject({ engine: ENGINE, dataVersion: version, takenBy: admin.name });
    expect(row.resultHash).toMatch(/^[0-9a-f]{64}$/);
    const trace = await database().auditEntry.findFirstOrThrow({ where: { entityId: row.id } });
    expect(trace).toMatchObject({ deed: "snapshot:take", userId: admin.userId });
    expect((await listSnapshots(viewer)).map(({ asOf }) => asOf)).toEqual([
      "2026-11-25",
      "2026-11-24",
      "2026-11-23",
      "2026-11-09",
    ]);
  });

  test("is refused to somebody who plans at one site only", async () => {
    const [grant] = viewer.grants;
    const engineer = await makeActor("engineer", grant?.siteId ?? null);
    const refused = await takeSnapshotNow(engineer, { asOf: "2026-11-26" });
    expect(refused).toMatchObject({ ok: false, error: { code: "forbidden" } });
    expect(await database().snapshot.count({ where: { asOf: new Date("2026-11-26") } })).toBe(0);
  });
});

describe("the weekly one", () => {
  const zone = "Europe/Warsaw";
  test("is taken on Monday from five by the clock of the place, once", async () => {
    expect(await weeklySnapshot("2026-11-16T03:59:00Z", zone)).toBeNull();
    const first = await weeklySnapshot("2026-11-16T04:00:00Z", zone);
    expect(first?.isNew).toBe(true);
    const again = await weeklySnapshot("2026-11-16T05:00:00Z", zone);
    expect(again).toEqual({ id: first?.id, isNew: false });
    expect(await weeklySnapshot("2026-11-17T05:00:00Z", zone)).toBeNull();
    expect(await stored("2026-11-16")).toMatchObject({ id: first?.id, takenBy: null });
  });

  test("is left out where the installation stands at one day", async () => {
    await database().setting.create({ data: { key: "asOf", value: "2026-11-30" } });
    expect(await weeklySnapshot("2026-11-02T10:00:00Z", zone)).toBeNull();
    expect(await readWeeklyRule(viewer)).toMatchObject({ standsAt: "2026-11-30" });
    await database().setting.delete({ where: { key: "asOf" } });
    expect(await readWeeklyRule(viewer)).toMatchObject({ standsAt: null });
  });
});

describe("what moved", () => {
  let from: string;
  let to: string;
  beforeAll(async () => {
    from = (await takeSnapshot("2026-11-30", null)).id;
    await load(
      "stock",
      `${stockHead}
OST;A-1;Tarnholt Motion;TM-HR-020;1;usable;2026-10-01
THO;B-1;Tarnholt Motion;TM-HR-020;0;usable;2026-10-01`,
    );
    to = (await takeSnapshot("2026-12-07", null)).id;
  });
  const look = async (actor: Actor, end = to) => {
    const read = await readMoved(actor, { from, to: end, asOf: "2026-12-07" });
    if (!read) throw new Error("nothing to compare");
    return read;
  };

  test("names the stock behind the step, and the steps add up exactly", async () => {
    const { lines, total, inputs, isSound, isWholeGroup } = await look(admin);
    expect(isSound && isWholeGroup).toBe(true);
    expect(lines.map(({ code }) => code)).toEqual(["OST-01", "THO-01"]);
    expect(total.steps.stock).toBeGreaterThan(0);
    for (const moved of [...lines, total])
      expect(MOVED_STEPS.reduce((sum, step) => sum + moved.steps[step], 0)).toBe(moved.change);
    expect(inputs.filter(({ step }) => step === "stock")).toMatchObject([
      { subject: "TM-HR-020 at OST", what: "pieces usable", before: "3", after: "1" },
      { subject: "TM-HR-020 at THO", what: "pieces usable", before: "1", after: "0" },
    ]);
    expect(inputs.find(({ step }) => step === "clock")).toMatchObject({
      before: "30 Nov 2026",
      after: "7 Dec 2026",
    });
  });

  test("gives somebody at one site that site's lines, and other stock as a sum without a name", async () => {
    const seen = await look(viewer);
    const whole = await look(admin);
    expect(seen.lines.map(({ code }) => code)).toEqual(["THO-01"]);
    expect(seen.isWholeGroup).toBe(false);
    expect(seen.total.change).toBe(whole.lines.find(({ code }) => code === "THO-01")?.change);
    expect(seen.inputs.filter(({ step }) => step === "stock").map(({ subject }) => subject)).toEqual([
      "TM-HR-020 at THO",
      "TM-HR-020 at other sites",
    ]);
    expect(JSON.stringify(seen)).not.toMatch(/OST/);
  });

  test("against the data as they are tells the same as a snapshot of them", async () => {
    const now = await look(admin, "now");
    const then = await look(admin);
    expect(now.total).toEqual(then.total);
    expect(now.to).toMatchObject({ asOf: "2026-12-07", takenAt: null });
    expect(now.isSound).toBe(true);
  });

  test("says so when a stored result does not come out again", async () => {
    const { resultHash: kept } = await database().snapshot.update({
      where: { id: to },
      data: { resultHash: "0".repeat(64) },
    });
    expect(kept).toBe("0".repeat(64));
    expect((await look(admin)).isSound).toBe(false);
  });

  test("answers alike for a snapshot that is not there and an address that is none", async () => {
    for (const end of ["018f0000-0000-7000-8000-000000000000", "x", "'; --"])
      expect(await readMoved(admin, { from, to: end, asOf: "2026-12-07" })).toBeNull();
  });
});

function stored(asOf: string) {
  return database().snapshot.findUniqueOrThrow({
    where: { asOf_engine: { asOf: new Date(asOf), engine: ENGINE } },
  });
}

async function load(register: RegisterKey, text: string): Promise<void> {
  const staged = await stageImport(admin, {
    register,
    fileName: `${register}.csv`,
    bytes: new TextEncoder().encode(text),
  });
  if (!staged.ok) throw new Error(staged.error.reason);
  const loaded = await commitImport(admin, { batchId: staged.value.batchId, leftOut: [] });
  if (!loaded.ok || loaded.value.refused > 0) throw new Error(JSON.stringify(loaded));
}
