import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { chooseImportReading, commitImport, stageImport, undoImport } from "@/lib/data/import";
import { discardImport } from "@/lib/data/importDiscard";
import { readImport, readImports } from "@/lib/data/importView";
import type { RegisterKey } from "@/lib/intake/registers";
import type { StagedImport } from "@/lib/view/importView";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { untilRead } from "@/test/support/untilRead";

let fresh: FreshDatabase;
let planner: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("importView");
  planner = await makeActor("planner");
});
afterAll(() => fresh.close());

const assets = `Survey of two lines;;;;;;;;;
Site;Site name;Country;Time zone;Currency;Line;Line name;Cost per hour;Machine;Seen by
OST;Ostrowka Mała;PL;Europe/Warsaw;PLN;OST-01;Wrap 1;6450;M1;night shift

OST;Ostrowka Mała;PL;Europe/Warsaw;PLN;OST-01;Wrap 1;6450;M2;night shift
OST;Ostrowka Mała;PL;Europe/Warsaw;PLN;OST-02;Wrap 2;a lot;M1;day shift`;

const dates = `Maker;Family;Class of item;Last order;Source;Checked on
Tarnholt Motion;Heron R;Drive;03/04/2027;Supply bulletin 1;2026-11-02
Tarnholt Motion;Heron E;Drive;05/06/2027;Supply bulletin 1;2026-11-02`;

describe("before a file is loaded", () => {
  test("each problem has its row as a spreadsheet counts, its column, what was found and what to do", async () => {
    const staged = await readStagedFile(await stage("assets", assets));
    expect(staged.problems.count).toBe(1);
    expect(staged.problems.shown[0]).toMatchObject({
      rowNumber: 6,
      column: "Cost per hour",
      found: "a lot",
      severity: "error",
    });
    expect(staged.problems.shown[0]?.remedy).not.toBe("");
    expect(staged.totals).toEqual({ rows: 3, ok: 2, warning: 0, error: 1 });
  });

  test("the way the file was read is told, with the rows that are none", async () => {
    const { opening, columns } = await readStagedFile(await stage("assets", assets));
    expect(opening).toMatchObject({ format: "csv", encoding: "utf-8", separator: ";", headerRow: 2 });
    expect(opening.skipped).toEqual([{ rowNumber: 4, reason: "blank row", text: "" }]);
    expect(columns.find((column) => column.header === "Seen by")).toMatchObject({ field: null });
    expect(columns.find((column) => column.header === "Machine")).toMatchObject({
      field: "machineCode",
      samples: ["M1", "M2"],
      score: 1,
    });
  });

  test("a row left out is not counted among what would be added", async () => {
    const batchId = await stage("assets", assets);
    const whole = await readStagedFile(batchId);
    const less = await readStagedFile(batchId, [5, 77]);
    expect(countOf(whole, "Machine")).toBe(2);
    expect(countOf(less, "Machine")).toBe(1);
    expect([less.leftOut, less.loadable]).toEqual([[5], 1]);
    expect(await database().machine.count()).toBe(0);
  });

  test("a date that can be read two ways is a question with its values, and nothing loads before it is answered", async () => {
    const batchId = await stage("lifecycle", dates);
    const before = await readStagedFile(batchId);
    const question = before.customs.find((custom) => custom.custom === "dateOrder");
    expect(question).toMatchObject({
      state: "open",
      answer: null,
      columns: ["Last order"],
      examples: ["03/04/2027", "05/06/2027"],
    });
    expect(await commitImport(planner, { batchId, leftOut: [] })).toMatchObject({ ok: false });
    expect(await database().lifecycleFact.count()).toBe(0);

    const mapping = mappingOf(before);
    await chooseImportReading(planner, { batchId, mapping, answers: { dateOrder: "monthFirst" } });
    const after = await readStagedFile(batchId);
    expect(after.customs.find((custom) => custom.custom === "dateOrder")).toMatchObject({
      state: "answered",
      answer: "monthFirst",
    });
    expect(await commitImport(planner, { batchId, leftOut: [] })).toMatchObject({ ok: true });
    const facts = await database().lifecycleFact.findMany({ orderBy: { lastOrderOn: "asc" } });
    expect(facts.map((fact) => fact.lastOrderOn?.toISOString().slice(0, 10))).toEqual([
      "2027-03-04",
      "2027-05-06",
    ]);
  });

  test("a needed column taken away is said, and the mapping is kept for the next file of that kind", async () => {
    const batchId = await stage("assets", assets);
    const mapping = { ...mappingOf(await readStagedFile(batchId)), Line: null };
    await chooseImportReading(planner, { batchId, mapping, answers: {} });
    expect((await readStagedFile(batchId)).missing).toEqual(["No column is chosen for “Line”"]);
    const next = await readStagedFile(await stage("assets", assets));
    expect(next.columns.find((column) => column.header === "Line")).toMatchObject({
      field: null,
      suggested: "lineCode",
    });
    await chooseImportReading(planner, { batchId, mapping: { ...mapping, Line: "lineCode" }, answers: {} });
  });
});

