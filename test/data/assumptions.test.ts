import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readAssumptionEffects } from "@/lib/data/assumptionEffect";
import { readAssumptionOverview } from "@/lib/data/assumptions";
import { chooseAssumptions, stateAssumptions } from "@/lib/data/assumptionsChange";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readPart } from "@/lib/data/part";
import { carefulAssumptions } from "@/lib/risk/assumptionSets";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

const RATE = "classes.drive.removalRate";
const engineer = personWith("engineer", null);
const nobody = { ...engineer, grants: [] };
const said = { note: "Shop records of ten years", owner: "Head of maintenance" };

let fresh: FreshDatabase;
let group: TwoSites;

beforeAll(async () => {
  fresh = await freshDatabase("assumptions");
  group = await makeTwoSites();
});
afterAll(() => fresh.close());

const overview = async (actor = engineer) => {
  const found = await readAssumptionOverview(actor);
  if (!found) throw new Error("no overview");
  return found;
};
const rateRow = async () => (await overview()).rows.find(({ path }) => path === RATE);
const lossOf = async (evaluationId: string) => {
  const rows = await database().evaluatedLine.findMany({ where: { evaluationId } });
  return rows.reduce((sum, { result }) => sum + (result as { stopLoss: { mean: number } }).stopLoss.mean, 0);
};

describe("before anybody states a value", () => {
  test("the likely set of the product is in use and printed with the evaluation", async () => {
    const mark = await currentEvaluation(asOf);
    expect(mark.assumptionSet).toEqual({ kind: "likely", version: 1 });
    expect(mark.assumptions).toEqual(likelyAssumptions);
    const row = await database().evaluation.findUniqueOrThrow({ where: { id: mark.id } });
    expect(row).toMatchObject({ assumptionKind: "likely", assumptionVersion: 1 });
    expect(await rateRow()).toMatchObject({
      likely: 0.04,
      inUse: 0.04,
      own: null,
      owner: "Ebbline, product",
    });
  });

  test("the own set has no version to take into use", async () => {
    const answer = await chooseAssumptions(engineer, { kind: "own", version: 1 });
    expect(answer).toMatchObject({ ok: false, error: { code: "missing" } });
    expect(await database().setting.count({ where: { key: "assumptions" } })).toBe(0);
  });
});

describe("who may not", () => {
  test.each([
    ["a planner of all sites", personWith("planner", null)],
    ["a viewer of all sites", personWith("viewer", null)],
  ])("%s reads, states nothing and chooses nothing", async (_, actor) => {
    expect((await overview(actor)).mayChange).toBe(false);
    const stated = await stateAssumptions(actor, { seen: 0, changes: { [RATE]: 0.05 }, ...said });
    expect(stated).toMatchObject({ ok: false, error: { code: "forbidden" } });
    const chosen = await chooseAssumptions(actor, { kind: "bold", version: 1 });
    expect(chosen).toMatchObject({ ok: false, error: { code: "forbidden" } });
  });

  test("an engineer of one site neither, because it moves the others", async () => {
    const one = personWith("engineer", group.north);
    const stated = await stateAssumptions(one, { seen: 0, changes: { [RATE]: 0.05 }, ...said });
    expect(stated).toMatchObject({ ok: false, error: { code: "forbidden" } });
    expect(await database().assumptionSet.count()).toBe(0);
  });

  test("somebody without any role reads nothing", async () => {
    expect(await readAssumptionOverview(nobody)).toBeNull();
  });
});

