import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readCountSheet, readCounts, readCountVariance } from "@/lib/data/count";
import {
  addFoundPieces,
  dropFoundPieces,
  dropStockCount,
  openStockCount,
  writeCountLine,
} from "@/lib/data/countChange";
import { approveStockCount, postStockCount, takeBackStockCount } from "@/lib/data/countPost";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { changeStock } from "@/lib/data/stockChange";
import type { PoolFigures } from "@/lib/risk/evaluation";
import { addCountLine, type CountEntry, countEntry, openCount } from "@/lib/schema/count";
import { blankCount, type CountSheet, varianceSheet } from "@/lib/view/count";
import { makeActor } from "../support/actors";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let planner: Actor;
let second: Actor;
let technician: Actor;
let partId = "";

beforeAll(async () => {
  made = await freshDatabase("count");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  planner = await makeActor("planner", world.south);
  second = await makeActor("engineer", world.south);
  technician = await makeActor("technician", world.south);
  const part = await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } });
  partId = part.id;
  await database().part.update({
    where: { id: partId },
    data: { price: 2600, priceCurrency: "EUR", pricedOn: new Date("2026-06-01") },
  });
  const lot = { siteId: world.south, partId, bin: "R1", revision: "A2" };
  await database().stockLot.create({ data: { ...lot, state: "unproven", quantity: 3 } });
});

afterAll(() => made.close());

const entry = (given: object): CountEntry => countEntry.parse({ ...blankCount("usable"), ...given });

async function opened(given: object = {}): Promise<string> {
  const asked = { siteId: world.south, bins: "", blind: true, limitEuro: "1000", ...given };
  const count = await openStockCount(planner, openCount.parse(asked));
  if (!count.ok) throw new Error(count.error.reason);
  return count.value.countId;
}

async function sheetOf(countId: string, actor: Actor = planner): Promise<CountSheet> {
  const sheet = await readCountSheet(actor, countId);
  if (!sheet) throw new Error("no sheet");
  return sheet;
}

const seenOf = async (countId: string) =>
  (await sheetOf(countId)).lines.reduce((sum, { version }) => sum + version, 0);

async function write(countId: string, actor: Actor, given: Readonly<Record<string, object>>): Promise<void> {
  const { lines } = await sheetOf(countId, actor);
  for (const line of lines) {
    const asked = given[line.revision];
    if (!asked) continue;
    const at = { countId, lineId: line.id, version: line.version };
    const done = await writeCountLine(actor, { ...at, entry: entry(asked) });
    if (!done.ok) throw new Error(done.error.reason);
  }
}

/** Lots of the site with something on them. */
async function shelf() {
  const lots = await database().stockLot.findMany({
    where: { siteId: world.south, quantity: { not: 0 } },
    orderBy: [{ bin: "asc" }, { revision: "asc" }, { state: "asc" }],
  });
  return lots.map(({ bin, revision, state, quantity }) => `${bin} ${revision} ${state} ${quantity}`);
}

async function usable(): Promise<number | undefined> {
  const { id } = await currentEvaluation(asOf);
  const row = await database().evaluatedPool.findFirstOrThrow({ where: { evaluationId: id, partId } });
  return (row.result as unknown as PoolFigures).usableBySite[world.south]?.usable;
}

