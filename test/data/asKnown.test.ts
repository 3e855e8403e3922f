import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database, presentDatabase } from "@/lib/data/client";
import { takeSnapshot } from "@/lib/data/group/takeSnapshot";
import { changeLine } from "@/lib/data/lineChange";
import { lookBack, readKnownFrom } from "@/lib/data/lookBack";
import { readPart } from "@/lib/data/part";
import { readPastGround } from "@/lib/data/pastGround";
import { readPlans } from "@/lib/data/plan";
import { readRanking } from "@/lib/data/ranking";
import { changeStock } from "@/lib/data/stockChange";
import { isBefore, type KnownAt, knownOn } from "@/lib/view/knownAt";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { instantNow } from "../support/instants";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

const reader = personWith("admin", null);
const day = (text: string) => new Date(`${text}T00:00:00Z`);
let made: FreshDatabase;
let sites: TwoSites;
let partId = "";
let start: KnownAt;

beforeAll(async () => {
  made = await freshDatabase("asKnown");
  sites = await makeTwoSites();
  partId = (await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } })).id;
  start = await instantNow();
});
afterAll(() => made.close());

const ranking = (known: KnownAt) => lookBack(known, () => readRanking(reader, asOf));
const shelf = (known: KnownAt) => lookBack(known, () => readPart(reader, { id: partId, asOf }));
const lossOf = async (known: KnownAt, code: string) =>
  (await ranking(known)).lines.find((line) => line.code === code)?.stopLoss?.mean;

describe("what was known at an instant", () => {
  it("is what stood then, whatever is written later", async () => {
    const [before, shelfBefore] = [await ranking(start), await shelf(start)];
    expect(before.lines).toHaveLength(4);
    const lot = await database().stockLot.findFirstOrThrow({ where: { siteId: sites.south } });
    const seen = {
      ...{ state: "usable" as const, quantity: 1, lastPoweredOn: "2026-06-01" as const, countedOn: null },
    };
    const answer = await changeStock(reader, {
      ...{ lotId: lot.id, seen, wanted: { ...seen, quantity: 7 } },
    });
    expect(answer.ok).toBe(true);
    expect(await shelf(start)).toEqual(shelfBefore);
    expect(await ranking(start)).toEqual(before);
    expect(await shelf(await instantNow())).not.toEqual(shelfBefore);
    expect(await lossOf(await instantNow(), "NOR-01")).toBeLessThan(before.lines[0]?.stopLoss?.mean ?? 0);
  });

  it("shows a corrected figure as it was before, and corrected after", async () => {
    const line = await database().line.findUniqueOrThrow({ where: { code: "NOR-02" } });
    const lossBefore = await lossOf(start, "NOR-02");
    await database().line.update({ where: { id: line.id }, data: { costPerHour: 9000 } });
    const then = await instantNow();
    await database().line.update({ where: { id: line.id }, data: { costPerHour: 1000 } });
    expect(await lossOf(start, "NOR-02")).toBe(lossBefore);
    expect((await lossOf(then, "NOR-02")) ?? 0).toBeGreaterThan((lossBefore ?? 0) * 5);
  });

  it("leaves out what was back-dated later, and has it from the day it was recorded on", async () => {
    const before = await instantNow();
    await database().event.createMany({
      data: Array.from({ length: 6 }, (_, i) => ({
        ...{ siteId: sites.north, lineId: sites.lines["NOR-01"] ?? null, partId, kind: "failure" as const },
        ...{ happenedAt: day("2026-03-01"), downtimeHours: 20, source: "log", reference: `late ${i}` },
      })),
    });
    const after = await instantNow();
    const [then, now] = [await lossOf(before, "NOR-01"), await lossOf(after, "NOR-01")];
    expect(now ?? 0).toBeGreaterThan(then ?? 0);
    await database().event.deleteMany({ where: { source: "log" } });
    expect(await lossOf(await instantNow(), "NOR-01")).toBe(then);
    expect(await lossOf(after, "NOR-01")).toBe(now);
  });

  it("holds nothing before the first record", async () => {
    expect((await ranking(knownOn("2000-01-01", "UTC"))).lines).toEqual([]);
    const from = await readKnownFrom(reader);
    expect([from?.since, from !== null && isBefore(start, from)]).toEqual(["first", false]);
  });

  it("can only be read", async () => {
    const write = () => database().line.updateMany({ data: { name: "x" } });
    await expect(lookBack(start, write)).rejects.toThrow();
    const change = () => changeLine(reader, {} as never);
    await expect(lookBack(start, change)).rejects.toThrow();
    expect(await database().line.count({ where: { name: "x" } })).toBe(0);
  });

  it("is computed once for one state of the records", async () => {
    await presentDatabase().pastEvaluation.deleteMany();
    await ranking(start);
    await ranking(start);
    expect(await presentDatabase().pastEvaluation.count()).toBe(1);
  });
});

const name = fc.constantFrom("AAA", "BBB", "CCC");
const step = fc.oneof(
  fc.record({ kind: fc.constant("put" as const), name, rate: fc.integer({ min: 1, max: 9 }) }),
  fc.record({ kind: fc.constant("drop" as const), name }),
  fc.record({ kind: fc.constant("renew" as const), name, rate: fc.integer({ min: 1, max: 9 }) }),
  fc.record({ kind: fc.constant("fail" as const), name }),
);
type Step = typeof step extends fc.Arbitrary<infer S> ? S : never;

