import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readDatesAhead } from "@/lib/data/datesAhead";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { readLine } from "@/lib/data/line";
import {
  addObligation,
  changeObligation,
  removeObligation,
  settleObligation,
} from "@/lib/data/obligationChange";
import { readObligationPlaces, readObligations } from "@/lib/data/obligations";
import { readRanking } from "@/lib/data/ranking";
import { readReport } from "@/lib/data/report";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { AddObligation } from "@/lib/schema/obligation";
import { datesAhead } from "@/lib/view/datesAhead";
import { decisionsAsked } from "@/lib/view/reportDecisions";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;

beforeAll(async () => {
  made = await freshDatabase("obligations");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
});

afterAll(() => made.close());

beforeEach(async () => {
  await database().obligation.deleteMany();
  await database().$executeRaw`TRUNCATE "AuditEntry"`;
});

const group = () => personWith("viewer", null);
const engineerAt = (site: "north" | "south") => personWith("engineer", world[site]);

const duty = (site: "north" | "south", given: Partial<AddObligation> = {}): AddObligation => ({
  ...{ siteId: world[site], lineId: world.lines[site === "north" ? "NOR-01" : "SUD-01"] ?? "" },
  ...{ kind: "safety", title: `Duty of ${site}`, dueOn: "2027-09-30", source: "Machine file, sheet 7" },
  ...{ owner: "Machine safety officer", evidence: "documented" },
  ...given,
});

async function added(site: "north" | "south", given: Partial<AddObligation> = {}) {
  const answer = await addObligation(engineerAt(site), duty(site, given));
  if (!answer.ok) throw new Error(answer.error.reason);
  return answer.value;
}

const version = async () =>
  Number((await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } })).version);

describe("a safety or legal date", () => {
  it("is recorded by an engineer of the site as known from today, with an audit entry", async () => {
    const { obligationId } = await added("north");
    expect(await readObligations(group(), { asOf })).toEqual([
      {
        ...{ id: obligationId, siteId: world.north, siteCode: "NOR", kind: "safety", version: 1 },
        line: { id: world.lines["NOR-01"], code: "NOR-01" },
        ...{ title: "Duty of north", dueOn: "2027-09-30", source: "Machine file, sheet 7" },
        ...{ owner: "Machine safety officer", evidence: "documented", recordedOn: asOf, doneOn: null },
      },
    ]);
    expect(await database().auditEntry.findMany({ where: { entity: "Obligation" } })).toMatchObject([
      { deed: "obligation:add", entityId: obligationId, siteId: world.north, userId: "person" },
    ]);
  });

  it("is not known on a day before it was recorded", async () => {
    await added("north");
    expect(await readObligations(group(), { asOf: "2026-11-29" })).toEqual([]);
  });

  it("is refused at another site, and for a line that stands elsewhere", async () => {
    const missing = { ok: false, error: { code: "missing" } };
    expect(await addObligation(engineerAt("north"), duty("south"))).toMatchObject(missing);
    expect(await addObligation(personWith("viewer", world.north), duty("north"))).toMatchObject(missing);
    const elsewhere = duty("north", { lineId: world.lines["SUD-01"] ?? "" });
    expect(await addObligation(engineerAt("north"), elsewhere)).toMatchObject(missing);
    expect(await database().obligation.count()).toBe(0);
    expect(await database().auditEntry.count()).toBe(0);
  });

  it("of another site is neither read, changed, settled nor removed", async () => {
    const mark = await added("south");
    await added("south", { lineId: null, title: "All of south" });
    const own = personWith("engineer", world.north);
    expect(await readObligations(own, { asOf })).toEqual([]);
    expect(JSON.stringify(await readDatesAhead(own, asOf))).not.toMatch(/south|SUD/);
    expect(await readObligationPlaces(own)).toMatchObject([{ code: "NOR" }]);
    const answers = [
      await changeObligation(own, { ...duty("north"), ...mark }),
      await settleObligation(own, { ...mark, doneOn: asOf }),
      await removeObligation(own, mark),
    ];
    for (const answer of answers) expect(answer).toMatchObject({ ok: false, error: { code: "missing" } });
    expect(await database().obligation.findUnique({ where: { id: mark.obligationId } })).toMatchObject({
      ...{ siteId: world.south, doneOn: null, version: 1 },
    });
  });

  it("is changed by one of two who saw the same, and the other hears of it", async () => {
    const mark = await added("north");
    const wishes = ["One", "Two"].map((title) => ({ ...duty("north", { title }), ...mark }));
    const answers = await Promise.all(wishes.map((wish) => changeObligation(engineerAt("north"), wish)));
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ error: { code: "conflict" } });
    const stale = [
      await settleObligation(engineerAt("north"), { ...mark, doneOn: asOf }),
      await removeObligation(engineerAt("north"), mark),
    ];
    for (const answer of stale) expect(answer).toMatchObject({ ok: false, error: { code: "conflict" } });
    expect(await database().auditEntry.count({ where: { deed: "obligation:change" } })).toBe(1);
  });

  it("may not be moved to a site where the person may not write", async () => {
    const mark = await added("north");
    const away = { ...duty("south"), ...mark };
    expect(await changeObligation(engineerAt("north"), away)).toMatchObject({
      error: { code: "missing" },
    });
  });

  it("is done from its day on, stays open on a day before, and opens again", async () => {
    const engineer = engineerAt("north");
    const early = { recordedOn: new Date("2026-01-01T00:00:00Z") };
    const mark = await added("north");
    await database().obligation.update({ where: { id: mark.obligationId }, data: early });
    const done = await settleObligation(engineer, { ...mark, doneOn: "2026-11-20" });
    if (!done.ok) throw new Error(done.error.reason);
    const doneOn = async (day: string) => (await readObligations(group(), { asOf: day }))[0]?.doneOn;
    expect([await doneOn("2026-11-19"), await doneOn("2026-11-20")]).toEqual([null, "2026-11-20"]);
    expect(await settleObligation(engineer, { ...done.value, doneOn: null })).toMatchObject({ ok: true });
    expect(await doneOn(asOf)).toBeNull();
  });

  it("cannot be done on a day that lies ahead", async () => {
    const mark = await added("north");
    expect(await settleObligation(engineerAt("north"), { ...mark, doneOn: "2026-12-01" })).toMatchObject({
      error: { code: "impossible", fields: { doneOn: expect.any(String) } },
    });
  });

  it("is taken back by who added it, and the audit keeps what it said", async () => {
    const mark = await added("north");
    const why = "Entered twice";
    expect(await removeObligation(engineerAt("north"), { ...mark, why })).toEqual({ ok: true, value: null });
    expect(await database().obligation.count()).toBe(0);
    expect(await database().auditEntry.findFirst({ where: { deed: "obligation:remove" } })).toMatchObject({
      ...{ before: { title: "Duty of north", dueOn: "2027-09-30", siteId: world.north }, why },
    });
  });
});