describe("stating a value", () => {
  test("is refused with the bounds at the value, and writes nothing", async () => {
    const changes = { [RATE]: 40, transferHours: -1 };
    const answer = await stateAssumptions(engineer, { seen: 0, changes, ...said });
    expect(answer).toMatchObject({
      ok: false,
      error: {
        code: "invalid",
        fields: {
          [RATE]: "Write a number from 0.0001 to 5.",
          transferHours: "Write a number from 0 to 1000.",
        },
      },
    });
    expect(await database().assumptionSet.count()).toBe(0);
  });

  test.each([
    ["a value that is not there", { "classes.drive.colour": 1 }, "There is no such assumption."],
    ["a value that is laid down", { months: 48 }, "Tables and charts of the product are laid out for it."],
    ["weights that do not sum to one", { "weights.stage": 0.5 }, "The three weights must sum to 1."],
    ["a median below what a hand can do", { "classes.drive.withSpare.mu": 0 }, "The median must be from 0.1"],
  ])("is refused for %s", async (_, changes, sentence) => {
    const answer = await stateAssumptions(engineer, { seen: 0, changes, ...said });
    if (answer.ok) throw new Error("was taken");
    expect(Object.values(answer.error.fields ?? {})[0]).toContain(sentence);
  });

  test("makes a version that changes no figure until it is in use", async () => {
    const before = await currentEvaluation(asOf);
    const answer = await stateAssumptions(engineer, { seen: 0, changes: { [RATE]: 0.09 }, ...said });
    expect(answer).toEqual({ ok: true, value: { kind: "own", version: 1 } });
    expect((await currentEvaluation(asOf)).id).toBe(before.id);
    expect(await rateRow()).toMatchObject({ own: 0.09, inUse: 0.04 });
    const [version] = (await overview()).versions;
    expect(version).toMatchObject({ kind: "own", version: 1, ...said, changedBy: "Person" });
    expect(version?.changes).toEqual([
      "Removal rate of the class (drive): 0.04 to 0.09 per unit-year".replace(
        "(drive)",
        `(${await driveName()})`,
      ),
    ]);
  });

  test("is refused when somebody was quicker, and when nothing differs", async () => {
    const late = await stateAssumptions(engineer, { seen: 0, changes: { [RATE]: 0.05 }, ...said });
    expect(late).toMatchObject({ ok: false, error: { code: "conflict" } });
    const same = await stateAssumptions(engineer, { seen: 1, changes: { [RATE]: 0.09 }, ...said });
    expect(same).toMatchObject({ ok: false, error: { code: "invalid" } });
    expect(await database().assumptionSet.count()).toBe(1);
  });

  test("of two at once takes one", async () => {
    const answers = await Promise.all(
      [0.1, 0.11].map((rate) => stateAssumptions(engineer, { seen: 1, changes: { [RATE]: rate }, ...said })),
    );
    expect(answers.map(({ ok }) => ok).sort()).toEqual([false, true]);
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ error: { code: "conflict" } });
    expect((await overview()).ownVersion).toBe(2);
  });

  test("stays as written: the database refuses to change or remove a version", async () => {
    const all = { where: { kind: "own" as const, version: 1 } };
    await expect(database().assumptionSet.updateMany({ ...all, data: { note: "other" } })).rejects.toThrow(
      "never changed or removed",
    );
    await expect(database().assumptionSet.deleteMany(all)).rejects.toThrow("never changed or removed");
  });
});

async function driveName(): Promise<string> {
  return (await rateRow())?.of ?? "";
}

