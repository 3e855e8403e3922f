import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { chooseImportReading, commitImport, stageImport } from "@/lib/data/import";
import { readImportEffect } from "@/lib/data/importEffect";
import {
  chooseImportSource,
  forgetSourceWord,
  setSourceNulls,
  teachSourceWord,
} from "@/lib/data/importSourceChange";
import { readSource, readSources } from "@/lib/data/importSources";
import { readImport } from "@/lib/data/importView";
import { settlePartNumber, takePartNumberBack } from "@/lib/data/partNumberChange";
import { readPartNumbers } from "@/lib/data/partNumbers";
import type { RegisterKey } from "@/lib/intake/registers";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { makeTwoSites, personWith, type TwoSites } from "@/test/support/twoSites";

let fresh: FreshDatabase;
let places: TwoSites;
const everywhere = personWith("engineer", null);

beforeAll(async () => {
  fresh = await freshDatabase("partNumbers");
  places = await makeTwoSites();
});
afterAll(() => fresh.close());

async function stage(register: RegisterKey, text: string, actor: Actor = everywhere): Promise<string> {
  const staged = await stageImport(actor, {
    ...{ register, fileName: `${register}.csv`, bytes: new TextEncoder().encode(text) },
  });
  if (!staged.ok) throw new Error(staged.error.reason);
  return staged.value.batchId;
}

/** The file as its page shows it; a page does not wait long for a reading, so it is loaded again. */
async function look(batchId: string) {
  for (let load = 0; load < 20; load += 1) {
    const view = await readImport(everywhere, batchId, []);
    if (view?.staged) return view.staged;
  }
  throw new Error("the file is not read");
}

const stock = `Site;Bin;Maker;Part number;Storeroom number;Description;Quantity;State
NOR;A-1;Brindlewick;BW-OK-O20;;;3;usable
NOR;A-2;Brindlewick;;4711;Servo drive;2;usable
NOR;A-3;Brindlewick;BW–OK–020–B1;;;1;usable`;

describe("numbers nothing on record is called", () => {
  test("are never merged by themselves: a look-alike waits, with the likeliest part and why", async () => {
    const batchId = await stage("stock", stock);
    expect((await look(batchId)).totals).toMatchObject({ rows: 3, ok: 1, error: 2 });
    const { open, everySite } = await readPartNumbers(everywhere);
    expect(everySite).toBe(true);
    expect(open.map(({ written, rows }) => [written, rows])).toEqual([
      ["BW-OK-O20", 1],
      ["4711", 1],
    ]);
    expect(open[0]?.suggestions[0]).toMatchObject({
      number: "BW-OK-020",
      why: expect.stringContaining("look like"),
    });
  });

  test("once a person said “the same”, the waiting file and every later one follow, and taking it back ends that", async () => {
    const part = await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } });
    const batchId = await stage("stock", stock);
    await look(batchId);
    const said = {
      ...{ written: "BW-OK-O20", maker: "Brindlewick", partId: part.id, siteCode: null },
      ...{ verdict: "same" as const, reason: "nameplate read" },
    };
    const kept = await settlePartNumber(everywhere, said);
    expect(kept).toMatchObject({ ok: true, value: { kind: "alias" } });
    expect((await look(batchId)).totals).toMatchObject({ error: 1 });
    expect((await readPartNumbers(everywhere)).open.map(({ written }) => written)).toEqual(["4711"]);
    const [mine] = (await readPartNumbers(everywhere)).said;
    expect(mine).toMatchObject({ said: "is BW-OK-020 everywhere", reason: "nameplate read", by: "Person" });
    if (!kept.ok) return;
    expect(await takePartNumberBack(everywhere, kept.value)).toMatchObject({ ok: true });
    expect((await look(batchId)).totals).toMatchObject({ error: 2 });
  });

  test("a storeroom's own number holds at its site alone, and a planner of another site cannot give it", async () => {
    const part = await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } });
    const said = { written: "4711", maker: "", partId: part.id, verdict: "same" as const, reason: "label" };
    const south = personWith("planner", places.south);
    expect(await settlePartNumber(south, { ...said, siteCode: "NOR" })).toMatchObject({ ok: false });
    expect(await settlePartNumber(south, { ...said, siteCode: null })).toMatchObject({ ok: false });
    expect(await settlePartNumber(everywhere, { ...said, siteCode: "NOR" })).toMatchObject({ ok: true });
    const batchId = await stage("stock", stock);
    expect((await look(batchId)).totals).toMatchObject({ error: 1 });
    const elsewhere = await stage("stock", stock.replaceAll("NOR;", "SUD;"));
    expect((await look(elsewhere)).totals).toMatchObject({ error: 2 });
  });

  test("“another part” takes the suggestion away, “later” keeps the number and puts it last", async () => {
    const part = await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } });
    const said = { written: "BW-OK-O20", maker: "Brindlewick", siteCode: null, reason: "" };
    await settlePartNumber(everywhere, { ...said, verdict: "other", partId: part.id });
    const [one] = (await readPartNumbers(everywhere)).open.filter(({ written }) => written === "BW-OK-O20");
    expect(one?.suggestions.map(({ id }) => id)).not.toContain(part.id);
    await settlePartNumber(everywhere, { ...said, verdict: "later", partId: null });
    expect((await readPartNumbers(everywhere)).open.at(-1)).toMatchObject({
      written: "BW-OK-O20",
      later: true,
    });
    await settlePartNumber(everywhere, { ...said, verdict: "other", partId: null });
    expect((await readPartNumbers(everywhere)).open.map(({ written }) => written)).not.toContain("BW-OK-O20");
  });
});

