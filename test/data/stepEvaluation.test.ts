import { execFile } from "node:child_process";
import { join } from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { currentEvaluation, warmUp } from "@/lib/data/group/currentEvaluation";
import { commitImport, stageImport } from "@/lib/data/import";
import { changeStock } from "@/lib/data/stockChange";
import type { ChangeStockLot } from "@/lib/schema/stockLot";
import type { StockLot } from "@/prisma/generated/client";
import { load } from "@/seed/load";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

const asOf = "2026-11-30";
let fresh: FreshDatabase;
let planner: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("stepEvaluation");
  await load(fresh.url, "showcase", showcase());
  planner = await makeActor("planner");
}, 120_000);
afterAll(() => fresh.close());

/** What a process has in mind goes with it. */
function forget(): void {
  delete (globalThis as { ebblineGroup?: unknown }).ebblineGroup;
}

/** Everything stored of an evaluation, as text. */
async function rowsOf(id: string) {
  const lines = await database().$queryRaw`
    SELECT "lineId"::text, "rankByLoss", "rankByScore", "result"::text, "place"::text
    FROM "EvaluatedLine" WHERE "evaluationId" = ${id}::uuid ORDER BY 1`;
  const pools = await database().$queryRaw`
    SELECT "partId"::text, "result"::text, "noSpareByMonth"::text
    FROM "EvaluatedPool" WHERE "evaluationId" = ${id}::uuid ORDER BY 1`;
  const totals = await database().$queryRaw`SELECT "totals"::text FROM "Evaluation" WHERE "id" = ${id}::uuid`;
  return { lines, pools, totals };
}

/** The rows of a whole evaluation of the data as they are, by a process that has nothing in mind. */
async function wholeRows() {
  await database().evaluation.deleteMany();
  forget();
  const { id } = await currentEvaluation(asOf);
  return rowsOf(id);
}

const isStep = async (id: string) =>
  (await database().evaluation.findUniqueOrThrow({ where: { id } })).rowsId !== id;

type Stored = ChangeStockLot["seen"];

function storedLot({ state, quantity, lastPoweredOn, countedOn }: StockLot): Stored {
  const dayOf = (date: Date | null) => date?.toISOString().slice(0, 10) ?? null;
  return { state, quantity, lastPoweredOn: dayOf(lastPoweredOn), countedOn: dayOf(countedOn) };
}

async function edit(lot: StockLot, wanted: Partial<Stored>): Promise<void> {
  const seen = storedLot(await database().stockLot.findUniqueOrThrow({ where: { id: lot.id } }));
  const done = await changeStock(planner, { lotId: lot.id, seen, wanted: { ...seen, ...wanted } });
  if (!done.ok) throw new Error(done.error.reason);
}

/** Usable lots of parts that are installed, the fullest first. */
function lots(): Promise<StockLot[]> {
  return database().stockLot.findMany({
    where: { state: "usable", quantity: { gt: 0 }, part: { positions: { some: {} } } },
    orderBy: [{ quantity: "desc" }, { id: "asc" }],
    take: 3,
  });
}

beforeEach(async () => {
  await database().evaluation.deleteMany();
  forget();
});

describe("after a change of stock", () => {
  test("the rows are those of a whole evaluation, byte for byte, step after step", async () => {
    const [first, second, third] = await lots();
    if (!first || !second || !third) throw new Error("the demonstration has too few lots");
    const before = await rowsOf((await currentEvaluation(asOf)).id);
    await edit(first, { quantity: 0, countedOn: asOf });
    await currentEvaluation(asOf);
    await edit(second, { quantity: null, countedOn: null });
    await edit(third, { state: "on_hold" });
    const { id } = await currentEvaluation(asOf);
    expect(await isStep(id)).toBe(true);
    const step = await rowsOf(id);
    expect(step).not.toEqual(before);
    expect(step).toEqual(await wholeRows());
  });

  test("no more is written than what it touches", async () => {
    const [rare] = await database().$queryRaw<{ id: string }[]>`
      SELECT s."id"::text AS "id" FROM "StockLot" s
      JOIN "Position" p ON p."partId" = s."partId"
      JOIN "Machine" m ON m."id" = p."machineId"
      WHERE s."state" = 'usable' AND s."quantity" > 0
      GROUP BY 1 ORDER BY count(DISTINCT m."lineId"), 1 LIMIT 1`;
    const lot = await database().stockLot.findUniqueOrThrow({ where: { id: rare?.id ?? "" } });
    const { id: rowsId } = await currentEvaluation(asOf);
    await edit(lot, { lastPoweredOn: "2026-11-01" });
    await edit(lot, { lastPoweredOn: "2019-11-01" });
    const { dataVersion } = await currentEvaluation(asOf);
    const written = await database().poolRow.findMany({ where: { rowsId, fromVersion: dataVersion } });
    expect(written.map(({ partId }) => partId)).toEqual([lot.partId]);
    const lines = await database().lineRow.count({ where: { rowsId, fromVersion: dataVersion } });
    expect(lines).toBeGreaterThan(0);
    expect(lines).toBeLessThan(40);
  });

  test("whoever began to read before reads on as it was", async () => {
    const [lot] = await lots();
    if (!lot) throw new Error("the demonstration has no lot");
    const { id } = await currentEvaluation(asOf);
    const before = await rowsOf(id);
    await edit(lot, { quantity: (lot.quantity ?? 0) + 3 });
    const reading = Promise.all(Array.from({ length: 8 }, () => rowsOf(id)));
    const asked = await Promise.all([currentEvaluation(asOf), currentEvaluation(asOf)]);
    expect(new Set(asked.map((mark) => mark.id)).size).toBe(1);
    expect(asked[0]?.id).not.toBe(id);
    for (const read of [...(await reading), await rowsOf(id)]) expect(read).toEqual(before);
  });

  test("steps nobody can still read are dropped, and the last one stays whole", async () => {
    const [lot] = await lots();
    if (!lot) throw new Error("the demonstration has no lot");
    const { id: rowsId } = await currentEvaluation(asOf);
    const step = async (quantity: number) => {
      await edit(lot, { quantity });
      return (await currentEvaluation(asOf)).id;
    };
    const aged = await step(1);
    const late = await step(2);
    await database().evaluation.updateMany({
      where: { staleSince: { not: null } },
      data: { staleSince: new Date("2026-01-01") },
    });
    const last = await step(3);
    const left = await database().evaluation.findMany({ select: { id: true } });
    expect(left.map(({ id }) => id).sort()).toEqual([rowsId, late, last].sort());
    expect(left.map(({ id }) => id)).not.toContain(aged);
    expect(await database().poolRow.count({ where: { rowsId, partId: lot.partId } })).toBe(2);
    expect(await rowsOf(last)).toEqual(await wholeRows());
  });
});

