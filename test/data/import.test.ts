import { afterAll, beforeAll, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { commitImport, stageImport, undoImport } from "@/lib/data/import";
import type { RegisterKey } from "@/lib/intake/registers";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { untilRead } from "@/test/support/untilRead";

let fresh: FreshDatabase;
let planner: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("import");
  planner = await makeActor("planner");
});
afterAll(() => fresh.close());

const assets = `Site;Site name;Country;Time zone;Currency;Budget rate;Line;Line name;Cost per hour;Buffer hours;Machine;Controller;Controller model;Firmware
OST;Ostrowka Mała;PL;Europe/Warsaw;PLN;4,30;OST-01;Wrap 1;6450;1,0;M1;K1;Slate 5;v23
OST;Ostrowka Mała;PL;Europe/Warsaw;PLN;4,30;OST-01;Wrap 1;6450;1,0;M2;K2;Slate 5;unknown`;

const axes = `Line;Machine;Axis;Network;Network kind;Drive maker;Drive part;Drive serial;Motor maker;Motor part
OST-01;M1;A01;R1;fibre ring;Tarnholt Motion;TM-HR-020-B1;S1;Duskvale;DV-WR-05
OST-01;M1;A02;R1;fibre ring;Tarnholt Motion;TM-HR-020-C3;S2;Duskvale;DV-WR-05`;

const stock = `Site;Bin;Maker;Part number;Quantity;State
OST;A-1;Tarnholt Motion;tm hr 020 b1;4;usable
OST;A-2;Tarnholt Motion;TM–HR–020–B1;some;on hold`;

const events = `Site;Line;Machine;Axis;Item class;Kind;Date;Downtime h;Reference
OST;OST-01;M1;A01;drive;failure;2026-03-29 02:30;5,5;WO-1`;

test("registers load in order, each once, and a second load of the same file changes nothing", async () => {
  expect(await load("assets", assets)).toMatchObject({ added: 7, changed: 0 });
  const first = await load("axes", axes);
  expect(first.added).toBe(13);
  expect(await load("axes", axes)).toMatchObject({ added: 0, changed: 0, unchanged: 11 });
  expect(await database().unit.count()).toBe(2);
  expect(await database().position.count({ where: { partId: { not: null } } })).toBe(4);
});

test("three spellings of a number are one part, and a count nobody made is unknown, not zero", async () => {
  await load("stock", stock);
  const lots = await database().stockLot.findMany({ include: { part: true }, orderBy: { bin: "asc" } });
  expect(lots.map((lot) => lot.part.number)).toEqual(["TM-HR-020", "TM-HR-020"]);
  expect(lots.map((lot) => [lot.quantity, lot.revision, lot.state])).toEqual([
    [4, "B1", "usable"],
    [null, "B1", "on_hold"],
  ]);
});

test("an event's time is the site's own, also in the hour the clock skips", async () => {
  await load("events", events);
  const event = await database().event.findFirstOrThrow({ include: { position: true } });
  expect(event.happenedAt.toISOString()).toBe("2026-03-29T01:30:00.000Z");
  expect(event.position?.designation).toBe("A01-T1");
});

test("an unknown firmware stays unknown", async () => {
  const read = await database().controller.findMany({ orderBy: { designation: "asc" } });
  expect(read.map((one) => one.firmware)).toEqual([23, null]);
});

test("a changed cell changes one thing, and taking the file back restores it", async () => {
  const batchId = await stage("assets", assets.replaceAll("6450", "7000"));
  expect(await commitImport(planner, { batchId, leftOut: [] })).toMatchObject({
    ok: true,
    value: { added: 0, changed: 1 },
  });
  expect(Number((await line()).costPerHour)).toBe(7000);
  expect(await undoImport(planner, { batchId })).toMatchObject({ ok: true });
  expect(Number((await line()).costPerHour)).toBe(6450);
});

test("a file that later ones stand on is not taken back, and nothing is lost by trying", async () => {
  const first = await database().importBatch.findFirstOrThrow({
    where: { register: "assets" },
    orderBy: { createdAt: "asc" },
  });
  const before = await database().machine.count();
  const answer = await undoImport(planner, { batchId: first.id });
  expect(answer).toMatchObject({ ok: false, error: { code: "conflict" } });
  expect(await database().machine.count()).toBe(before);
});

test("a line that names no known site is refused by its row, the others are taken", async () => {
  const batchId = await stage("stock", `${stock}\nKAR;B-1;Tarnholt Motion;TM-HR-020-B1;2;usable`);
  expect(await commitImport(planner, { batchId, leftOut: [] })).toMatchObject({
    ok: true,
    value: { added: 0, refused: 1 },
  });
});

