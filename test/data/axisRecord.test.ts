import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readAxisRecord, readProjectAxes } from "@/lib/data/axisRecord";
import { acceptAxis, setAxisEntry } from "@/lib/data/axisRecordChange";
import { database } from "@/lib/data/client";
import { axisChecks } from "@/lib/retrofit/axisChecks";
import { emptyEntry } from "@/lib/retrofit/judgeCheck";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let projectId = "";
let axisId = "";
let strangeAxis = "";

async function axisOn(lineId: string, code: string): Promise<string> {
  const machine = await database().machine.create({ data: { lineId, code: `M-${code}`, name: "Wrapper" } });
  const scaling = { countsPerRev: 10_000, motorRevs: 3, loadRevs: 1, unitsPerLoadRev: "10" };
  const axis = await database().axis.create({ data: { machineId: machine.id, code, ...scaling } });
  return axis.id;
}

beforeAll(async () => {
  made = await freshDatabase("axis_record");
  world = await makeTwoSites();
  const lineId = world.lines["SUD-01"] ?? "";
  axisId = await axisOn(lineId, "A1");
  strangeAxis = await axisOn(
    Object.entries(world.lines).find(([code]) => !code.startsWith("SUD"))?.[1] ?? "",
    "A9",
  );
  const budget = { currency: "PLN", budget: "100000.00" };
  const project = await database().project.create({
    data: { siteId: world.south, lineId, code: "SUD-01-R1", name: "Retrofit", ...budget },
  });
  projectId = project.id;
});

afterAll(() => made.close());

const technician = () => personWith("technician", world.south);
const engineer = () => personWith("engineer", world.south);
const signed = { by: "Technician A", witness: "Engineer B", on: "2027-07-10" };
const at = () => ({ projectId, axisId });
const entryOf = (checkId: string, version: number, given: object) => ({
  ...at(),
  ...{ checkId, version, entry: { ...emptyEntry, asLeft: [], ...signed, ...given } },
});
const file = () => readAxisRecord(technician(), { code: "SUD-01-R1", axisId });

describe("the record of an axis", () => {
  it("holds what the register knows of the scaling", async () => {
    // 10 000 counts × 3 motor revolutions ÷ 10 units.
    expect(await file()).toMatchObject({ countsPerUnit: 3000, entries: {}, acceptedOn: null });
  });

  it("keeps a check, and the next one over it only from who saw it", async () => {
    const first = await setAxisEntry(technician(), entryOf("backup", 0, { confirmed: false }));
    expect(first).toEqual({ ok: true, value: { version: 1 } });
    const blind = await setAxisEntry(engineer(), entryOf("backup", 0, { confirmed: true }));
    expect(blind).toMatchObject({ ok: false, error: { code: "conflict" } });
    expect((await file())?.entries.backup).toMatchObject({ confirmed: false, version: 1 });
    const second = await setAxisEntry(engineer(), entryOf("backup", 1, { confirmed: true }));
    expect(second).toEqual({ ok: true, value: { version: 2 } });
    const audit = await database().auditEntry.findMany({
      where: { deed: "axis:record" },
      orderBy: { at: "asc" },
    });
    expect(audit.map(({ after }) => (after as { confirmed: boolean }).confirmed)).toEqual([false, true]);
  });

  it("of two at once one is kept and the other told", async () => {
    const both = await Promise.all(
      [technician(), engineer()].map((actor, i) =>
        setAxisEntry(actor, entryOf("torque", 0, { limit: 80, asLeft: [70 + i] })),
      ),
    );
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
  });

  it("leaves every figure of the group as it is", async () => {
    const version = () => database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
    const before = await version();
    await setAxisEntry(technician(), entryOf("identity", 0, { confirmed: true }));
    expect(await version()).toEqual(before);
  });

  it("is closed to a viewer, to another site, and to an axis of another line", async () => {
    const entry = entryOf("end-limits", 0, { confirmed: true });
    for (const actor of [personWith("viewer", world.south), personWith("technician", world.north)])
      expect(await setAxisEntry(actor, entry)).toMatchObject({ ok: false, error: { code: "missing" } });
    const strange = await setAxisEntry(technician(), { ...entry, axisId: strangeAxis });
    expect(strange).toMatchObject({ ok: false, error: { code: "missing" } });
    const nobody = personWith("viewer", world.north);
    expect(await readProjectAxes(nobody, "SUD-01-R1")).toBeNull();
    expect(await readAxisRecord(nobody, { code: "SUD-01-R1", axisId })).toBeNull();
    expect(await readAxisRecord(technician(), { code: "SUD-01-R1", axisId: strangeAxis })).toBeNull();
    expect(await readAxisRecord(technician(), { code: "SUD-01-R1", axisId: randomUUID() })).toBeNull();
  });

  it("knows no check that is not on the list", async () => {
    expect(await setAxisEntry(technician(), entryOf("invented", 0, {}))).toMatchObject({ ok: false });
  });
});

describe("accepting an axis", () => {
  it("is refused with the first check that stands in the way", async () => {
    const refused = await acceptAxis(engineer(), { ...at(), accepted: true });
    expect(refused).toMatchObject({ ok: false, error: { code: "impossible" } });
    if (!refused.ok) expect(refused.error.reason).toContain(axisChecks[0]?.title ?? "?");
    expect((await file())?.acceptedOn).toBeNull();
  });

  it("is an engineer's, and locks the record until it is taken back", async () => {
    const measured = {
      asFound: 100,
      limit: 100,
      asLeft: Array.from({ length: 10 }, () => 100),
      confirmed: true,
    };
    for (const { id } of axisChecks) {
      const version = (await file())?.entries[id]?.version ?? 0;
      const given = id === "lost-cycles" ? { asLeft: [0] } : measured;
      expect(await setAxisEntry(technician(), entryOf(id, version, given))).toMatchObject({ ok: true });
    }
    expect(await acceptAxis(technician(), { ...at(), accepted: true })).toMatchObject({ ok: false });
    expect(await acceptAxis(engineer(), { ...at(), accepted: true })).toEqual({ ok: true, value: null });
    expect((await readProjectAxes(engineer(), "SUD-01-R1"))?.[0]?.acceptedBy).toBe(engineer().name);
    const late = await setAxisEntry(technician(), entryOf("backup", 3, { confirmed: false }));
    expect(late).toMatchObject({ ok: false, error: { code: "impossible" } });
    expect(await acceptAxis(engineer(), { ...at(), accepted: false })).toEqual({ ok: true, value: null });
    expect((await file())?.acceptedOn).toBeNull();
  });
});
