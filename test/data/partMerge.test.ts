import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { database } from "@/lib/data/client";
import { PART_TABLES } from "@/lib/data/identity/partRows";
import { loadSurroundings } from "@/lib/data/intake/surroundings";
import { mergeParts, previewMerge, unmergeParts } from "@/lib/data/partMerge";
import { readPartNumber } from "@/lib/intake/readPartNumber";
import { randomStream } from "@/lib/kernel/random";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { makeTwoSites, personWith, type TwoSites } from "@/test/support/twoSites";

let fresh: FreshDatabase;
let places: TwoSites;
const everywhere = personWith("engineer", null);
const day = (text: string) => new Date(`${text}T00:00:00Z`);

beforeAll(async () => {
  fresh = await freshDatabase("partMerge");
  places = await makeTwoSites();
});
afterAll(() => fresh.close());

/** Tables a merge may touch, whole, as the database writes them. */
async function dump(): Promise<unknown> {
  return database().$queryRaw`
    SELECT jsonb_build_object(
      'part', (SELECT jsonb_agg(t ORDER BY t."id") FROM "Part" t),
      'alias', (SELECT jsonb_agg(t ORDER BY t."id") FROM "PartAlias" t),
      'fact', (SELECT jsonb_agg(t ORDER BY t."id") FROM "LifecycleFact" t),
      'position', (SELECT jsonb_agg(t ORDER BY t."id") FROM "Position" t),
      'unit', (SELECT jsonb_agg(t ORDER BY t."id") FROM "Unit" t),
      'placement', (SELECT jsonb_agg(t ORDER BY t."id") FROM "Placement" t),
      'lot', (SELECT jsonb_agg(t ORDER BY t."id") FROM "StockLot" t),
      'event', (SELECT jsonb_agg(t ORDER BY t."id") FROM "Event" t),
      'repair', (SELECT jsonb_agg(t ORDER BY t."id") FROM "RepairOrder" t),
      'removal', (SELECT jsonb_agg(t ORDER BY t."id") FROM "PlannedRemoval" t),
      'successor', (SELECT jsonb_agg(t ORDER BY t."id") FROM "Successor" t)
    ) AS "all"`;
}

async function partOf(number: string, more: object = {}): Promise<string> {
  const data = { maker: "Brindlewick", number, description: "Drive", itemClass: "drive" as const, ...more };
  return (await database().part.create({ data, select: { id: true } })).id;
}

const kept = async () => (await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } })).id;

let stays = 0;

/** Gives a part records of every kind, how many by the dice. */
async function furnish(partId: string, mark: string, roll: () => number): Promise<void> {
  const { north, south, lines } = places;
  const few = () => Math.floor(roll() * 3);
  const position = await database().position.findFirstOrThrow({
    where: { machine: { lineId: lines["SUD-02"] ?? "" } },
  });
  for (let i = 0; i <= few(); i += 1) {
    const unit = await database().unit.create({ data: { partId, serial: `${mark}-${i}` } });
    // A place holds one unit at a time, so each stay has a year of its own.
    stays += 1;
    const year = (years: number) => day(`${1990 + years}-01-01`);
    await database().placement.create({
      data: { unitId: unit.id, positionId: position.id, fromOn: year(stays - 1), untilOn: year(stays) },
    });
  }
  for (const siteId of [north, south].slice(0, 1 + few()))
    await database().stockLot.create({
      data: { siteId, partId, bin: siteId === south ? "R1" : "R9", state: "usable", quantity: few() },
    });
  for (let i = 0; i <= few(); i += 1)
    await database().event.create({
      data: {
        ...{ siteId: south, partId, kind: "failure", source: "work order", reference: `${mark}-${i}` },
        happenedAt: day("2025-05-05"),
      },
    });
  await database().repairOrder.create({
    data: { siteId: north, partId, reference: `R-${mark}`, sentOn: day("2026-10-01") },
  });
  await database().partAlias.create({ data: { partId, alias: `also ${mark}` } });
  await database().lifecycleFact.create({
    data: { partId, source: `list ${mark}`, checkedOn: day("2026-01-01"), recordedOn: day("2026-01-01") },
  });
}

async function mergeNow(keptId: string, otherId: string) {
  const preview = await previewMerge(everywhere, { keptId, otherId });
  if (!preview.ok) throw new Error(preview.error.reason);
  const { seen } = preview.value;
  const merged = await mergeParts(everywhere, { keptId, otherId, reason: "same nameplate", seen });
  if (!merged.ok) throw new Error(merged.error.reason);
  return { preview: preview.value, mergeId: merged.value.mergeId };
}