test("a planner of one site can bring in nothing for another, and cannot see the other's files", async () => {
  const site = await database().site.findUniqueOrThrow({ where: { code: "OST" } });
  const other = await database().site.create({
    data: { code: "KAR", name: "Karlsvik", country: "SE", timeZone: "Europe/Stockholm", currency: "SEK" },
  });
  const local = await makeActor("planner", other.id);
  const batchId = await stage("stock", stock.replaceAll(";4;", ";9;"), local);
  expect(await commitImport(local, { batchId, leftOut: [] })).toMatchObject({
    ok: true,
    value: { changed: 0 },
  });
  expect(await database().stockLot.count({ where: { siteId: site.id, quantity: 9 } })).toBe(0);
  const theirs = await stage("stock", stock);
  expect(await commitImport(local, { batchId: theirs, leftOut: [] })).toMatchObject({
    ok: false,
    error: { code: "missing" },
  });
});

test("two people loading one file at once leave it loaded once", async () => {
  const more = `${axes}\nOST-01;M2;A01;R1;fibre ring;Tarnholt Motion;TM-HR-020-C3;S9;Duskvale;DV-WR-05`;
  const batches = [await stage("axes", more), await stage("axes", more)];
  const answers = await Promise.all(
    batches.map((batchId) => commitImport(planner, { batchId, leftOut: [] })),
  );
  expect(answers.map((one) => one.ok && one.value.added).sort()).toEqual([0, 5]);
});

const ring = (rows: string) =>
  `Line;Machine;Axis;Network;Network kind;Place in ring;Node address;Counts per rev;Gear motor\n${rows}`;

test("two axes on one node, a ring with a gap and a negative ratio are refused by their rows, the rest is taken", async () => {
  const text = ring(
    [
      "OST-01;M2;B01;R9;fibre ring;1;11;4096;3",
      "OST-01;M2;B02;R9;fibre ring;2;11;4096;3",
      "OST-01;M2;B03;R9;fibre ring;4;14;4096;3",
      "OST-01;M2;B04;R9;fibre ring;3;13;4096;-3",
    ].join("\n"),
  );
  const rows = await problemsOf("axes", text);
  expect(rows[3]).toEqual(["Node address 11 of R9 is taken by OST-01 M2 B01 (row 2)"]);
  expect(rows[4]).toEqual(["The ring R9 has a place 4 but no place 3"]);
  expect(rows[5]).toEqual(["Below the smallest value that can be, 1"]);
  expect(await load("axes", text)).toMatchObject({ refused: 3 });
  expect(await database().axis.count({ where: { code: { startsWith: "B0" } } })).toBe(1);
  // What is stored holds its place against the next file.
  const later = await problemsOf("axes", ring("OST-01;M2;B02;R9;fibre ring;1;12;4096;3"));
  expect(later[2]).toEqual(["Place 1 of R9 is taken by OST-01 M2 B01"]);
});

test("successors in a circle are refused with the way round, whether in one file or in two", async () => {
  const facts = (rows: string) => `Maker;Part number;Notice;Source;Checked on;Successor\n${rows}`;
  const row = (part: string, successor: string) =>
    `Tarnholt Motion;${part};2026-10-30;Bulletin 7;2026-11-02;${successor}`;
  const drive = { maker: "Tarnholt Motion", itemClass: "drive", description: "Drive" } as const;
  await database().part.create({ data: { ...drive, number: "TM-HE-020" } });
  await load("lifecycle", facts(row("TM-HR-020", "TM-HE-020")));
  const rows = await problemsOf("lifecycle", facts(row("TM-HE-020", "TM-HR-020")));
  expect(rows[2]).toEqual(["The part would follow itself: TM-HE-020 → TM-HR-020 → TM-HE-020"]);
  expect(await load("lifecycle", facts(row("TM-HE-020", "TM-HR-020")))).toMatchObject({ refused: 1 });
  expect(await database().successor.count()).toBe(1);
});

/** What is wrong with each row of a file, by row. */
async function problemsOf(register: RegisterKey, text: string): Promise<Record<number, string[]>> {
  const staged = (await untilRead(planner, await stage(register, text)))?.staged;
  if (!staged) throw new Error("no such file");
  const rows: Record<number, string[]> = {};
  for (const { rowNumber, problem } of staged.problems.shown)
    rows[rowNumber] = [...(rows[rowNumber] ?? []), problem];
  return rows;
}

async function stage(register: RegisterKey, text: string, actor = planner): Promise<string> {
  const bytes = new TextEncoder().encode(text);
  const staged = await stageImport(actor, { register, fileName: `${register}.csv`, bytes });
  if (!staged.ok) throw new Error(staged.error.reason);
  return staged.value.batchId;
}

async function load(register: RegisterKey, text: string) {
  const loaded = await commitImport(planner, { batchId: await stage(register, text), leftOut: [] });
  if (!loaded.ok) throw new Error(loaded.error.reason);
  return loaded.value;
}

function line() {
  return database().line.findUniqueOrThrow({ where: { code: "OST-01" } });
}