const log = `Site;Line;Machine;Class;Kind;Date;End;Work order;Text
SUD;L1;Former;Servo thing;Umrichter getauscht;03.04.2026 22:30;01:15;1;Umrichter getauscht
SUD;L1;Former;;;04.04.2026 10:00;999;2;wymiana napędu oś 3`;

describe("a source of files", () => {
  let sourceId = "";

  test("is named by a person, learns what it calls lines, machines and classes, and its waiting file follows", async () => {
    const batchId = await stage("events", log.replace(";999;", ";10:30;"));
    const source = { kind: "new" as const, name: "SUD maintenance orders", siteId: places.south };
    expect(await chooseImportSource(everywhere, { batchId, source })).toMatchObject({ ok: true });
    expect((await look(batchId)).totals).toMatchObject({ error: 2 });
    const [listed] = await readSources(everywhere);
    sourceId = listed?.id ?? "";
    const before = await readSource(everywhere, sourceId);
    const line = before?.open.find(({ kind }) => kind === "line");
    expect(line).toMatchObject({ written: "L1", rows: 2 });
    expect(line?.suggestions[0]).toMatchObject({ code: expect.stringMatching(/-01$/) });
    await teachSourceWord(everywhere, {
      sourceId,
      kind: "line",
      within: "",
      written: "L1",
      meaning: "SUD-01",
    });
    await look(batchId);
    const then = await readSource(everywhere, sourceId);
    expect(then?.open.find(({ kind }) => kind === "machine")?.suggestions[0]).toMatchObject({ code: "M1" });
    const teach = { sourceId, kind: "choice" as const, within: "itemClass", written: "Servo thing" };
    await teachSourceWord(everywhere, { ...teach, meaning: "drive" });
    await teachSourceWord(everywhere, {
      ...teach,
      within: "kind",
      written: "Umrichter getauscht",
      meaning: "removal",
    });
    await teachSourceWord(everywhere, {
      ...{ sourceId, kind: "machine", within: "SUD-01", written: "Former", meaning: "M1" },
    });
    expect(await look(batchId)).toMatchObject({ totals: { error: 0 } });
    const texts = (await readSource(everywhere, sourceId))?.open.filter(({ kind }) => kind === "text");
    expect(texts?.map(({ within, written, suggestions }) => [within, written, suggestions[0]?.code])).toEqual(
      [
        ["kind", "wymiana", "removal"],
        ["itemClass", "napedu", "drive"],
      ],
    );
    expect(await commitImport(everywhere, { batchId, leftOut: [] })).toMatchObject({ ok: true });
    const event = await database().event.findFirstOrThrow({
      where: { reference: "1" },
      include: { machine: true },
    });
    expect([event.kind, event.itemClass, event.machine?.code]).toEqual(["removal", "drive", "M1"]);
    // From 22:30 over midnight to 01:15.
    expect(Number(event.downtimeHours)).toBe(2.75);
  });

  test("refuses a meaning that is on no record, and a word of a source the person does not see", async () => {
    const word = { sourceId, kind: "line" as const, within: "", written: "L9", meaning: "NOWHERE" };
    expect(await teachSourceWord(everywhere, word)).toMatchObject({ ok: false, error: { code: "invalid" } });
    const north = personWith("planner", places.north);
    expect(await teachSourceWord(north, { ...word, meaning: "NOR-01" })).toMatchObject({
      error: { code: "missing" },
    });
    expect(await readSource(north, sourceId)).toBeNull();
    expect(await readSources(north)).toEqual([]);
  });

  test("is found again by its column names in any order, with what was said of its files", async () => {
    const first = await stage("events", log.replace(";999;", ";10:30;"));
    const mapping = (await database().importBatch.findUniqueOrThrow({ where: { id: first } })).mapping;
    await chooseImportSource(everywhere, { batchId: first, source: { kind: "known", sourceId } });
    await chooseImportReading(everywhere, {
      ...{ batchId: first, mapping: mapping as Record<string, string | null>, answers: {} },
    });
    const shuffled =
      "Text;Work order;End;Date;Kind;Class;Machine;Line;Site\n;3;;05.05.2026 08:00;failure;;Former;L1;SUD";
    const batchId = await stage("events", shuffled);
    const batch = await database().importBatch.findUniqueOrThrow({ where: { id: batchId } });
    expect(batch.sourceId).toBe(sourceId);
    expect(batch.mapping).toMatchObject({ Line: "lineCode", "Work order": "reference" });
    expect((await look(batchId)).totals).toMatchObject({ error: 0 });
  });

  test("has its own words for nothing, each change a version, and of two people one wins", async () => {
    const shuffled =
      "Text;Work order;End;Date;Kind;Class;Machine;Line;Site\nfoo;4;;05.05.2026 08:00;failure;leer;Former;L1;SUD";
    const batchId = await stage("events", shuffled);
    expect((await look(batchId)).totals).toMatchObject({ error: 1 });
    const set = { sourceId, register: "events", version: 1, nullWords: ["leer", "-"] };
    const answers = await Promise.all([setSourceNulls(everywhere, set), setSourceNulls(everywhere, set)]);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ error: { code: "conflict" } });
    const again = await stage("events", shuffled);
    expect((await look(again)).totals).toMatchObject({ error: 0 });
    expect((await readSource(everywhere, sourceId))?.versions[0]).toMatchObject({
      version: 2,
      nullWords: ["leer", "-"],
    });
  });

  test("forgets a word, and its waiting files are read without it", async () => {
    const batchId = await stage(
      "events",
      "Text;Work order;End;Date;Kind;Class;Machine;Line;Site\n;5;;05.05.2026 08:00;failure;;Former;L1;SUD",
    );
    expect((await look(batchId)).totals).toMatchObject({ error: 0 });
    const word = await database().learnedWord.findFirstOrThrow({ where: { kind: "line" } });
    await forgetSourceWord(everywhere, { wordId: word.id });
    expect((await look(batchId)).totals).toMatchObject({ error: 1 });
  });
});

