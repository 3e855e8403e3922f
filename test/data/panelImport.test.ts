import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { commitImport, stageImport, undoImport } from "@/lib/data/import";
import type { RegisterKey } from "@/lib/intake/registers";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { untilRead } from "@/test/support/untilRead";

let fresh: FreshDatabase;
let planner: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("panelImport");
  planner = await makeActor("planner");
  await load("assets", `${SITE}\n${LINE};M1;K1;Slate 5;B2;16;OST-01;+A1;Main panel;left of the gate`);
});
afterAll(() => fresh.close());

const SITE =
  "Site;Site name;Country;Time zone;Currency;Line;Machine;Controller;Controller model;Controller hardware;Controller axes at most;Controller leads line;Panel;Panel name;Panel location";
const LINE = "OST;Ostrowka;PL;Europe/Warsaw;PLN;OST-01";

describe("panels", () => {
  test("the asset register names them, and an axis row says which one its drive stands in", async () => {
    const controller = await database().controller.findFirstOrThrow({ include: { leadsLine: true } });
    expect(controller).toMatchObject({ hardware: "B2", axisLimit: 16, leadsLine: { code: "OST-01" } });
    expect(await panels()).toEqual([["+A1", "Main panel", "left of the gate", []]]);
    await load("axes", `Line;Machine;Axis;Panel\nOST-01;M1;A01;+A1\nOST-01;M1;A02;+A2`);
    expect(await panels()).toEqual([
      ["+A1", "Main panel", "left of the gate", ["A01-T1"]],
      ["+A2", null, null, ["A02-T1"]],
    ]);
    const motors = await database().position.findMany({ where: { itemClass: "motor" } });
    expect(motors.map(({ panelId }) => panelId)).toEqual([null, null]);
  });

  test("a machine with two panels has two rows, and the same file twice changes nothing", async () => {
    const rows = `${SITE}\n${LINE};M1;K1;;;;;+A1;;\n${LINE};M1;K1;;;;;+A2;Drive panel;`;
    expect(await load("assets", rows)).toMatchObject({ added: 0, changed: 1, refused: 0 });
    expect(await load("assets", rows)).toMatchObject({ added: 0, changed: 0, refused: 0 });
  });

  test("taking the file back takes its panel away and puts the places where they were", async () => {
    const moved = await stage("axes", `Line;Machine;Axis;Panel\nOST-01;M1;A01;+A9`);
    await commitImport(planner, { batchId: moved, leftOut: [] });
    expect((await panels()).map(([designation, , , places]) => [designation, places])).toEqual([
      ["+A1", []],
      ["+A2", ["A02-T1"]],
      ["+A9", ["A01-T1"]],
    ]);
    expect(await undoImport(planner, { batchId: moved })).toMatchObject({ ok: true });
    expect((await panels()).map(([designation, , , places]) => [designation, places])).toEqual([
      ["+A1", ["A01-T1"]],
      ["+A2", ["A02-T1"]],
    ]);
  });
});

describe("a leading controller", () => {
  test("is one a line: a second one is refused by name, in the file and beside what is stored", async () => {
    const rows = `${SITE}\n${LINE};M1;K1;;;;OST-01;;;\n${LINE};M2;K2;Slate 5;;;OST-01;;;`;
    expect((await problemsOf("assets", rows))[3]).toEqual([
      "K1 leads this line already; a line has one leading controller",
    ]);
    expect(await load("assets", rows)).toMatchObject({ refused: 1 });
  });

  test("a most of axes below one is refused with its row, what was got and a cure", async () => {
    const staged = await shownProblems("assets", `${SITE}\n${LINE};M1;K1;;;0;;;;`);
    expect(staged).toMatchObject([
      { rowNumber: 2, found: "0", problem: "Below the smallest value that can be, 1" },
    ]);
    expect(staged[0]?.remedy).toContain("Correct the cell");
  });
});

const FACTS =
  "Line;Machine;Axis;Power cable;Power cable length;Power cable in a moving chain;Travel;Hardware end, low;Hardware end, high;Software end, low;Software end, high;Travel unit;Homing;Home offset;Surveyed on";
const axis = () => database().axis.findFirstOrThrow({ where: { code: "A01" } });

