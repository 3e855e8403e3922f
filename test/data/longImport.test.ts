import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { commitImport, stageImport, undoImport } from "@/lib/data/import";
import { readImport, readImportPages } from "@/lib/data/importView";
import { readImportAgain, stopImport, takeUpWaiting } from "@/lib/data/importWork";
import type { RegisterKey } from "@/lib/intake/registers";
import { encodeText } from "@/lib/intake/textEncoding";
import { PROBLEMS_SHOWN } from "@/lib/view/importPreview";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { untilRead } from "@/test/support/untilRead";

let fresh: FreshDatabase;
let planner: Actor;

const ASSETS = `Site;Site name;Country;Time zone;Currency;Line;Line name;Cost per hour;Machine
OST;Ostrowka;PL;Europe/Warsaw;PLN;OST-01;Wrap 1;6450;M1`;

beforeAll(async () => {
  fresh = await freshDatabase("longImport");
  planner = await makeActor("planner");
  await load("assets", ASSETS);
  await database().part.create({
    data: { maker: "Tarnholt Motion", number: "TM-HR-020", itemClass: "drive", description: "Drive" },
  });
});
afterAll(() => fresh.close());

const HEADER = "Site;Line;Machine;Item class;Kind;Date;Downtime h;Reference;Text";
const REMARK = "exchanged after an overcurrent and no further trouble that week. ".repeat(8);

/** Above one piece of a mebibyte, so that it is read as a long file. */
function longText(rows: number, change: (row: number, cells: string[]) => void = () => undefined): string {
  const lines = Array.from({ length: rows }, (_, row) => {
    const cells = ["OST", "OST-01", "M1", "drive", "failure", "2026-03-02 10:00", "2,5", `L-${row}`, REMARK];
    change(row, cells);
    return cells.join(";");
  });
  return [HEADER, ...lines].join("\n");
}

const ROWS = 2_400;

/** A few events, told apart by how their references begin. */
const shortText = (mark: string, remark: string) =>
  [
    HEADER,
    ...[1, 2, 3].map(
      (row) => `OST;OST-01;M1;drive;failure;2026-03-0${row} 10:00;2,5;${mark}-${row};${remark}`,
    ),
  ].join("\n");

describe("what the reading of a log made ready", () => {
  const readyRows = async (batchId: string) =>
    (await database().importPrepared.findMany({ where: { batchId } })).reduce(
      (sum, { rows }) => sum + rows,
      0,
    );
  const events = (mark: string) =>
    database().event.findMany({ where: { reference: { startsWith: `${mark}-` } } });

  test("is what is loaded, goes with it, and is taken back like any other load", async () => {
    const batchId = await stage("events", shortText("READY", "as read"));
    expect((await stagedOf(batchId)).loadable).toBe(3);
    expect(await readyRows(batchId)).toBe(3);
    // Nobody but this test can see by a loaded row which way it came.
    await database()
      .$executeRaw`UPDATE "ImportPrepared" SET "lines" = replace("lines", 'as read', 'as made ready')`;
    const loaded = await commitImport(planner, { batchId, leftOut: [] });
    expect(loaded).toEqual({ ok: true, value: { added: 3, changed: 0, unchanged: 0, refused: 0 } });
    expect((await events("READY")).map(({ text }) => text)).toEqual(
      Array.from({ length: 3 }, () => "as made ready"),
    );
    expect(await readyRows(batchId)).toBe(0);
    expect(await undoImport(planner, { batchId })).toMatchObject({ ok: true });
    expect(await events("READY")).toEqual([]);
  });

  test("is not loaded once the records have changed, nor when rows are left out: the file is read again", async () => {
    const batchId = await stage("events", shortText("LATE", "first"));
    await stagedOf(batchId);
    await load("events", shortText("LATE", "second").split("\n").slice(0, 2).join("\n"));
    expect(await commitImport(planner, { batchId, leftOut: [3] })).toEqual({
      ok: true,
      value: { added: 1, changed: 1, unchanged: 0, refused: 0 },
    });
    expect((await events("LATE")).map(({ reference }) => reference).sort()).toEqual(["LATE-1", "LATE-3"]);
    await undoImport(planner, { batchId });
    await database().event.deleteMany({ where: { reference: "LATE-1" } });
  });
});

test("a file whose loading was killed is loaded by whoever asks next, and one being loaded is left alone", async () => {
  const batchId = await stage("events", shortText("KILLED", "once"));
  await stagedOf(batchId);
  const loading = (beatAt: Date) =>
    database().importBatch.update({
      where: { id: batchId },
      data: { work: "loading", workId: "1b4e28ba-2fa1-41d2-883f-0016d3cca427", beatAt },
    });
  await loading(new Date());
  expect(await commitImport(planner, { batchId, leftOut: [] })).toMatchObject({
    ok: false,
    error: { code: "conflict", reason: expect.stringContaining("being loaded already") },
  });
  await loading(new Date(Date.now() - 60_000));
  expect(await commitImport(planner, { batchId, leftOut: [] })).toMatchObject({
    ok: true,
    value: { added: 3 },
  });
  expect(await undoImport(planner, { batchId })).toMatchObject({ ok: true });
});

