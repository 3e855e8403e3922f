import { afterAll, beforeAll, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { commitImport, stageImport } from "@/lib/data/import";
import type { RegisterKey } from "@/lib/intake/registers";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

let fresh: FreshDatabase;
let planner: Actor;

const files: readonly (readonly [RegisterKey, string])[] = [
  [
    "lifecycle",
    `Maker;Family;Part number;Class of item;Notice;Last order;Last ship;Repair until;Source;Checked on;Lead weeks;Repair yield;Repair turnaround days
Tarnholt Motion;Heron R;TM-HR-020;drive;2026-10-30;2027-04-30;2027-10-29;2031-12-31;bulletin 1;2026-11-02;9;60;25`,
  ],
  [
    "assets",
    `Site;Site name;Country;Time zone;Currency;Budget rate;Line;Cost per hour;Buffer hours;Machine
OST;Ostrowka Mała;PL;Europe/Warsaw;PLN;4,30;OST-01;6450;1,0;M1
OST;Ostrowka Mała;PL;Europe/Warsaw;PLN;4,30;OST-02;;;M1`,
  ],
  [
    "axes",
    `Line;Machine;Axis;Drive maker;Drive part;Drive serial
OST-01;M1;A01;Tarnholt Motion;TM-HR-020-B1;S1
OST-01;M1;A02;Tarnholt Motion;TM-HR-020-B1;S2
OST-02;M1;A01;Tarnholt Motion;TM-HR-020-B1;S3`,
  ],
  [
    "stock",
    `Site;Bin;Maker;Part number;Quantity;State;Last powered on
OST;A-1;Tarnholt Motion;TM-HR-020-B1;2;usable;2026-10-01
OST;A-2;Tarnholt Motion;TM-HR-020-B1;3;on hold;`,
  ],
  [
    "events",
    `Site;Line;Machine;Axis;Class of item;Kind;Date;Downtime;Common cause;Reference;Spare at hand
OST;OST-01;M1;A01;drive;failure;2026-03-01 10:00;5,0;heat;1;yes
OST;OST-01;M1;A02;drive;failure;2026-03-01 11:00;5,0;heat;2;yes
OST;OST-02;M1;A01;drive;no fault found;2026-05-01 10:00;2,0;;3;yes
OST;OST-02;M1;A01;drive;failure;2019-05-01 10:00;2,0;;4;yes
OST;OST-02;M1;A01;drive;failure;2026-12-24 10:00;2,0;;5;yes`,
  ],
];

beforeAll(async () => {
  fresh = await freshDatabase("evaluation");
  planner = await makeActor("planner");
  for (const [register, text] of files) await load(register, text);
});
afterAll(() => fresh.close());

test("a common cause counts once, old and later events not at all, and years run from the window's start", async () => {
  const { experience } = await loadGroupInput(database(), "2026-11-30");
  const drives = experience.find((row) => row.removals > 0);
  expect(drives).toMatchObject({ removals: 2, failures: 1 });
  // Three drives for the five years before the day, 1826 days of 1/365.25 year.
  expect(drives?.unitYears).toBeCloseTo((3 * 1826) / 365.25, 9);
});

test("cost per hour comes in euros at the budget rate, and an unknown one stays unknown", async () => {
  const { lines } = await loadGroupInput(database(), "2026-11-30");
  expect(lines.map((line) => line.costPerHour)).toEqual([1500, null]);
});

test("an evaluation is computed once for the data as they are, and anew after a change", async () => {
  const first = await currentEvaluation("2026-11-30");
  const again = await Promise.all([currentEvaluation("2026-11-30"), currentEvaluation("2026-11-30")]);
  expect(again.map((mark) => mark.id)).toEqual([first.id, first.id]);
  await load("stock", (files[3]?.[1] ?? "").replace(";2;usable", ";1;usable"));
  const after = await currentEvaluation("2026-11-30");
  expect(after.dataVersion).toBe(first.dataVersion + 1);
  expect(after.id).not.toBe(first.id);
});

test("an evaluation of older data is dropped, but not under a page that still reads it", async () => {
  const first = await currentEvaluation("2026-11-30");
  const aged = await currentEvaluation("2026-11-29");
  await load("stock", files[3]?.[1] ?? "");
  await currentEvaluation("2026-11-30");
  expect(await database().evaluation.count({ where: { id: { in: [first.id, aged.id] } } })).toBe(2);
  await database().evaluation.update({
    where: { id: aged.id },
    data: { staleSince: new Date("2026-01-01") },
  });
  await load("stock", (files[3]?.[1] ?? "").replace(";2;usable", ";1;usable"));
  await currentEvaluation("2026-11-30");
  expect(await database().evaluation.count({ where: { id: first.id } })).toBe(1);
  expect(await database().evaluation.count({ where: { id: aged.id } })).toBe(0);
});

test("a line without a cost per hour is scored, and has no money and no place by money", async () => {
  const { id } = await currentEvaluation("2026-11-30");
  const rows = await database().evaluatedLine.findMany({
    where: { evaluationId: id },
    orderBy: { line: { code: "asc" } },
  });
  expect(rows.map((row) => row.rankByLoss)).toEqual([1, null]);
  expect(rows.map((row) => (row.result as { stopLoss: unknown }).stopLoss === null)).toEqual([false, true]);
  for (const row of rows) expect((row.result as { score: number }).score).toBeGreaterThan(0);
});

test("before the notice was read, the part is undated", async () => {
  const drive = async (asOf: string) =>
    (await loadGroupInput(database(), asOf)).pools.find((pool) => pool.familyId !== null)?.dates;
  expect((await drive("2026-10-31"))?.checkedOn).toBeNull();
  expect(await drive("2026-11-30")).toMatchObject({ noticeOn: "2026-10-30", checkedOn: "2026-11-02" });
});

async function load(register: RegisterKey, text: string): Promise<void> {
  const staged = await stageImport(planner, {
    register,
    fileName: `${register}.csv`,
    bytes: new TextEncoder().encode(text),
  });
  if (!staged.ok) throw new Error(staged.error.reason);
  const loaded = await commitImport(planner, { batchId: staged.value.batchId, leftOut: [] });
  if (!loaded.ok || loaded.value.refused > 0) throw new Error(JSON.stringify(loaded));
}