describe("two parts that are one", () => {
  test("merge and unmerge leave every touched table as it was, whatever the parts hold", async () => {
    const random = randomStream(20261127, "merges").next;
    for (let round = 0; round < 2; round += 1) {
      const otherId = await partOf(`BW-OK-O20-${round}`, {
        price: "12.50",
        priceCurrency: "EUR",
        powerKw: "1.5",
      });
      await furnish(otherId, `round${round}`, random);
      const before = await dump();
      const { mergeId } = await mergeNow(await kept(), otherId);
      expect(await dump()).not.toEqual(before);
      expect(await database().unit.count({ where: { partId: otherId } })).toBe(0);
      expect(await unmergeParts(everywhere, { mergeId })).toEqual({ ok: true, value: { stayed: [] } });
      expect(await dump()).toEqual(before);
    }
  });

  test("a preview moves nothing, and says what would move and what the group would lose", async () => {
    const otherId = await partOf("BW-OK-200");
    await furnish(otherId, "preview", () => 0.9);
    const before = await dump();
    const preview = await previewMerge(everywhere, { keptId: await kept(), otherId });
    expect(await dump()).toEqual(before);
    expect(preview).toMatchObject({
      ok: true,
      value: { counts: { folded: 1, moved: { Unit: 3, Event: 3 } } },
    });
    if (!preview.ok) return;
    const { effect } = preview.value;
    // More failures of the drives on three lines cannot lower what they lose.
    expect(effect.after.loss.mean).not.toBe(effect.before.loss.mean);
    expect(effect.moved.map(({ code }) => code)).toContain("SUD-01");
  });

  test("what was touched since stays, and is named", async () => {
    const otherId = await partOf("BW-OK-300");
    await furnish(otherId, "touched", () => 0.9);
    const { mergeId } = await mergeNow(await kept(), otherId);
    const lot = await database().stockLot.findFirstOrThrow({ where: { partId: await kept(), bin: "R1" } });
    await database().stockLot.update({ where: { id: lot.id }, data: { quantity: 40 } });
    await database().event.delete({
      where: {
        siteId_source_reference: { siteId: places.south, source: "work order", reference: "touched-0" },
      },
    });
    const answer = await unmergeParts(everywhere, { mergeId });
    expect(answer.ok && answer.value.stayed).toEqual([
      expect.stringContaining("1 event changed or removed since"),
      expect.stringMatching(/the pieces of SUD R1 .*BW-OK-020/),
    ]);
    expect(await database().event.count({ where: { partId: otherId } })).toBe(2);
    await database().stockLot.update({ where: { id: lot.id }, data: { quantity: 1 } });
  });

  test("a merge of what nobody looked at is refused, and so is one by a role of one site", async () => {
    const otherId = await partOf("BW-OK-400");
    const keptId = await kept();
    const preview = await previewMerge(everywhere, { keptId, otherId });
    const seen = preview.ok ? preview.value.seen : "";
    await database().unit.create({ data: { partId: otherId, serial: "late" } });
    const told = { keptId, otherId, reason: "same", seen };
    expect(await mergeParts(everywhere, told)).toMatchObject({ ok: false, error: { code: "conflict" } });
    const local = personWith("engineer", places.north);
    expect(await mergeParts(local, told)).toMatchObject({ ok: false, error: { code: "forbidden" } });
    expect(await previewMerge(local, told)).toMatchObject({ ok: false, error: { code: "forbidden" } });
    expect(await database().partMerge.count({ where: { otherId } })).toBe(0);
  });

  test("one serial number in both parts is no merge but a question", async () => {
    const otherId = await partOf("BW-OK-500");
    const keptId = await kept();
    for (const partId of [otherId, keptId])
      await database().unit.create({ data: { partId, serial: "S-77" } });
    const preview = await previewMerge(everywhere, { keptId, otherId });
    expect(preview).toMatchObject({ ok: false, error: { reason: expect.stringContaining("S-77") } });
  });

  test("a part and its successor are two parts", async () => {
    const otherId = await partOf("BW-OL-020");
    const keptId = await kept();
    await database().successor.create({ data: { partId: keptId, successorId: otherId } });
    expect(await previewMerge(everywhere, { keptId, otherId })).toMatchObject({ ok: false });
  });

  test("a file that writes the merged number, by its own maker's spelling, means the part that counts", async () => {
    const otherId = await partOf("BW-OK 020", { maker: "Brindle Wick" });
    const keptId = await kept();
    await mergeNow(keptId, otherId);
    const { catalogue } = await loadSurroundings(database(), "2026-11-30");
    const written = readPartNumber("bw ok 020");
    for (const maker of ["Brindle Wick", "Brindlewick", null])
      expect(written.state === "value" && catalogue.find(written.value, maker)).toMatchObject({
        ...{ kind: "known", maker: "Brindlewick", number: "BW-OK-020" },
      });
  });

  test("of two people who merge one part, one wins and the other is told", async () => {
    const otherId = await partOf("BW-OK-600");
    const keptId = await kept();
    const preview = await previewMerge(everywhere, { keptId, otherId });
    const told = { keptId, otherId, reason: "same", seen: preview.ok ? preview.value.seen : "" };
    const answers = await Promise.all([mergeParts(everywhere, told), mergeParts(everywhere, told)]);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ error: { code: "missing" } });
    expect(await database().partAlias.count({ where: { alias: "BW-OK-600" } })).toBe(1);
  });
});

/** Tables that tell what was shown, said or computed of a part, or what people said of its number. */
const STAY = "EvaluatedPool NoticePart NumberVerdict PastPool PoolRow ReviewAction ReviewBuy Successor".split(
  " ",
);

test("every table that names a part follows a merge, or stays for a reason", async () => {
  const rows = await database().$queryRaw<{ table: string }[]>`
    SELECT "table_name" AS "table" FROM information_schema.columns
    WHERE "table_schema" = 'public' AND "column_name" = 'partId'`;
  expect(rows.map(({ table }) => table).sort()).toEqual([...PART_TABLES, ...STAY].sort());
});