describe("beside the money", () => {
  const evaluated = async () => {
    const input = await database().$transaction((tx) => loadGroupInput(tx, asOf));
    return { input, result: evaluate(input, likelyAssumptions) };
  };

  it("a duty moves neither loss nor score, and leaves every stored figure valid", async () => {
    const [before, was] = [await evaluated(), await version()];
    await added("north", { dueOn: "2020-01-01" });
    await added("south", { kind: "legal" });
    expect(await evaluated()).toEqual(before);
    expect(await version()).toBe(was);
  });

  it("a duty within 24 months marks its line in the ranking, and no other", async () => {
    await added("north");
    await added("north", { dueOn: "2029-01-01", title: "Far ahead" });
    await added("south", { lineId: null, title: "All of south" });
    const { lines } = await readRanking(group(), asOf);
    expect(lines.map(({ code, duties }) => [code, duties.map(({ title }) => title)])).toEqual([
      ["NOR-01", ["Duty of north"]],
      ["NOR-02", []],
      ["SUD-01", []],
      ["SUD-02", []],
    ]);
  });

  it("the dossier of a line holds its own duties and those of its whole site", async () => {
    await added("north");
    await added("south");
    await added("south", { lineId: null, dueOn: "2027-01-31", title: "All of south" });
    const titles = async (code: string) =>
      (await readLine(group(), { code, asOf }))?.obligations.map(({ title }) => title);
    expect(await titles("SUD-01")).toEqual(["All of south", "Duty of south"]);
    expect(await titles("SUD-02")).toEqual(["All of south"]);
    expect(await titles("NOR-02")).toEqual([]);
  });

  it("the report of a site lists its own within 24 months and asks about what is overdue", async () => {
    await added("north", { dueOn: "2026-10-31", title: "Guards in place", kind: "legal" });
    await added("north", { dueOn: "2029-01-01" });
    await added("south");
    const report = await readReport(group(), { asOf, siteCode: "NOR" });
    if (!report) throw new Error("no report");
    expect(report.obligations.map(({ title }) => title)).toEqual(["Guards in place"]);
    expect(decisionsAsked(report)[0]?.text).toBe(
      "NOR-01: legal date overdue since 31 Oct 2026: Guards in place.",
    );
  });

  it("the dates ahead hold the days of installed parts, of shelves and of duties of all sites", async () => {
    await added("south");
    const found = datesAhead(await readDatesAhead(group(), asOf));
    expect(found.find(({ kind }) => kind === "safety")).toMatchObject({ of: "SUD-01", on: "2027-09-30" });
    expect(found.find(({ kind }) => kind === "repair-end")).toMatchObject({
      ...{ of: "BW-OK-020", on: "2027-02-28", units: 9, sites: ["NOR", "SUD"] },
    });
    expect(found.filter(({ kind }) => kind === "shelf-empty").map(({ of }) => of)).toContain("SUD-02");
  });

  it("leaves the store as plain values", async () => {
    await added("north");
    const dates = await readDatesAhead(group(), asOf);
    expect(JSON.parse(JSON.stringify(dates))).toEqual(dates);
  });
});
