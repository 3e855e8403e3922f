import { expect, test } from "vitest";
import { type AxisEntries, type JudgedAxis, judgeAxis } from "@/lib/retrofit/judgeAxis";
import type { CheckEntry } from "@/lib/retrofit/judgeCheck";
import type { AxisEntryRow, AxisRecordRow } from "@/seed/projectTables";
import { company, D0 } from "@/test/data/seedLookup";

const readEntry = (row: AxisEntryRow): CheckEntry => ({
  ...row,
  asLeft: row.asLeft.slice(1, -1).split(",").filter(Boolean).map(Number),
});

function entriesOf(record: AxisRecordRow): AxisEntries {
  const rows = company.AxisEntry.filter(({ recordId }) => recordId === record.id);
  return Object.fromEntries(rows.map((row) => [row.checkId, readEntry(row)]));
}

interface Judged {
  readonly record: AxisRecordRow;
  readonly entries: AxisEntries;
  readonly judged: JudgedAxis;
}

const all: readonly Judged[] = company.AxisRecord.map((record) => {
  const entries = entriesOf(record);
  return { record, entries, judged: judgeAxis(entries) };
});
/** Records with something measured on the new drive. */
const ran = all.filter(({ entries }) => Object.values(entries).some(({ asLeft }) => asLeft.length > 0));
const accepted = ran.filter(({ record }) => record.acceptedOn !== null);
const waiting = ran.filter(({ record }) => record.acceptedOn === null);

test("the 22 axes cut over in July and 10 of the 20 still on the ring have a record, each one axis of KAR-02", () => {
  expect([all.length, ran.length]).toEqual([32, 22]);
  expect(new Set(all.map(({ record }) => record.axisId)).size).toBe(32);
  const line = company.Line.find(({ code }) => code === "KAR-02");
  const machines = new Set(company.Machine.filter(({ lineId }) => lineId === line?.id).map(({ id }) => id));
  const axes = new Set(company.Axis.filter(({ machineId }) => machines.has(machineId)).map(({ id }) => id));
  expect(all.every(({ record }) => axes.has(record.axisId))).toBe(true);
});

test("16 are accepted, on days before today, and nothing stands in the way of any of them", () => {
  expect(accepted).toHaveLength(16);
  expect(accepted.flatMap(({ judged }) => judged.hindrances)).toEqual([]);
  expect(accepted.every(({ record }) => (record.acceptedOn ?? "9") < D0)).toBe(true);
});

test("the six others: one refused by its stopping distance, four with something missing, one only to be accepted", () => {
  const titles = waiting.map(({ judged }) => judged.hindrances.map((words) => words.split(":")[0]));
  expect(titles).toEqual([
    ["Stopping distance at full speed and load"],
    ["Backup taken after tuning and restored"],
    ["Homing repeats and meets the mark", "Production rate over the proving run"],
    ["Safety functions, each channel"],
    ["Emergency stop, guards and restart interlock"],
    [],
  ]);
  const [refused] = waiting;
  expect(refused?.judged.hindrances[0]).toMatch(/: Worst \d+(\.\d)?, allowed \d+(\.\d)?$/);
  expect(waiting[3]?.judged.hindrances[0]).toContain("a second name");
});

test("what is surveyed of the ring axes holds values before removal and nothing of the new drive", () => {
  const surveyed = all.filter((one) => !ran.includes(one));
  expect(surveyed.map(({ entries }) => Object.keys(entries).length)).toEqual([
    ...[8, 8, 9, 8, 8, 8],
    ...[3, 3, 3, 3],
  ]);
  const values = surveyed.flatMap(({ entries }) => Object.values(entries));
  expect(values.every(({ asLeft, confirmed }) => asLeft.length === 0 && confirmed === null)).toBe(true);
});
