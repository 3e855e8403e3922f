import { afterAll, beforeAll, expect, test, vi } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { recordLists, savedLists } from "@/lib/data/exports/registry";
import { openSavedList, savableLists } from "@/lib/data/savedList";
import { isoDate } from "@/lib/kernel/isoDate";
import type { ExportRow } from "@/lib/view/exportTable";
import { Prisma } from "@/prisma/generated/client";
import { load } from "@/seed/load";
import { small } from "@/seed/scenarios/small";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const asOf = isoDate("2026-11-30");
let fresh: FreshDatabase;
let admin: Actor;
let atTho: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("saved lists");
  await load(fresh.url, "small", small());
  admin = await makeActor("admin");
  const { id } = await database().site.findUniqueOrThrow({ where: { code: "THO" } });
  atTho = await makeActor("viewer", id);
});
afterAll(() => fresh.close());

async function rowsOf(actor: Actor, name: string, asked: Record<string, string> = {}): Promise<ExportRow[]> {
  const table = openSavedList(actor, name, { asOf, asked: new Map(Object.entries(asked)) });
  if (!table) throw new Error(`${name} is not to be had`);
  const rows: ExportRow[] = [];
  for await (const row of table.rows) rows.push(row);
  return rows;
}

/** Tables without a list of their own: derived, of the machinery, or files kept byte for byte. */
const NOT_LISTED = [
  ...[
    "Session",
    "Account",
    "Verification",
    "RateLimit",
    "WrongPassword",
    "Invitation",
    "AccountInvitation",
    "CalendarFeed",
    "AccessKey",
    "TwoFactor",
  ],
  ...["KeptAnswer", "Webhook", "WebhookDelivery", "WholeCopy", "DataVersion", "Setting", "NarrowChange"],
  ...["Evaluation", "LineRow", "PoolRow", "Snapshot", "SolveRun", "SolveInput", "ReportFile"],
  ...["Digest", "DigestMail", "ReportWish", "ReportMail", "CareInterval", "EffortNorm"],
  ...[
    "ImportChange",
    "ImportMapping",
    "ImportFile",
    "ImportPiece",
    "ImportProblem",
    "ImportMention",
    "ImportPrepared",
    "ImportDifference",
  ],
  ...[
    "ImportSource",
    "SourceReading",
    "LearnedWord",
    "UnmatchedName",
    "NumberVerdict",
    "PartMerge",
    "GapCount",
  ],
  ...[
    "SightVerdict",
    "AxisRecord",
    "CloseStatement",
    "CrewRegion",
    "CrewRegionSite",
    "NoticePart",
    "ProjectAxis",
  ],
  ...["CostImport", "TransferStep", "EvaluatedLine", "EvaluatedPool"],
  ...["KeptSince", "RowPast", "RowBirth", "PastEvaluation", "PastLine", "PastPool"],
];

test("every table is in a list, or said to be in none", () => {
  const listed = new Set<string>(recordLists.map(({ model }) => model.toLowerCase()));
  const missing = Object.values(Prisma.ModelName).filter((name) => !listed.has(name.toLowerCase()));
  expect(missing.filter((name) => !NOT_LISTED.includes(name))).toEqual([]);
});

test("names and keys are used once, and money says in what", () => {
  expect(savedLists.size).toBe(recordLists.length + 10);
  for (const { name, columns } of savedLists.values()) {
    const keys = columns.map(({ key }) => key);
    expect(`${name}: ${keys}`).toBe(`${name}: ${[...new Set(keys)]}`);
    for (const { key, kind, currency } of columns)
      if (kind === "money") {
        const told = currency === "EUR" || keys.includes(currency?.replace("of:", "") ?? "");
        expect(`${name}.${key} ${told}`).toBe(`${name}.${key} true`);
      }
  }
});

test.each(recordLists.map(({ name }) => name))("an administrator saves every row of %s", async (name) => {
  const list = recordLists.find((found) => found.name === name);
  const model = database()[list?.model ?? "site"] as unknown as { count(): Promise<number> };
  expect(await rowsOf(admin, name)).toHaveLength(await model.count());
});