/** One transaction: adds or changes a row, removes it, removes and adds it again under its key, or fails halfway. */
async function play(one: Step): Promise<void> {
  await database()
    .$transaction(async (tx) => {
      const where = { currency: one.name };
      if (one.kind !== "put") await tx.currencyRate.deleteMany({ where });
      if (one.kind === "fail") throw new Error("fails");
      if (one.kind === "drop") return;
      const data = { perEuro: one.rate, validFrom: day("2026-01-01") };
      await tx.currencyRate.upsert({ where, create: { ...where, ...data }, update: data });
      await tx.currencyRate.update({ where, data: { source: `said ${one.rate}` } });
    })
    .catch((error: Error) => {
      if (error.message !== "fails") throw error;
    });
}

const rates = () => database().currencyRate.findMany({ orderBy: { currency: "asc" } });

/** The same rows by the view of the past, without a client of its own for every instant. */
async function ratesAt({ at }: KnownAt): Promise<unknown> {
  return database().$transaction(async (tx) => {
    await tx.$executeRaw`SELECT set_config('ebbline.known_at', ${at}, true)`;
    await tx.$executeRaw`SELECT set_config('search_path', 'known,public', true)`;
    return tx.$queryRaw`SELECT * FROM "CurrencyRate" ORDER BY "currency"`;
  });
}

describe("rows of any history", () => {
  it("stand at every instant as they stood at it", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 8 }), async (steps) => {
        const seen: { at: KnownAt; rows: unknown }[] = [];
        for (const one of steps) {
          await play(one);
          seen.push({ at: await instantNow(), rows: await rates() });
        }
        for (const { at, rows } of seen) expect(await ratesAt(at)).toEqual(rows);
      }),
      { numRuns: 12 },
    );
  });
});

describe("a plan looked back to", () => {
  it("stands as it stood: not there, a draft, then without its line", async () => {
    const before = await instantNow();
    const plan = await database().plan.create({
      data: {
        ...{ name: "Retrofits of 2027", year: 2027, budget: 100_000, createdBy: "person", asOf: day(asOf) },
        ...{ rankedBy: "loss", engine: "1", dataVersion: 1, status: "draft" },
        lines: {
          create: [
            {
              ...{ lineId: sites.lines["NOR-01"] ?? "", rank: 1, funded: true, cost: 60_000 },
              ...{ stopLoss: 1000, score: 50 },
            },
          ],
        },
      },
    });
    const sketched = await instantNow();
    await database().plan.update({ where: { id: plan.id }, data: { status: "put_forward" } });
    await database().planLine.deleteMany({ where: { planId: plan.id } });
    const seen = async (known: KnownAt) =>
      (await lookBack(known, () => readPlans(reader))).map(({ status, ownLines }) => ({ status, ownLines }));
    expect(await seen(before)).toEqual([]);
    expect(await seen(sketched)).toEqual([{ status: "draft", ownLines: 1 }]);
    expect(await seen(await instantNow())).toEqual([]);
  });
});

describe("rows that one statement changes by the thousand", () => {
  it("stand as they stood, each under its key, whatever the statement before it touched", async () => {
    const codes = Array.from({ length: 5000 }, (_, i) => `k${i}`);
    await database().currencyRate.createMany({
      data: codes.map((currency, i) => ({ currency, perEuro: i + 1, validFrom: day("2026-01-01") })),
    });
    // The first statement of a session decides how the next are done.
    await database().currencyRate.update({ where: { currency: "k0" }, data: { source: "one" } });
    const before = await instantNow();
    const stood = await rates();
    await database().currencyRate.updateMany({ data: { source: "all" } });
    await database()
      .$executeRaw`UPDATE "CurrencyRate" SET "currency" = "currency" || '+' WHERE "currency" LIKE 'k1%'`;
    const renamed = await instantNow();
    const then = await rates();
    await database().currencyRate.deleteMany({ where: { currency: { startsWith: "k" } } });
    expect(await ratesAt(before)).toEqual(stood);
    expect(await ratesAt(renamed)).toEqual(then);
    expect(then.filter(({ currency }) => currency.endsWith("+"))).toHaveLength(1111);
    expect(await database().rowPast.count({ where: { table: "CurrencyRate", key: "k2" } })).toBe(2);
  });
});

describe("before former states are kept", () => {
  it("the snapshot of that day is what the figures come from, else nothing of it is known", async () => {
    const at = knownOn("2026-03-01", "UTC");
    await takeSnapshot(asOf, null);
    await database().keptSince.create({ data: { id: 1, at: day("2026-06-01") } });
    const groundOn = (on: string) => lookBack(at, () => readPastGround(reader, on as typeof asOf));
    expect(await groundOn(asOf)).toBe("snapshot");
    expect(await groundOn("2026-03-01")).toBe("nothing");
    await database().keptSince.deleteMany();
    // Everything ever recorded is kept, and the first record was made later than that.
    expect(await groundOn(asOf)).toBe("nothing");
    expect(await lookBack(start, () => readPastGround(reader, asOf))).toBe("records");
    expect(await readPastGround(reader, asOf)).toBeNull();
  });
});
