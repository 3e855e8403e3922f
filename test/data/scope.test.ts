import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readLineScope } from "@/lib/data/lineScope";
import { readCandidates } from "@/lib/data/planCandidates";
import { changeScopeNorm, readScopeNorms } from "@/lib/data/scopeNorms";
import { buildScope } from "@/lib/retrofit/scope/buildScope";
import { likelyScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
const day = (text: string) => new Date(`${text}T00:00:00Z`);

beforeAll(async () => {
  made = await freshDatabase("scope");
  world = await makeTwoSites();
  const family = await database().family.create({
    data: { maker: "Tarnholt", name: "Heron E", itemClass: "drive" },
  });
  await database().part.updateMany({
    where: { number: "TM-HE-020" },
    data: { familyId: family.id, price: "8000.00", priceCurrency: "PLN", leadWeeks: 9, leadWeeksP80: 16 },
  });
  await database().shutdownWindow.createMany({
    data: [
      ...[
        {
          siteId: world.north,
          name: "Summer",
          startsOn: day("2027-08-02"),
          endsOn: day("2027-08-20"),
          usableHours: 140,
        },
        { siteId: world.north, name: "Long over", startsOn: day("2026-08-02"), endsOn: day("2026-08-20") },
        { siteId: world.south, name: "Winter", startsOn: day("2027-01-02"), endsOn: day("2027-01-05") },
      ],
      {
        ...{ siteId: world.north, lineId: world.lines["NOR-02"] ?? "", name: "Other line" },
        ...{ startsOn: day("2027-02-02"), endsOn: day("2027-02-05") },
      },
    ],
  });
});

afterAll(() => made.close());
beforeEach(async () => {
  await database().setting.deleteMany({ where: { key: "scopeNorms" } });
});

const group = () => personWith("engineer", null);
const read = (code: string, actor = group()) => readLineScope(actor, { code, asOf });

describe("the scope of a line", () => {
  it("reads axes, the part of the same size with its price in EUR, the controller and the windows ahead", async () => {
    const found = await read("NOR-01");
    if (!found) throw new Error("no line");
    expect(found.windows.map(({ name, usableHours }) => ({ name, usableHours }))).toEqual([
      { name: "Summer", usableHours: 140 },
    ]);
    const built = buildScope(found.facts, { target: "Heron E", norms: likelyScopeNorms });
    if (!built.ok) throw new Error(built.error.kind);
    const { axes, controllers, released } = built.value;
    expect(axes.map(({ axis }) => axis.code)).toEqual(["X1", "X2", "X3"]);
    // 8000 PLN at 4 PLN for a EUR.
    expect(axes[0]?.successor).toMatchObject({
      basis: "same size",
      part: { number: "TM-HE-020", price: 2000, leadWeeks: 9, leadWeeksP80: 16, stage: "open" },
    });
    expect(axes[0]?.motor.fit).toBe("unknown");
    expect(controllers.map(({ facts, step }) => `${facts.designation} ${step}`)).toEqual([
      "NOR-01-K1 no-rule",
    ]);
    expect(released.map(({ part, units }) => `${part?.number} ${units}`)).toEqual(["BW-OK-020 3"]);
  });

  it("takes the unit in the place, not only the part that belongs there", async () => {
    const part = await database().part.findFirstOrThrow({ where: { number: "TM-HE-020" } });
    const position = await database().position.findFirstOrThrow({
      where: { machine: { line: { code: "NOR-02" } }, axis: { code: "X1" } },
    });
    const unit = await database().unit.create({ data: { partId: part.id, serial: "HE1" } });
    await database().placement.create({
      data: { unitId: unit.id, positionId: position.id, fromOn: day("2026-01-01") },
    });
    const found = await read("NOR-02");
    const drives = found?.facts.axes.map(({ code, drive }) => `${code} ${drive?.number}`);
    expect(drives).toEqual(["X1 TM-HE-020", "X2 BW-OK-020", "X3 BW-OK-020"]);
    expect(found?.windows.map(({ name }) => name)).toEqual(["Other line", "Summer"]);
  });

  it("gives a person of one site nothing of another", async () => {
    expect(await read("SUD-01", personWith("engineer", world.north))).toBeNull();
    expect(await read("NO-99")).toBeNull();
    const south = await database().axis.findFirstOrThrow({
      where: { machine: { line: { code: "SUD-01" } } },
    });
    const north = await database().axis.findFirstOrThrow({
      where: { machine: { line: { code: "NOR-01" } } },
    });
    const ring = await database().network.create({
      data: { siteId: world.north, name: "R1", kind: "fibre_ring" },
    });
    await database().axis.updateMany({
      where: { id: { in: [south.id, north.id] } },
      data: { networkId: ring.id },
    });
    const lines = async (siteId: string | null) =>
      (await read("NOR-01", personWith("viewer", siteId)))?.facts.axes.map(({ lineCode }) => lineCode);
    expect(new Set(await lines(null))).toEqual(new Set(["NOR-01", "SUD-01"]));
    expect(new Set(await lines(world.north))).toEqual(new Set(["NOR-01"]));
    await database().axis.updateMany({ data: { networkId: null } });
  });
});

describe("norms", () => {
  const wanted = { key: "installPerAxis", seen: null, values: [2, 4, 8] };
  const version = async () => (await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } })).version;

  it("change by who may plan everywhere, with an audit entry, and move the plan's estimate but no loss", async () => {
    const before = await readCandidates(group(), asOf);
    const at = await version();
    const answer = await changeScopeNorm(group(), wanted);
    if (!answer.ok) throw new Error(answer.error.reason);
    const stored = await readScopeNorms(group());
    expect(stored).toMatchObject({ changedAt: answer.value.changedAt, mayChange: true });
    expect(stored.norms.spans.installPerAxis).toEqual([2, 4, 8]);
    expect(stored.norms.spans.drive).toEqual(likelyScopeNorms.spans.drive);
    expect(await version()).toBe(at);
    expect(await database().auditEntry.findFirst({ where: { entity: "ScopeNorm" } })).toMatchObject({
      ...{ deed: "norm:change", entityId: "installPerAxis" },
      ...{ before: { installPerAxis: [1.5, 3, 6] }, after: { installPerAxis: [2, 4, 8] } },
    });
    const after = await readCandidates(group(), asOf);
    // One hour more on each of three axes, at 90 EUR and 15 % on top.
    const typical = (one: typeof before) =>
      one.lines.find(({ code }) => code === "NOR-01")?.estimate?.typical ?? 0;
    expect(typical(after) - typical(before)).toBeCloseTo(3 * 90 * 1.15, 6);
  });

  it("refuse who may plan at one site, what somebody else changed, and values that cannot be", async () => {
    const refused = async (
      change: typeof wanted | { key: string; seen: string; values: number[] },
      actor = group(),
    ) => {
      const answer = await changeScopeNorm(actor, change);
      return answer.ok ? null : answer.error.code;
    };
    expect(await refused(wanted, personWith("engineer", world.north))).toBe("forbidden");
    expect((await readScopeNorms(personWith("engineer", world.north))).mayChange).toBe(false);
    expect(await refused({ ...wanted, values: [5, 4, 8] })).toBe("invalid");
    expect(await refused({ ...wanted, values: [4] })).toBe("invalid");
    expect(await refused({ ...wanted, key: "crews", values: [0] })).toBe("invalid");
    expect(await refused({ ...wanted, key: "crews", values: [3] })).toBeNull();
    expect(await refused(wanted)).toBe("conflict");
    expect((await readScopeNorms(group())).norms.plain.crews).toBe(3);
  });
});