describe("cables, travel and homing", () => {
  test("are read with their unit; what is empty stays not known; the survey's day makes them measured", async () => {
    await load(
      "axes",
      `${FACTS}\nOST-01;M1;A01;4G2.5;12,5;nie;350;-5;355;0;350;deg;end stop;-1,25;2026-09-14\nOST-01;M1;A02;;;;;;;;;;;;`,
    );
    const stored = await axis();
    expect([stored.powerCable, Number(stored.powerCableLength), stored.powerCableInChain]).toEqual([
      "4G2.5",
      12.5,
      false,
    ]);
    expect([stored.hardLow, stored.hardHigh, stored.softLow, stored.softHigh].map(Number)).toEqual([
      -5, 355, 0, 350,
    ]);
    expect([stored.homing, Number(stored.homeOffset), stored.homingEvidence]).toEqual([
      "to_end_stop",
      -1.25,
      "measured",
    ]);
    expect(stored.travelReadOn?.toISOString().slice(0, 10)).toBe("2026-09-14");
    expect([stored.feedbackCable, stored.feedbackCableEvidence]).toEqual([null, null]);
    const other = await database().axis.findFirstOrThrow({ where: { code: "A02" } });
    expect([other.homing, other.homingEvidence, other.travel]).toEqual([null, null, null]);
  });

  test("a negative length is refused with row, value and cure; so is a lower end above the upper one", async () => {
    const found = await shownProblems(
      "axes",
      `${FACTS}\nOST-01;M1;A01;;-3;;;;;;;;;;\nOST-01;M1;A02;;;;;;;9;2;deg;;;`,
    );
    expect(found.filter(({ severity }) => severity === "error")).toMatchObject([
      {
        ...{ rowNumber: 2, found: "-3", column: "Power cable length" },
        problem: "Below the smallest value that can be, 0",
        remedy: "Correct the cell, or leave it empty",
      },
      {
        ...{ rowNumber: 3, found: "2" },
        problem: "“Software end, high” lies below “Software end, low” (9)",
        remedy: "Change the two about, or correct the one that is wrong",
      },
    ]);
  });

  test("an end that crosses the stored other end is refused before the database has to", async () => {
    const found = await problemsOf("axes", `${FACTS}\nOST-01;M1;A01;;;;;;-20;;;deg;;;`);
    expect(found[2]).toEqual([
      "The lower hardware end would be -5 and the upper one -20; one of them is stored already",
    ]);
    expect(Number((await axis()).hardHigh)).toBe(355);
  });

  test("a software end beyond the hardware end is taken with a warning", async () => {
    const found = await shownProblems("axes", `${FACTS}\nOST-01;M1;A02;;;;;0;100;-3;90;mm;;;`);
    expect(found.map(({ severity }) => severity)).toEqual(["warning"]);
    expect(await load("axes", `${FACTS}\nOST-01;M1;A02;;;;;0;100;-3;90;mm;;;`)).toMatchObject({ refused: 0 });
  });
});

describe("profile families and power", () => {
  test("are taken by number; one the standard does not have is refused", async () => {
    const network =
      "Line;Machine;Axis;Network;Network kind;Profile family of network\nOST-01;M1;A01;R1;ring;";
    await load("axes", `${network}16`);
    expect(await database().network.findFirst()).toMatchObject({ profileFamily: 16 });
    const [problem] = (await problemsOf("axes", `${network}7`))[2] ?? [];
    expect(problem).toBe("CPF 7 is no communication profile family of IEC 61784 on record");
    const parts = "Maker;Part number;Class of item;Rated power;Profile family;Source;Checked on";
    await load("lifecycle", `${parts}\nDuskvale;DV-WR-05;motor;0,75 kW;;plate;2026-09-01`);
    const part = await database().part.findFirstOrThrow({ where: { number: "DV-WR-05" } });
    expect(Number(part.powerKw)).toBe(0.75);
  });
});