test("a stock file is a change of stock alone, and is stepped over like one", async () => {
  const [lot] = await lots();
  if (!lot) throw new Error("the demonstration has no lot");
  const { site, part } = await database().stockLot.findUniqueOrThrow({
    where: { id: lot.id },
    select: { site: { select: { code: true } }, part: { select: { maker: true, number: true } } },
  });
  await currentEvaluation(asOf);
  const text = `Site;Bin;Maker;Part number;Quantity;State\n${site.code};Z-99;${part.maker};${part.number};4;usable`;
  const staged = await stageImport(planner, {
    ...{ register: "stock", fileName: "stock.csv", bytes: new TextEncoder().encode(text) },
  });
  if (!staged.ok) throw new Error(staged.error.reason);
  const done = await commitImport(planner, { batchId: staged.value.batchId, leftOut: [] });
  expect(done).toMatchObject({ ok: true, value: { added: 1, refused: 0 } });
  const { id } = await currentEvaluation(asOf);
  expect(await isStep(id)).toBe(true);
  expect(await rowsOf(id)).toEqual(await wholeRows());
});

describe("what makes a step impossible", () => {
  test("another change in between", async () => {
    const [lot] = await lots();
    const line = await database().line.findFirstOrThrow({ where: { code: "VEL-03" } });
    if (!lot) throw new Error("the demonstration has no lot");
    await currentEvaluation(asOf);
    await edit(lot, { quantity: 1 });
    await database().line.update({ where: { id: line.id }, data: { bufferHours: 3 } });
    await database().dataVersion.updateMany({ data: { version: { increment: 1 } } });
    await edit(lot, { quantity: 2 });
    const { id } = await currentEvaluation(asOf);
    expect(await isStep(id)).toBe(false);
    expect(await rowsOf(id)).toEqual(await wholeRows());
  });

  test("another day, and rows that are gone", async () => {
    const [lot] = await lots();
    if (!lot) throw new Error("the demonstration has no lot");
    await currentEvaluation(asOf);
    await edit(lot, { quantity: 4 });
    expect(await isStep((await currentEvaluation("2026-11-29")).id)).toBe(false);
    await edit(lot, { quantity: 5 });
    await database().evaluation.deleteMany();
    expect(await isStep((await currentEvaluation("2026-11-29")).id)).toBe(false);
  });
});

describe("two processes on one database", () => {
  const other = async () => {
    const script = join(import.meta.dirname, "../support/evaluateAlone.mts");
    const options = ["--conditions=react-server", "--import", "tsx", script, asOf];
    const { stdout } = await promisify(execFile)(process.execPath, options, { env: process.env });
    return JSON.parse(stdout) as { id: string; dataVersion: number };
  };

  test("each steps from what it computed itself, and both see the same", async () => {
    const [lot, second] = await lots();
    if (!lot || !second) throw new Error("the demonstration has too few lots");
    await currentEvaluation(asOf);
    await edit(lot, { quantity: 6 });
    const theirs = await other();
    expect(await isStep(theirs.id)).toBe(false);
    expect((await currentEvaluation(asOf)).id).toBe(theirs.id);
    await edit(second, { quantity: 0, countedOn: asOf });
    const own = await currentEvaluation(asOf);
    expect(await isStep(own.id)).toBe(true);
    expect(await other()).toEqual({ id: own.id, dataVersion: own.dataVersion });
    expect(await rowsOf(own.id)).toEqual(await wholeRows());
  });

  test("both step from the same rows in turn, and a line changed and changed back comes out right", async () => {
    const [lot, second] = await lots();
    if (!lot || !second) throw new Error("the demonstration has too few lots");
    await database().evaluation.deleteMany();
    forget();
    const whole = await currentEvaluation(asOf);
    const kept = globalThis as { ebblineGroup?: unknown };
    const ours = kept.ebblineGroup;
    // Another process that worked the same out, without writing it.
    forget();
    await warmUp();
    const theirs = kept.ebblineGroup;
    expect(theirs).not.toBe(ours);
    kept.ebblineGroup = ours;
    await edit(lot, { quantity: 0, countedOn: asOf });
    expect(await isStep((await currentEvaluation(asOf)).id)).toBe(true);
    // It has not seen that step, and half of it is taken back now.
    kept.ebblineGroup = theirs;
    await edit(lot, { quantity: 6 });
    await edit(second, { quantity: 3, countedOn: asOf });
    const last = await currentEvaluation(asOf);
    expect((await database().evaluation.findUniqueOrThrow({ where: { id: last.id } })).rowsId).toBe(whole.id);
    expect(await rowsOf(last.id)).toEqual(await wholeRows());
  });
});