describe("a file longer than one piece", () => {
  test("is read with exact counts, its problems in pages, and loaded without the rows that have one", async () => {
    const text = longText(ROWS, (row, cells) => {
      if (row % 8 !== 0) cells[6] = "long";
      if (row === 8) cells[0] = "NOWHERE";
    });
    const batchId = await stage("events", text);
    const staged = await stagedOf(batchId);
    const wrong = (ROWS / 8) * 7;
    expect(staged.totals).toEqual({ rows: ROWS, ok: ROWS - wrong - 1, warning: 0, error: wrong + 1 });
    expect([staged.loadable, staged.waiting]).toEqual([ROWS - wrong - 1, 1]);
    expect(staged.things.find(({ entity }) => entity === "Event")?.added).toBe(ROWS - wrong - 1);
    expect(staged.problems.shown).toHaveLength(PROBLEMS_SHOWN);
    expect(staged.problems.shown[0]).toMatchObject({ rowNumber: 3, column: "Downtime h", found: "long" });
    const rest = await readImportPages(planner, batchId, { problems: staged.problems.next ?? "" });
    expect(rest?.problems?.shown).toHaveLength(wrong + 1 - PROBLEMS_SHOWN);
    expect(rest?.problems?.shown.at(-1)).toMatchObject({ rowNumber: ROWS + 1 });
    expect(rest?.problems?.next).toBeNull();

    expect(await commitImport(planner, { batchId, leftOut: [2] })).toMatchObject({
      ok: true,
      value: { added: ROWS - wrong - 2, refused: wrong + 1 },
    });
    expect(await database().event.count()).toBe(ROWS - wrong - 2);
    const again = await stage("events", text);
    expect(await commitImport(planner, { batchId: again, leftOut: [2] })).toMatchObject({
      ok: true,
      value: { added: 0, changed: 0, unchanged: ROWS - wrong - 2 },
    });
    expect(await undoImport(planner, { batchId })).toMatchObject({ ok: true });
    expect(await database().event.count()).toBe(0);
  }, 60_000);

  test("is read by the letters and dates of its whole, which its first rows do not tell", async () => {
    const text = longText(ROWS, (row, cells) => {
      cells[5] = row === ROWS - 1 ? "03/22/2026 10:00" : "03/04/2026 10:00";
      if (row === ROWS - 1) cells[8] = "wymiana napędu, oś źle ustawiona";
    });
    const batchId = await stage("events", encodeText(text, "windows-1250"));
    const staged = await stagedOf(batchId);
    expect(staged.opening.encoding).toBe("windows-1250");
    expect(staged.customs.find(({ custom }) => custom === "dateOrder")).toMatchObject({
      ...{ state: "told", choice: "monthFirst", answer: null, total: ROWS },
    });
    expect(await commitImport(planner, { batchId, leftOut: [] })).toMatchObject({ ok: true });
    const last = await database().event.findFirstOrThrow({ where: { reference: `L-${ROWS - 1}` } });
    expect(last.text).toBe("wymiana napędu, oś źle ustawiona");
    const first = await database().event.findFirstOrThrow({ where: { reference: "L-0" } });
    expect(first.happenedAt.toISOString()).toBe("2026-03-04T09:00:00.000Z");
    await undoImport(planner, { batchId });
  }, 60_000);

  test("that breaks off in a quotation ends with its row and what to do, and nothing is loaded", async () => {
    const text = longText(ROWS, (row, cells) => {
      if (row === ROWS - 5) cells[8] = '"left open';
    });
    const batchId = await stage("events", text);
    const view = await untilRead(planner, batchId);
    expect(view?.progress).toMatchObject({ state: "failed" });
    expect(view?.progress?.note).toMatch(/^events\.csv: Row 2,397: a quotation mark is left open\. Close it/);
    expect(await commitImport(planner, { batchId, leftOut: [] })).toMatchObject({
      ok: false,
      error: { reason: expect.stringMatching(/^events\.csv: Row 2,397/) },
    });
    expect(await database().event.count()).toBe(0);
  }, 60_000);
});

describe("the work on a file", () => {
  test("left by a process that is gone is said to be interrupted, and read again to the same end", async () => {
    const batchId = await stage("events", longText(100));
    const before = await stagedOf(batchId);
    const long = new Date(Date.now() - 60_000);
    await database().importBatch.update({
      where: { id: batchId },
      data: { work: "reading", beatAt: long, workStartedAt: long, readFor: null },
    });
    const view = await readImport(planner, batchId, []);
    expect([view?.staged, view?.progress?.state]).toEqual([null, "interrupted"]);
    expect(await readImportAgain(planner, { batchId })).toMatchObject({ ok: true });
    expect(await stagedOf(batchId)).toEqual(before);
  });

  test("is stopped by a person, stays so, and can be read again", async () => {
    const batchId = await stage("events", longText(5_000));
    const reading = readImport(planner, batchId, []);
    await until(async () => (await stopImport(planner, { batchId })).ok);
    await reading;
    const view = await readImport(planner, batchId, []);
    expect(view?.progress?.state).toBe("stopped");
    expect(await stopImport(planner, { batchId })).toMatchObject({ ok: false, error: { code: "missing" } });
    await readImportAgain(planner, { batchId });
    expect((await stagedOf(batchId)).totals.ok).toBe(5_000);
  }, 60_000);
});