describe("copies, numbers and windows", () => {
  const copies = (rows: string) =>
    `Site;Controller;What was copied;Taken on;Where it lies;Put back and ran on;Source available\n${rows}`;
  const numbers = (rows: string) => `Site;Line;Function;Number;When somebody answers;Note\n${rows}`;
  const windows = (rows: string) => `Site;Line;Name;First day;Last day;Usable hours\n${rows}`;

  test("load once, change what they name, and go again when taken back", async () => {
    const kept = copies("OST;K1;program;2026-05-04;archive, shelf 3;2026-05-06;yes");
    expect(await load("backups", kept)).toMatchObject({ added: 1 });
    expect(await load("backups", kept)).toMatchObject({ added: 0, changed: 0, unchanged: 1 });
    expect(await database().backup.findFirst()).toMatchObject({ kind: "program", sourceAvailable: true });
    expect(
      await load("contacts", numbers("OST;;Electrician on call;+48 22 555 01 00;day and night;")),
    ).toMatchObject({
      added: 1,
    });
    const batchId = await stage(
      "contacts",
      numbers("OST;;Electrician on call;+48 22 555 01 01;day and night;new"),
    );
    await commitImport(planner, { batchId, leftOut: [] });
    expect(await database().contact.findMany()).toMatchObject([{ phone: "+48 22 555 01 01", note: "new" }]);
    expect(await undoImport(planner, { batchId })).toMatchObject({ ok: true });
    expect(await database().contact.findMany()).toMatchObject([{ phone: "+48 22 555 01 00", note: null }]);
    await load("windows", windows("OST;OST-01;Summer 2027;2027-07-01;2027-07-04;40"));
    await load("windows", windows("OST;OST-01;Summer 2027;2027-07-01;2027-07-05;50"));
    const [window] = await database().shutdownWindow.findMany({ include: { line: true } });
    expect([
      window?.line?.code,
      window?.endsOn.toISOString().slice(0, 10),
      Number(window?.usableHours),
    ]).toEqual(["OST-01", "2027-07-05", 50]);
  });

  test("what cannot be is refused with a reason: a password, a word for a number, hours that do not fit, days turned", async () => {
    expect(
      await problemsOf("backups", copies("OST;K1;program;2026-05-04;share, password: hunter2;;")),
    ).toEqual({
      2: ["The cell looks as if it held a password"],
    });
    expect(await problemsOf("backups", copies("OST;K1;program;2026-05-04;shelf;2026-05-01;"))).toEqual({
      2: [expect.stringContaining("lies below")],
    });
    expect(await problemsOf("contacts", numbers("OST;;Shift lead;ask at the gate;day;"))).toEqual({
      2: ["“ask at the gate” is no number that can be dialled"],
    });
    expect(await problemsOf("windows", windows("OST;;A;2027-07-01;2027-07-02;49"))).toEqual({
      2: ["49 hours do not fit between 2027-07-01 and 2027-07-02, which have 48"],
    });
    expect(await problemsOf("windows", windows("OST;;A;2027-07-03;2027-07-02;"))).toEqual({
      2: [expect.stringContaining("lies below")],
    });
  });

  test("a planner of one site loads them for that site only, and is not told which lines others have", async () => {
    const { id } = await database().site.create({
      data: { code: "KAR", name: "Karsvik", country: "SE", timeZone: "Europe/Stockholm", currency: "SEK" },
    });
    const there = await makeActor("planner", id);
    const foreign = await problemsOf("contacts", numbers("OST;;Shift lead;+48 22 555;day;"), there);
    expect(foreign[2]).toEqual(["You may not load rows for OST"]);
    const said = ["OST-01", "XXX-99"].map((line) => `KAR;${line};Shift lead;+46 8 555;day;`);
    for (const row of said) {
      const [problem] = (await problemsOf("contacts", numbers(row), there))[2] ?? [];
      expect(problem).toMatch(/^(OST-01|XXX-99) is no line of KAR$/);
    }
  });
});

async function panels() {
  const stored = await database().panel.findMany({
    orderBy: { designation: "asc" },
    include: { positions: { select: { designation: true }, orderBy: { designation: "asc" } } },
  });
  return stored.map(
    ({ designation, name, location, positions }) =>
      [designation, name, location, positions.map((position) => position.designation)] as const,
  );
}

async function shownProblems(register: RegisterKey, text: string, actor = planner) {
  const staged = (await untilRead(actor, await stage(register, text, actor)))?.staged;
  if (!staged) throw new Error("no such file");
  return staged.problems.shown;
}

/** What is wrong with each row of a file, by row. */
async function problemsOf(
  register: RegisterKey,
  text: string,
  actor = planner,
): Promise<Record<number, string[]>> {
  const rows: Record<number, string[]> = {};
  for (const { rowNumber, problem } of await shownProblems(register, text, actor))
    rows[rowNumber] = [...(rows[rowNumber] ?? []), problem];
  return rows;
}

async function stage(register: RegisterKey, text: string, actor = planner): Promise<string> {
  const bytes = new TextEncoder().encode(text);
  const staged = await stageImport(actor, { register, fileName: `${register}.csv`, bytes });
  if (!staged.ok) throw new Error(staged.error.reason);
  return staged.value.batchId;
}

async function load(register: RegisterKey, text: string) {
  const loaded = await commitImport(planner, { batchId: await stage(register, text), leftOut: [] });
  if (!loaded.ok) throw new Error(loaded.error.reason);
  return loaded.value;
}