describe("a sheet", () => {
  it("has a line for each lot of the bins, and hides the book from a blind count", async () => {
    const countId = await opened();
    const blind = await sheetOf(countId, technician);
    expect(blind.lines.map(({ bin, revision }) => `${bin} ${revision}`)).toEqual(["R1 ", "R1 A2"]);
    expect(blind.lines.map(({ book }) => book)).toEqual([null, null]);
    expect(blind.lines.map(({ entry: { state } }) => state)).toEqual(["usable", "usable"]);
    const shown = await sheetOf(await opened({ blind: false }), technician);
    expect(shown.lines[1]?.book).toEqual({ state: "unproven", quantity: 3, lastPoweredOn: null });
    expect(await openStockCount(planner, openCount.parse({ ...asked(), bins: "Z9" }))).toMatchObject({
      ok: false,
      error: { fields: { bins: expect.any(String) } },
    });
  });

  it("is closed to other sites, and only who changes stock opens, compares or posts", async () => {
    const countId = await opened();
    const stranger = personWith("planner", world.north);
    expect(await readCountSheet(stranger, countId)).toBeNull();
    expect((await readCounts(stranger)).length).toBe(0);
    expect(await openStockCount(stranger, openCount.parse(asked()))).toMatchObject({ ok: false });
    expect(await readCountVariance(technician, countId)).toBeNull();
    expect(await postStockCount(technician, { countId, seen: 2 })).toMatchObject({
      error: { code: "missing" },
    });
    const [line] = (await sheetOf(countId)).lines;
    const written = { countId, lineId: line?.id ?? "", version: 1, entry: entry({ found: "1" }) };
    for (const actor of [stranger, personWith("viewer", world.south)])
      expect(await writeCountLine(actor, written)).toMatchObject({ error: { code: "missing" } });
    expect(await dropStockCount(planner, { countId })).toEqual({ ok: true, value: null });
  });

  it("takes a line only from who saw it, and of two at once one", async () => {
    const countId = await opened();
    const [line] = (await sheetOf(countId)).lines;
    const at = { countId, lineId: line?.id ?? "", version: 1 };
    const both = await Promise.all([
      writeCountLine(technician, { ...at, entry: entry({ found: "1" }) }),
      writeCountLine(second, { ...at, entry: entry({ found: "2" }) }),
    ]);
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
    const lost = both.find(({ ok }) => !ok);
    const winner = both[0]?.ok ? technician : second;
    expect(lost).toMatchObject({ error: { code: "conflict" } });
    if (lost && !lost.ok) expect(lost.error.reason).toContain(winner.name);
    const audit = await database().auditEntry.count({ where: { deed: "count:line" } });
    expect(audit).toBe(1);
    expect(await dropStockCount(planner, { countId })).toMatchObject({ error: { code: "impossible" } });
  });
});

const asked = () => ({ siteId: world.south, bins: "", blind: true, limitEuro: "1000" });