test("rows that wait for what is stored are taken in later, from the file as it was handed in", async () => {
  const stock = (site: string) => `Site;Bin;Maker;Part number;Quantity;State
OST;W-1;Tarnholt Motion;TM-HR-020-B1;4;usable
${site};W-2;Tarnholt Motion;TM-HR-020-B1;2;usable`;
  const first = await stage("stock", stock("NEW"));
  expect(await commitImport(planner, { batchId: first, leftOut: [] })).toMatchObject({
    ok: true,
    value: { added: 1, refused: 1 },
  });
  expect((await readImport(planner, first, []))?.loaded).toMatchObject({ waiting: 1 });
  await load("assets", ASSETS.replaceAll("OST", "NEW"));
  const rest = await takeUpWaiting(planner, { batchId: first });
  if (!rest.ok) throw new Error(rest.error.reason);
  const { batchId } = rest.value;
  expect((await stagedOf(batchId)).totals).toEqual({ rows: 1, ok: 1, warning: 0, error: 0 });
  expect(await commitImport(planner, { batchId, leftOut: [] })).toMatchObject({
    ok: true,
    value: { added: 1 },
  });
  const lot = await database().stockLot.findFirstOrThrow({ where: { bin: "W-2" } });
  const step = await database().importChange.findFirstOrThrow({ where: { entityId: lot.id } });
  expect(step.rowNumber).toBe(3);
});

test("what the next file of its kind no longer speaks of is listed, and stays", async () => {
  const stock = (bins: readonly string[]) =>
    ["Site;Bin;Maker;Part number;Quantity;State;Last counted"]
      .concat(bins.map((bin) => `OST;${bin};Tarnholt Motion;TM-HR-020-B1;4;usable;2026-03-02`))
      .join("\n");
  await load("stock", stock(["V-1", "V-2"]));
  const staged = await stagedOf(await stage("stock", stock(["V-2", "V-3"])));
  expect(staged.vanished).toMatchObject({
    ...{ fileName: "stock.csv", count: 1 },
    shown: [{ thing: "stock lot", name: expect.stringContaining("V-1") }],
  });
  expect(await database().stockLot.count({ where: { bin: "V-1" } })).toBe(1);
});

test("a part that a refused row names first is there for the row after it", async () => {
  const text = `Site;Line;Machine;Maker;Part number;Item class;Kind;Date;Reference
GONE;OST-01;M1;Tarnholt Motion;TM-QQ-500;drive;failure;2026-03-02 10:00;Q-1
OST;OST-01;M1;Tarnholt Motion;TM-QQ-500;drive;failure;2026-03-02 11:00;Q-2`;
  await load("events", text);
  const events = await database().event.findMany({ where: { part: { number: "TM-QQ-500" } } });
  expect(events.map(({ reference }) => reference)).toEqual(["Q-2"]);
});

test("what only a rule of the database refuses is told with its rows, and nothing of the file is loaded", async () => {
  await database().$executeRaw`ALTER TABLE "Event" ADD CONSTRAINT "Event_no_zoo" CHECK ("text" <> 'zoo')`;
  const rows = Array.from(
    { length: 60 },
    (_, row) => `OST;OST-01;M1;drive;failure;2026-03-02 10:00;R-${row};${row === 59 ? "zoo" : "shop"}`,
  );
  const text = ["Site;Line;Machine;Item class;Kind;Date;Reference;Text", ...rows].join("\n");
  expect(await commitImport(planner, { batchId: await stage("events", text), leftOut: [] })).toMatchObject({
    ok: false,
    error: {
      reason: expect.stringMatching(
        /^events\.csv: Among rows 2 to 61 .*\(Event_no_zoo\)\. Nothing was loaded/,
      ),
    },
  });
  expect(await database().event.count({ where: { reference: { startsWith: "R-" } } })).toBe(0);
});

async function stage(register: RegisterKey, text: string | Uint8Array): Promise<string> {
  const bytes = new Uint8Array(typeof text === "string" ? new TextEncoder().encode(text) : text);
  const staged = await stageImport(planner, { register, fileName: `${register}.csv`, bytes });
  if (!staged.ok) throw new Error(staged.error.reason);
  return staged.value.batchId;
}

async function load(register: RegisterKey, text: string): Promise<void> {
  const loaded = await commitImport(planner, { batchId: await stage(register, text), leftOut: [] });
  if (!loaded.ok) throw new Error(loaded.error.reason);
}

async function stagedOf(batchId: string) {
  const view = await untilRead(planner, batchId);
  if (!view?.staged) throw new Error(JSON.stringify(view?.progress));
  return view.staged;
}

async function until(isDone: () => Promise<boolean>): Promise<void> {
  while (!(await isDone())) await new Promise((resolve) => setTimeout(resolve, 10));
}
