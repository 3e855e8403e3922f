import { afterAll, beforeAll, expect, test, vi } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { chooseImportReading, commitImport, stageImport } from "@/lib/data/import";
import type { DirtyFile, KeyRow } from "@/seed/dirtyFiles/answerKey";
import { dirtySet } from "@/seed/dirtyFiles/dirtySet";
import { load } from "@/seed/load";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { openDirty } from "@/test/support/scoreDirty";

vi.setConfig({ testTimeout: 240_000, hookTimeout: 120_000 });

const tables = showcase();
const files = dirtySet(tables).filter(({ register }) => register === "stock");
/** Below these the matching of parts has become worse than it was; they only go up. */
const FLOOR = { precision: 1, recall: 0.97 };

let fresh: FreshDatabase;
let planner: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("dirty-stock");
  // Empty shelves: what lies in a bin afterwards came from the files.
  await load(fresh.url, "showcase", { ...tables, StockLot: [], StockCount: [], CountLine: [] });
  planner = await makeActor("planner");
});
afterAll(() => fresh.close());

async function loadFile(file: DirtyFile): Promise<void> {
  const { name: fileName, register, bytes } = file;
  const staged = await stageImport(planner, { register, fileName, bytes });
  if (!staged.ok) throw new Error(staged.error.reason);
  const { batchId } = staged.value;
  const { mapping, answers } = await openDirty(file);
  const chosen = await chooseImportReading(planner, { batchId, mapping, answers });
  if (!chosen.ok) throw new Error(chosen.error.reason);
  const answer = await commitImport(planner, { batchId, leftOut: [] });
  if (!answer.ok) throw new Error(`${fileName}: ${answer.error.reason}`);
}

const saidOf = (row: KeyRow, field: string) => row.cells.find((cell) => cell.field === field)?.means ?? null;

/** The catalogue's number of the part a row is about, by the key. */
function partOf(row: KeyRow): string | null {
  const means = saidOf(row, "partNumber");
  return typeof means === "string" ? means.replace(/ rev\. .*$/, "") : null;
}

const numbersInStore = async () =>
  (await database().part.findMany({ select: { number: true } })).map(({ number }) => number);

/** Parts that lie in the bin of a row once the files are loaded. */
async function partsAt(row: KeyRow): Promise<string[]> {
  const where = { site: { code: String(saidOf(row, "siteCode")) }, bin: String(saidOf(row, "bin")) };
  const lots = await database().stockLot.findMany({ where, select: { part: { select: { number: true } } } });
  return [...new Set(lots.map(({ part }) => part.number))];
}

test("rows of six dirty stock exports find their parts in the catalogue, and invent none", async () => {
  const before = new Set(await numbersInStore());
  for (const file of files) await loadFile(file);
  const entries = files.flatMap(({ rows }) => rows.filter(({ outcome }) => outcome === "entry"));
  const found = await Promise.all(
    entries.map(async (row) => ({ wanted: partOf(row), there: await partsAt(row) })),
  );
  const findable = found.filter(({ wanted }) => wanted !== null).length;
  const matched = found.filter(({ there }) => there.length > 0).length;
  const right = found.filter(({ wanted, there }) => there.length === 1 && there[0] === wanted).length;
  const added = (await numbersInStore()).filter((number) => !before.has(number));
  process.stdout.write(
    `stock: ${right} of ${matched} matched rows right, ${right} of ${findable} findable rows found; new parts: ${added.join(", ") || "none"}\n`,
  );
  expect(right / matched).toBeGreaterThanOrEqual(FLOOR.precision);
  expect(right / findable).toBeGreaterThanOrEqual(FLOOR.recall);
});