describe("choosing a set", () => {
  test("computes anew with its values, and going back gives the former figures", async () => {
    const before = await currentEvaluation(asOf);
    const why = "The bulletin of the maker";
    const chosen = await chooseAssumptions(engineer, { kind: "own", version: 1, why });
    expect(
      await database().auditEntry.findFirst({ where: { deed: "assumptions:choose", why } }),
    ).toMatchObject({
      after: { kind: "own", version: 1 },
    });
    expect(chosen).toEqual({ ok: true, value: { former: { kind: "likely", version: 1 } } });
    const own = await currentEvaluation(asOf);
    expect(own.id).not.toBe(before.id);
    expect(own.assumptionSet).toEqual({ kind: "own", version: 1 });
    expect(await lossOf(own.id)).toBeGreaterThan(await lossOf(before.id));
    expect(await rateRow()).toMatchObject({ inUse: 0.09, basis: said.note, owner: said.owner });

    const back = await chooseAssumptions(engineer, { kind: "likely", version: 1 });
    expect(back).toEqual({ ok: true, value: { former: { kind: "own", version: 1 } } });
    const again = await currentEvaluation(asOf);
    expect(again.assumptionSet).toEqual({ kind: "likely", version: 1 });
    expect(await lossOf(again.id)).toBe(await lossOf(before.id));
    const { uses } = await overview();
    expect(uses.map(({ kind, version, by }) => [kind, version, by])).toEqual([
      ["likely", 1, "Person"],
      ["own", 1, "Person"],
    ]);
  });

  test("keeps what was chosen written down, the product's own sets too", async () => {
    await chooseAssumptions(engineer, { kind: "careful", version: 1 });
    const row = await database().assumptionSet.findUniqueOrThrow({
      where: { kind_version: { kind: "careful", version: 1 } },
    });
    expect(row.values).toEqual(JSON.parse(JSON.stringify(carefulAssumptions)));
    expect((await currentEvaluation(asOf)).assumptions).toEqual(carefulAssumptions);
  });

  test("is refused for a version the product does not have", async () => {
    const answer = await chooseAssumptions(engineer, { kind: "bold", version: 7 });
    expect(answer).toMatchObject({ ok: false, error: { code: "missing" } });
  });

  test("another set on the same data is another evaluation", async () => {
    const { id, dataVersion } = await currentEvaluation(asOf);
    // Past the change that raises the data version: the key alone has to tell them apart.
    await database().setting.update({
      where: { key: "assumptions" },
      data: { value: { kind: "own", version: 2 } },
    });
    const other = await currentEvaluation(asOf);
    expect(other.dataVersion).toBe(dataVersion);
    expect(other.id).not.toBe(id);
  });

  test("the shelf of a part counts by the set in use", async () => {
    const part = await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } });
    const works = async () =>
      (await readPart(engineer, { id: part.id, asOf }))?.lots.find((lot) => lot.bin === "R1");
    await chooseAssumptions(engineer, { kind: "likely", version: 1 });
    expect((await works())?.works).toBe(0.97);
    await chooseAssumptions(engineer, { kind: "careful", version: 1 });
    expect((await works())?.works).toBe(0.95);
  });
});

describe("the effect of the sets", () => {
  test("is that of an evaluation under each, and nothing is stored", async () => {
    const stored = await database().evaluation.count();
    const { sets, lines } = await readAssumptionEffects(engineer, asOf);
    expect(await database().evaluation.count()).toBe(stored);
    expect(lines).toBe(4);
    expect(sets.map(({ kind }) => kind)).toEqual(["careful", "likely", "bold", "own"]);
    const inUse = sets.filter((set) => set.inUse);
    expect(inUse.map(({ kind }) => kind)).toEqual(["careful"]);
    const { id } = await currentEvaluation(asOf);
    expect(inUse[0]?.stopLoss.mean).toBeCloseTo(await lossOf(id), 6);
    expect(inUse[0]?.lines.map(({ code }) => code)).toEqual([...["NOR-01", "SUD-01", "NOR-02", "SUD-02"]]);
  });

  test("covers for a person of one site only the lines there", async () => {
    const { sets, lines } = await readAssumptionEffects(personWith("viewer", group.north), asOf);
    expect(lines).toBe(2);
    for (const set of sets) expect(set.lines.map(({ code }) => code).sort()).toEqual(["NOR-01", "NOR-02"]);
    const none = await readAssumptionEffects(nobody, asOf);
    expect(none.sets.map(({ lines: shown, stopLoss }) => [shown.length, stopLoss.mean])).toEqual(
      none.sets.map(() => [0, 0]),
    );
  });
});