describe("once a file is loaded", () => {
  test("a changed value is shown before and after, first as it would be, then as it was done", async () => {
    await commit(await stage("assets", assets));
    const batchId = await stage("assets", assets.replaceAll("6450", "7000"));
    const wanted = [
      {
        rowNumber: 3,
        thing: "line",
        name: "OST-01",
        field: "cost per hour",
        before: "6\u202f450",
        after: "7\u202f000",
      },
    ];
    expect((await readStagedFile(batchId)).changes.shown).toEqual(wanted);
    await commit(batchId);
    const view = await readImport(planner, batchId, []);
    expect(view?.loaded?.changes.shown).toEqual(wanted);
    expect(view?.head).toMatchObject({ state: "committed", by: planner.name });
  });

  test("the same bytes again are noticed, and no longer once they were taken back", async () => {
    const bytes = assets.replaceAll("6450", "8000");
    const first = await stage("assets", bytes);
    await commit(first);
    const second = await stage("assets", bytes);
    expect((await readStagedFile(second)).loadedBefore?.id).toBe(first);
    await undoImport(planner, { batchId: first });
    expect((await readStagedFile(second)).loadedBefore).toBeNull();
  });

  test("it can no longer be dropped, while a waiting one can", async () => {
    const waiting = await stage("assets", assets);
    expect(await discardImport(planner, { batchId: waiting })).toMatchObject({ ok: true });
    expect(await readImport(planner, waiting, [])).toBeNull();
    const loaded = await database().importBatch.findFirstOrThrow({ where: { state: "committed" } });
    expect(await discardImport(planner, { batchId: loaded.id })).toMatchObject({
      ok: false,
      error: { code: "missing" },
    });
  });
});

test("a planner of one site sees the own files only, and drops nobody else's", async () => {
  const site = await database().site.findUniqueOrThrow({ where: { code: "OST" } });
  const local = await makeActor("planner", site.id);
  const theirs = await stage("assets", assets);
  expect((await readImports(local)).files).toEqual([]);
  expect(await readImport(local, theirs, [])).toBeNull();
  expect(await discardImport(local, { batchId: theirs })).toMatchObject({ ok: false });
  const own = await stage("assets", assets, local);
  expect((await readImports(local)).files.map((file) => file.id)).toEqual([own]);
  const all = (await readImports(planner)).files.map((file) => file.id);
  expect(all).toContain(own);
  expect(all).toContain(theirs);
});

test("a viewer of the group, whose role loads nothing, sees no file", async () => {
  expect((await readImports(await makeActor("viewer"))).files).toEqual([]);
});

async function stage(register: RegisterKey, text: string, actor = planner): Promise<string> {
  const bytes = new TextEncoder().encode(text);
  const staged = await stageImport(actor, { register, fileName: `${register}.csv`, bytes });
  if (!staged.ok) throw new Error(staged.error.reason);
  return staged.value.batchId;
}

async function readStagedFile(batchId: string, leftOut: readonly number[] = []): Promise<StagedImport> {
  const view = await untilRead(planner, batchId, leftOut);
  if (!view?.staged) throw new Error(`${batchId} does not wait`);
  return view.staged;
}

async function commit(batchId: string) {
  const loaded = await commitImport(planner, { batchId, leftOut: [] });
  if (!loaded.ok) throw new Error(loaded.error.reason);
}

function mappingOf({ columns }: StagedImport): Record<string, string | null> {
  return Object.fromEntries(columns.map(({ header, field }) => [header, field]));
}

function countOf({ things }: StagedImport, entity: string): number {
  return things.find((thing) => thing.entity === entity)?.added ?? 0;
}