describe("the effect of a file on the figures", () => {
  test("is what the group loses without it and with it; nothing is stored", async () => {
    const batchId = await stage(
      "assets",
      `Site;Line;Line name;Cost per hour
NOR;NOR-02;Line NOR-02;90000`,
    );
    await look(batchId);
    const before = await database().$queryRaw`SELECT "version" FROM "DataVersion"`;
    const answer = await readImportEffect(everywhere, { batchId, leftOut: [] });
    if (!answer.ok) throw new Error(answer.error.reason);
    const { effect, changed } = answer.value;
    expect(changed).toBe(1);
    expect(effect.after.loss.mean).toBeGreaterThan(effect.before.loss.mean);
    expect(effect.moved[0]).toMatchObject({ code: "NOR-02", placeAfter: 1 });
    expect(effect.before.unknown).toBe(0);
    expect(await database().$queryRaw`SELECT "version" FROM "DataVersion"`).toEqual(before);
    const line = await database().line.findUniqueOrThrow({ where: { code: "NOR-02" } });
    expect(Number(line.costPerHour)).toBe(1000);
    // Who reads one site sees the loss of its lines alone.
    const north = personWith("planner", places.north);
    const own = await stage(
      "assets",
      "Site;Line;Line name;Cost per hour\nNOR;NOR-02;Line NOR-02;90000",
      north,
    );
    const seen = await readImportEffect(north, { batchId: own, leftOut: [] });
    expect(seen.ok && seen.value.effect.before.lines).toBe(2);
    const stranger = { ...north, userId: "somebody else" };
    expect(await readImportEffect(stranger, { batchId: own, leftOut: [] })).toMatchObject({
      error: { code: "missing" },
    });
  });
});
