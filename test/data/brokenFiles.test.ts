import { afterAll, beforeAll, expect, test, vi } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { commitImport, stageImport } from "@/lib/data/import";
import { load } from "@/seed/load";
import { small } from "@/seed/scenarios/small";
import { makeActor } from "@/test/support/actors";
import { brokenFiles } from "@/test/support/brokenFiles";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

vi.setConfig({ testTimeout: 240_000 });

const SEED = 20_261_130;
/** Each kind of broken file once. */
const COUNT = 33;

let fresh: FreshDatabase;
let planner: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("broken-files");
  await load(fresh.url, "small", small());
  planner = await makeActor("planner");
});
afterAll(() => fresh.close());

/** What a load may write, in numbers; the version of the data moves with every load that wrote. */
async function stored() {
  const [lots, parts, sites, changes, committed] = await Promise.all([
    database().stockLot.count(),
    database().part.count(),
    database().site.count(),
    database().importChange.count(),
    database().importBatch.count({ where: { state: "committed" } }),
  ]);
  return { lots, parts, sites, changes, committed };
}

test(`${COUNT} broken files are refused by name or loaded whole; none breaks the store or is taken by halves`, async () => {
  let [refused, loaded] = [0, 0];
  for (const { name, kind, bytes } of brokenFiles(COUNT, SEED)) {
    const before = await stored();
    const staged = await stageImport(planner, { register: "stock", fileName: name, bytes });
    if (!staged.ok) {
      refused += 1;
      expect(staged.error.reason.startsWith(`${name}: `), kind).toBe(true);
      expect(await stored(), kind).toEqual(before);
      continue;
    }
    const answer = await commitImport(planner, { batchId: staged.value.batchId, leftOut: [] });
    if (!answer.ok) {
      expect(answer.error.reason.length, kind).toBeGreaterThan(20);
      expect(await stored(), kind).toEqual(before);
      continue;
    }
    loaded += 1;
    const steps = await database().importChange.count({ where: { batchId: staged.value.batchId } });
    expect(steps, kind).toBe(answer.value.added + answer.value.changed);
  }
  process.stdout.write(`${COUNT} broken files: ${refused} refused when handed in, ${loaded} loaded\n`);
  expect(refused).toBeGreaterThan(15);
});

test("a formula in a remark is taken as nothing, code is stored as the text it is; neither stops the row", async () => {
  const formula = "=cmd|' /C calc'!A0";
  const script = "<script>alert(1)</script>";
  const text = `Site;Bin;Maker;Part number;Quantity;State;Note\nTHO;X-1;Tarnholt Motion;TM-HR-020;1;usable;${formula}\nTHO;X-2;Tarnholt Motion;TM-HR-020;1;usable;${script}\n`;
  const bytes = new Uint8Array(Buffer.from(text, "utf8"));
  const staged = await stageImport(planner, { register: "stock", fileName: "code.csv", bytes });
  if (!staged.ok) throw new Error(staged.error.reason);
  const answer = await commitImport(planner, { batchId: staged.value.batchId, leftOut: [] });
  expect(answer).toMatchObject({ ok: true, value: { refused: 0 } });
  const lots = await database().stockLot.findMany({
    where: { bin: { startsWith: "X-" } },
    orderBy: { bin: "asc" },
  });
  expect(lots.map((lot) => lot.note)).toEqual([null, script]);
});