describe("posting", () => {
  it("books differences as one narrow change, with holds and finds, and is taken back whole", async () => {
    const before = await shelf();
    const usableBefore = await usable();
    const countId = await opened();
    await write(countId, technician, {
      "": { found: "0" },
      A2: { found: "2", state: "usable", tested: "yes", lastPoweredOn: "2026-11-29" },
    });
    const find = (given: object) =>
      addFoundPieces(
        technician,
        addCountLine.parse({
          ...{ countId, plate: "bw ok 020", bin: "Cupboard", revision: "" },
          entry: { ...blankCount("usable"), found: "4", originUnknown: true, ...given },
        }),
      );
    expect(await find({})).toMatchObject({ ok: true });
    expect(await find({})).toMatchObject({ error: { fields: { plate: "Already on the sheet." } } });
    expect(await find({ state: "beyond_repair", found: "1", holdReason: "burnt" })).toMatchObject({
      ok: true,
    });

    const compared = await readCountVariance(planner, countId);
    const variance = varianceSheet(compared?.lines ?? [], 1000);
    // 1 + 1 missing, 4 + 1 found, at 2600 EUR.
    expect(variance).toMatchObject({ less: 5200, more: 13_000, needsSecond: true, notCounted: 0 });

    const seen = await seenOf(countId);
    expect(await postStockCount(planner, { countId, seen })).toMatchObject({
      error: { reason: expect.stringContaining("second person") },
    });
    const counter = { ...planner, userId: technician.userId };
    expect(await approveStockCount(counter, { countId, seen })).toMatchObject({
      error: { code: "impossible" },
    });
    expect(await approveStockCount(second, { countId, seen: seen - 1 })).toMatchObject({
      error: { code: "conflict" },
    });
    expect(await approveStockCount(second, { countId, seen })).toEqual({ ok: true, value: null });

    const { version } = await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
    expect(await postStockCount(planner, { countId, seen })).toEqual({ ok: true, value: null });
    expect(await shelf()).toEqual(["Cupboard  unproven 4", "Cupboard  on_hold 1", "R1 A2 usable 2"]);
    const narrow = await database().narrowChange.findMany({ where: { version: { gt: version } } });
    expect(narrow.map(({ partIds }) => partIds)).toEqual([[partId]]);
    // Two pieces powered yesterday at 0.97 each.
    expect(await usable()).toBeCloseTo(1.94, 10);
    expect(await database().stockHold.findMany()).toMatchObject([
      { pieces: 1, reason: "burnt", heldBy: technician.name, releasedOn: null },
    ]);
    expect(await postStockCount(planner, { countId, seen })).toMatchObject({ error: { code: "conflict" } });
    const late = (await sheetOf(countId)).lines[0];
    expect(
      await writeCountLine(technician, {
        ...{ countId, lineId: late?.id ?? "", version: late?.version ?? 0, entry: entry({ found: "9" }) },
      }),
    ).toMatchObject({ error: { code: "impossible" } });

    expect(await takeBackStockCount(planner, { countId })).toEqual({ ok: true, value: null });
    expect(await shelf()).toEqual(before);
    expect(await usable()).toBe(usableBefore);
    expect(await database().stockHold.count()).toBe(0);
    expect((await sheetOf(countId)).postedOn).toBeNull();
  });

  it("waits for every line, and for bins that moved after they were counted", async () => {
    const countId = await opened({ limitEuro: "100000" });
    await write(countId, technician, { "": { found: "1" } });
    const post = async () => postStockCount(planner, { countId, seen: await seenOf(countId) });
    expect(await post()).toMatchObject({
      error: { reason: expect.stringContaining("1 line is not counted") },
    });
    await write(countId, technician, { A2: { found: "3", state: "unproven" } });
    const lot = await database().stockLot.findFirstOrThrow({
      where: { siteId: world.south, revision: "A2", state: "unproven" },
    });
    await database().stockLot.update({ where: { id: lot.id }, data: { quantity: 2 } });
    const compared = await readCountVariance(planner, countId);
    expect(compared?.lines.map(({ moved }) => moved)).toEqual([false, true]);
    expect(await post()).toMatchObject({ error: { reason: expect.stringContaining("bin R1") } });
    await write(countId, technician, { A2: { found: "2", state: "unproven" } });
    expect(await post()).toEqual({ ok: true, value: null });
    const counted = await database().stockLot.findUniqueOrThrow({ where: { id: lot.id } });
    expect(counted.countedOn?.toISOString().slice(0, 10)).toBe(asOf);

    await database().stockLot.update({ where: { id: lot.id }, data: { quantity: 7 } });
    expect(await takeBackStockCount(planner, { countId })).toMatchObject({ error: { code: "conflict" } });
    await database().stockLot.update({ where: { id: lot.id }, data: { quantity: 2 } });
    expect(await takeBackStockCount(planner, { countId })).toEqual({ ok: true, value: null });
  });

  it("leaves a plate nobody knows on the sheet, and an approval falls with the next line", async () => {
    const countId = await opened({ limitEuro: "0" });
    await write(countId, technician, { "": { found: "1" }, A2: { found: "1", state: "unproven" } });
    const seen = await seenOf(countId);
    expect(await approveStockCount(second, { countId, seen })).toEqual({ ok: true, value: null });
    const find = addCountLine.parse({
      ...{
        countId,
        plate: "XX-99",
        bin: "R9",
        revision: "",
        entry: { ...blankCount("unproven"), found: "1" },
      },
    });
    const added = await addFoundPieces(technician, find);
    expect((await sheetOf(countId)).approvedOn).toBeNull();
    const compared = await readCountVariance(planner, countId);
    expect(varianceSheet(compared?.lines ?? [], 0).unknownPlates.map(({ plate }) => plate)).toEqual([
      "XX-99",
    ]);
    if (added.ok)
      expect(await dropFoundPieces(technician, { countId, lineId: added.value.lineId, version: 1 })).toEqual({
        ok: true,
        value: null,
      });
    expect((await sheetOf(countId)).lines.length).toBe(2);
  });
});

it("a piece of unknown origin is not made usable on the part's page before it is tested", async () => {
  const lot = await database().stockLot.create({
    data: { siteId: world.south, partId, bin: "M1", state: "unproven", quantity: 1, originUnknown: true },
  });
  const seen = { state: "unproven" as const, quantity: 1, lastPoweredOn: null, countedOn: null };
  expect(
    await changeStock(planner, { lotId: lot.id, seen, wanted: { ...seen, state: "usable" } }),
  ).toMatchObject({ error: { code: "impossible", fields: { state: expect.any(String) } } });
});