test.each([...savedLists.keys()])("a viewer of one site finds nothing of another in %s", async (name) => {
  if (!savableLists(atTho).some((list) => list.name === name)) return;
  const rows = await rowsOf(atTho, name);
  expect(JSON.stringify(rows).match(/\bKAR\b.{0,40}/)?.[0]).toBeUndefined();
});

test("who may not know people does not save them, and the audit trail neither", () => {
  const names = savableLists(atTho).map(({ name }) => name);
  expect(names).toContain("events");
  for (const name of ["audit", "people", "roles"]) {
    expect(names).not.toContain(name);
    expect(openSavedList(atTho, name, { asOf, asked: new Map() })).toBeNull();
  }
});

test("the budget of a plan is saved by who sees all of its lines", async () => {
  const db = database();
  const lines = await db.line.findMany({
    where: { code: { in: ["KAR-02", "THO-01"] } },
    select: { id: true },
  });
  await db.plan.create({
    data: {
      ...{ name: "Of both", year: 2027, budget: 765_432, asOf: new Date(asOf), rankedBy: "loss" },
      ...{ dataVersion: 1, engine: "test", createdBy: admin.userId },
      lines: {
        create: lines.map(({ id }, at) => ({
          ...{ lineId: id, rank: at + 1, cost: 100_000, stopLoss: 1, score: 1, funded: true },
        })),
      },
    },
  });
  expect((await rowsOf(atTho, "plans")).map((row) => row[1])).toEqual(["Of both"]);
  expect(await rowsOf(atTho, "plan-lines")).toHaveLength(1);
  for (const name of savableLists(atTho).map((list) => list.name))
    expect([name, JSON.stringify(await rowsOf(atTho, name)).includes("765432")]).toEqual([name, false]);
  expect((await rowsOf(admin, "plan-budgets")).map((row) => row.slice(1))).toEqual([
    ["Of both", 2027, 765_432],
  ]);
});

test("a list longer than what is read at once is whole, by one key and by two", async () => {
  const site = await database().site.findUniqueOrThrow({ where: { code: "THO" } });
  const happenedAt = new Date("2020-01-01T00:00:00Z");
  const event = { siteId: site.id, kind: "removal" as const, happenedAt, source: "long list" };
  await database().event.createMany({
    data: Array.from({ length: 4_100 }, (_, at) => ({ ...event, reference: String(at) })),
  });
  const rows = await rowsOf(admin, "events", { constructor: "x" });
  expect(rows).toHaveLength(await database().event.count());
  expect(new Set(rows.map(([id]) => id)).size).toBe(rows.length);
  await database().event.deleteMany({ where: { source: "long list" } });
  const month = (at: number) => new Date(Date.UTC(1800 + Math.floor(at / 12), at % 12, 1));
  const rate = { currency: "XTS", perEuro: 1, source: "", recordedBy: "" };
  await database().monthRate.createMany({
    data: Array.from({ length: 2_100 }, (_, at) => ({ ...rate, month: month(at) })),
  });
  expect(await rowsOf(admin, "month-rates")).toHaveLength(await database().monthRate.count());
});

test("filters of the page narrow the list", async () => {
  const all = await rowsOf(admin, "events");
  const ofSite = await rowsOf(admin, "events", { site: "KAR" });
  expect(ofSite.length).toBeGreaterThan(0);
  expect(ofSite.length).toBeLessThan(all.length);
  expect(ofSite.every((row) => row[1] === "KAR")).toBe(true);
  const lately = await rowsOf(admin, "events", { days: "366" });
  const at = savedLists.get("events")?.columns.findIndex(({ key }) => key === "happenedAt") ?? -1;
  const inSpan = (row: ExportRow) => String(row[at]) >= "2025-11-29" && String(row[at]) < "2026-12-01";
  expect(lately.length).toBeGreaterThan(0);
  expect(lately).toHaveLength(all.filter(inSpan).length);
  expect(await rowsOf(atTho, "events", { site: "KAR" })).toEqual([]);
});
