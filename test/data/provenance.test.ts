import { afterAll, beforeAll, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { change } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { commitImport, stageImport, undoImport } from "@/lib/data/import";
import { readImport } from "@/lib/data/importView";
import { provenanceOf } from "@/lib/data/provenance";
import { ok } from "@/lib/kernel/result";
import { originInWords } from "@/lib/view/provenance";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

let fresh: FreshDatabase;
let planner: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("provenance");
  planner = await makeActor("planner");
});
afterAll(() => fresh.close());

const assets = (
  cost: string,
) => `Site;Site name;Country;Time zone;Currency;Line;Line name;Cost per hour;Machine
OST;Ostrowka;PL;Europe/Warsaw;PLN;OST-01;Wrap 1;${cost};M1
OST;Ostrowka;PL;Europe/Warsaw;PLN;OST-02;Wrap 2;${cost};M1`;

async function load(fileName: string, text: string): Promise<string> {
  const bytes = new TextEncoder().encode(text);
  const staged = await stageImport(planner, { register: "assets", fileName, bytes });
  if (!staged.ok) throw new Error(staged.error.reason);
  const loaded = await commitImport(planner, { batchId: staged.value.batchId, leftOut: [] });
  if (!loaded.ok) throw new Error(loaded.error.reason);
  return staged.value.batchId;
}

test("a value is followed to file and row, through a later file, an undo and an edit by hand", async () => {
  const first = await load("spring.csv", assets("6450"));
  const line = await database().line.findUniqueOrThrow({ where: { code: "OST-02" } });
  const told = async (actor = planner) => {
    const origins = await provenanceOf(actor, { entity: "Line", id: line.id });
    return origins?.map((origin) => originInWords(origin).replace(/ on .*$/, "")) ?? null;
  };
  const made = "From spring.csv, row 3, loaded";
  expect(await told()).toEqual([made]);
  expect((await readImport(planner, first, []))?.loaded?.made.shown).toContainEqual({
    ...{ place: expect.any(Number), rowNumber: 3, thing: "line", name: "OST-02", kind: "added" },
  });

  const later = await load("autumn.csv", assets("7000"));
  expect(await told()).toEqual(["Cost per hour from autumn.csv, row 3, loaded", made]);
  await undoImport(planner, { batchId: later });
  expect(await told()).toEqual([made]);

  await change(planner, async (tx, record) => {
    await tx.line.update({ where: { id: line.id }, data: { name: "Wrap two" } });
    record({ deed: "line:write", entity: "Line", entityId: line.id, after: { name: "Wrap two" } });
    return ok(null);
  });
  expect(await told()).toEqual(["Name by hand", made]);

  const elsewhere = await database().site.create({
    data: { code: "KAR", name: "Karlsvik", country: "SE", timeZone: "Europe/Stockholm", currency: "SEK" },
  });
  expect(await told(await makeActor("viewer", elsewhere.id))).toBeNull();
  expect(await provenanceOf(planner, { entity: "User", id: line.id })).toBeNull();
});
