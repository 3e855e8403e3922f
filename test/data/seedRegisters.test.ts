import { readdir, readFile } from "node:fs/promises";
import { expect, test, vi } from "vitest";
import { database } from "@/lib/data/client";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { commitImport, stageImport } from "@/lib/data/import";
import { dialectOf, openRegister } from "@/lib/intake/openRegister";
import { readRegister } from "@/lib/intake/readRegister";
import { REGISTERS } from "@/lib/intake/registers";
import { toMapping } from "@/lib/intake/suggestMapping";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import { load } from "@/seed/load";
import { HABITS } from "@/seed/registerFiles/habits";
import { headerOf } from "@/seed/registerFiles/headers";
import { registerFiles } from "@/seed/registerFiles/registerFiles";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { makeActor } from "@/test/support/actors";
import { freshDatabase } from "@/test/support/database";
import { leaveOutUnregistered } from "@/test/support/leaveOutUnregistered";

// Loading a database takes its time on a busy machine.
vi.setConfig({ testTimeout: 240_000 });

const company = showcase();
const files = await registerFiles(company);
const folder = new URL("../../seed/registers/", import.meta.url);

test("the kept files are those of the scenario, byte for byte; workbooks cell by cell", async () => {
  expect((await readdir(folder)).sort()).toEqual(files.map(({ name }) => name).sort());
  for (const { name, register, bytes } of files) {
    const kept = new Uint8Array(await readFile(new URL(name, folder)));
    if (name.endsWith(".csv")) expect(Buffer.compare(kept, bytes), name).toBe(0);
    else
      expect(await openRegister(kept, REGISTERS[register])).toEqual(
        await openRegister(bytes, REGISTERS[register]),
      );
  }
});

test.each(files)(
  "$name is read without an error and without a question",
  async ({ name, register, bytes }) => {
    const opened = await openRegister(bytes, REGISTERS[register]);
    if (!opened.ok) throw new Error(opened.error);
    const { body, suggestions, file } = opened.value;
    const mapping = toMapping(suggestions);
    const site = HABITS[name.slice(0, 3)];
    if (site && register !== "lifecycle" && register !== "scans") {
      const expected = Object.entries(mapping).map(([, field]) =>
        headerOf(register, site.language, field ?? ""),
      );
      expect(Object.keys(mapping)).toEqual(expected);
      // Plain letters are the same bytes in every encoding, so such a file does not tell.
      if (bytes.some((byte) => byte > 127))
        expect(file.encoding).toBe(site.format === "workbook" ? null : site.encoding);
    }
    const finding = dialectOf(body, mapping, REGISTERS[register]);
    expect(finding.ask).toEqual([]);
    const reading = readRegister(body, { register: REGISTERS[register], mapping, dialect: finding.proposal });
    expect(
      reading.rows.flatMap(({ problems }) => problems.filter(({ severity }) => severity === "error")),
    ).toEqual([]);
    expect(reading.totals.skipped).toBe(0);
  },
);

/** The input of an evaluation with people's names for things in place of ids. */
async function namedInput() {
  const db = database();
  const input = await db.$transaction((tx) => loadGroupInput(tx, "2026-11-30"));
  const names = new Map<string, string>([
    ...(await db.site.findMany()).map(({ id, code }) => [id, code] as const),
    ...(await db.line.findMany()).map(({ id, code }) => [id, code] as const),
    ...(await db.part.findMany()).map(({ id, number }) => [id, number] as const),
    ...(await db.family.findMany()).map(({ id, maker, name }) => [id, `${maker} ${name}`] as const),
  ]);
  const sorted = (value: unknown): unknown => {
    if (Array.isArray(value))
      return value.map(sorted).sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
    if (typeof value === "string") return names.get(value) ?? value;
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, sorted(inner)]));
  };
  return { input, named: sorted(input) };
}

test("an empty installation that loads the files computes what the seeded one does", async () => {
  const seeded = await freshDatabase("seeded company");
  await load(seeded.url, "showcase", company);
  await leaveOutUnregistered(seeded.url);
  const expected = await namedInput();
  await seeded.close();

  const empty = await freshDatabase("loaded registers");
  const admin = await makeActor("admin");
  for (const { register, name, bytes } of files) {
    const staged = await stageImport(admin, { register, fileName: name, bytes: new Uint8Array(bytes) });
    if (!staged.ok) throw new Error(`${name}: ${staged.error.reason}`);
    const loaded = await commitImport(admin, { batchId: staged.value.batchId, leftOut: [] });
    expect([name, loaded.ok && loaded.value.refused]).toEqual([name, 0]);
  }
  const actual = await namedInput();
  await empty.close();

  expect(actual.named).toEqual(expected.named);
  const lossOf = ({ input }: typeof actual) => evaluate(input, likelyAssumptions).stopLoss.mean;
  expect(lossOf(actual)).toBeCloseTo(lossOf(expected), 6);
});
