import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readLine } from "@/lib/data/line";
import { readStandings } from "@/lib/data/lineCompatibility";
import { readRanking } from "@/lib/data/ranking";
import { changeRule } from "@/lib/data/ruleChange";
import { previewRule } from "@/lib/data/ruleEffect";
import { readRuleOverview, readRulesInForce } from "@/lib/data/rules";
import type { ChangedRule } from "@/lib/schema/compatibilityRule";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

const engineer = personWith("engineer", null);
const rule = (given: Partial<ChangedRule> = {}): ChangedRule => ({
  ...{ code: "R1", seen: 0, kind: "controller_floor", retired: false },
  terms: { families: ["Heron E"], controllers: [{ model: "Slate 5", level: "24" }] },
  ...{ note: "Drives on Ethernet", source: "Compatibility list", evidence: "documented" },
  ...given,
});
const ceiling = { kind: "ceiling", terms: { model: "Slate 5", level: "23" } } as const;

let fresh: FreshDatabase;
let group: TwoSites;

beforeAll(async () => {
  fresh = await freshDatabase("rules");
  group = await makeTwoSites();
});
afterAll(() => fresh.close());

/** What is written past the product's own changes is seen from the next data version on. */
const raise = () => database().dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });

describe("before any rule is written", () => {
  test("no line is held against anything, and nothing reads as clear", async () => {
    const lines = await readStandings(engineer, { asOf });
    expect(lines.map(({ standing, lead }) => [standing, lead?.state])).toEqual(
      lines.map(() => ["no-rule", "unknown"]),
    );
    expect(await readRuleOverview(engineer)).toEqual({ rules: [], versions: [], mayChange: true });
  });
});

describe("who may not", () => {
  test.each([
    ["a planner of all sites", personWith("planner", null)],
    ["a viewer of all sites", personWith("viewer", null)],
  ])("%s reads and writes nothing", async (_, actor) => {
    expect((await readRuleOverview(actor))?.mayChange).toBe(false);
    expect(await changeRule(actor, rule())).toMatchObject({ ok: false, error: { code: "forbidden" } });
  });

  test("an engineer of one site neither, because it moves the others", async () => {
    const answer = await changeRule(personWith("engineer", group.north), rule());
    expect(answer).toMatchObject({ ok: false, error: { code: "forbidden" } });
    expect(await database().compatibilityRule.count()).toBe(0);
  });

  test("somebody without any role reads nothing", async () => {
    const nobody = { ...engineer, grants: [] };
    expect(await readRuleOverview(nobody)).toBeNull();
    expect(await readRulesInForce(nobody)).toEqual([]);
  });
});

describe("writing a rule", () => {
  test.each([
    {
      what: "a level that is none",
      given: { controllers: [{ model: "Slate 5", level: "latest" }] },
      ...{ field: "controllers", sentence: "Write a level such as" },
    },
    { what: "no family", given: { families: [] }, field: "families", sentence: "Name at least one family." },
    {
      what: "a model named twice",
      given: { controllers: ["24", "25"].map((level) => ({ model: "Slate 5", level })) },
      ...{ field: "controllers", sentence: "Name each model once." },
    },
  ])("is refused for $what, at its field", async ({ given, field, sentence }) => {
    const terms = { ...(rule().terms as object), ...given };
    const answer = await changeRule(engineer, rule({ terms }));
    if (answer.ok) throw new Error("was taken");
    expect(answer.error.fields?.[field]).toContain(sentence);
  });

  test("puts it in force, keeps who and why, and leaves every figure as it stands", async () => {
    const before = await currentEvaluation(asOf);
    expect(await changeRule(engineer, rule())).toEqual({ ok: true, value: { code: "R1", version: 1 } });
    expect((await currentEvaluation(asOf)).id).toBe(before.id);
    const overview = await readRuleOverview(engineer);
    expect(overview?.rules).toMatchObject([{ ...pick(rule()), version: 1, changedBy: "Person" }]);
    const entry = await database().auditEntry.findFirstOrThrow({ where: { entity: "CompatibilityRule" } });
    expect(entry).toMatchObject({
      deed: "rules:change",
      userId: "person",
      before: null,
      after: { code: "R1", version: 1 },
    });
  });

  test("the ranking marks its controllers by it", async () => {
    const { lines } = await readRanking(engineer, asOf);
    expect(lines.map(({ controllers }) => controllers.map(({ step }) => step))).toEqual(
      Array(4).fill(["unknown"]),
    );
    await database().controller.updateMany({ where: { designation: "NOR-01-K1" }, data: { firmware: 23 } });
    await raise();
    const [first] = (await readRanking(engineer, asOf)).lines;
    expect(first).toMatchObject({ code: "NOR-01", controllers: [{ firmware: 23, step: "raise" }] });
    await database().controller.updateMany({ data: { firmware: null } });
    await raise();
  });

  test("the line's page says it: unread, so unknown", async () => {
    const line = await readLine(engineer, { code: "NOR-01", asOf });
    const [judged] = line?.compatibility.controllers ?? [];
    expect(line?.compatibility.standing).toBe("unknown");
    expect(judged?.verdicts).toMatchObject([{ code: "R1", version: 1, state: "unknown" }]);
    expect(JSON.parse(JSON.stringify(line))).toEqual(line);
  });

  test("is refused when somebody was quicker, when the code is taken, when the kind differs and when nothing does", async () => {
    expect(await changeRule(engineer, rule({ seen: 3 }))).toMatchObject({ error: { code: "conflict" } });
    expect(await changeRule(engineer, rule())).toMatchObject({
      error: { code: "invalid", fields: { code: expect.any(String) } },
    });
    expect(await changeRule(engineer, rule({ seen: 1, ...ceiling }))).toMatchObject({
      error: { code: "invalid" },
    });
    expect(await changeRule(engineer, rule({ seen: 1 }))).toMatchObject({ error: { code: "invalid" } });
    expect(await database().compatibilityRule.count()).toBe(1);
  });

  test("of two at once takes one", async () => {
    const answers = await Promise.all(
      ["first", "second"].map((note) => changeRule(engineer, rule({ seen: 1, note }))),
    );
    expect(answers.map(({ ok }) => ok).sort()).toEqual([false, true]);
    expect((await readRulesInForce(engineer)).map(({ version }) => version)).toEqual([2]);
  });

  test("stays as written: the database refuses to change or remove a version", async () => {
    const all = { where: { code: "R1" } };
    await expect(
      database().compatibilityRule.updateMany({ ...all, data: { note: "other" } }),
    ).rejects.toThrow("never changed or removed");
    await expect(database().compatibilityRule.deleteMany(all)).rejects.toThrow("never changed or removed");
  });
});

describe("what a rule would change", () => {
  const proposed = { code: "R2", seen: 0, ...ceiling, retired: false };

  test("is told for the sites of who asks and is not written", async () => {
    await database().controller.updateMany({ data: { firmware: 22 } });
    const answer = await previewRule(engineer, proposed);
    if (!answer.ok) throw new Error(answer.error.reason);
    expect(answer.value).toMatchObject({ judged: 4 });
    expect(answer.value.lines.map(({ code, standing }) => [code, standing])).toEqual(
      ["NOR-01", "NOR-02", "SUD-01", "SUD-02"].map((code) => [code, { before: "below", after: "swap" }]),
    );
    const north = await previewRule(personWith("engineer", group.north), proposed);
    expect(JSON.stringify(north)).not.toContain("SUD");
    expect(await database().compatibilityRule.count({ where: { code: "R2" } })).toBe(0);
  });

  test("of values that cannot be used is a refusal at the field", async () => {
    const answer = await previewRule(engineer, { ...proposed, terms: { model: "", level: "23" } });
    expect(answer).toMatchObject({ ok: false, error: { fields: { model: "Write a name." } } });
  });

  test("of a retired floor leaves no line held against anything", async () => {
    const { note: _note, source: _source, evidence: _evidence, ...own } = rule({ seen: 2, retired: true });
    const answer = await previewRule(engineer, own);
    if (!answer.ok) throw new Error(answer.error.reason);
    expect(answer.value.lines.map(({ standing }) => standing?.after)).toEqual(Array(4).fill("no-rule"));
  });
});

test("a retired rule judges nothing, stays listed and can be taken up again", async () => {
  await changeRule(engineer, rule({ seen: 2, retired: true }));
  expect(await readRulesInForce(engineer)).toEqual([]);
  expect((await readRuleOverview(engineer))?.rules).toMatchObject([
    { code: "R1", version: 3, retired: true },
  ]);
  await changeRule(engineer, rule({ seen: 3 }));
  expect((await readRulesInForce(engineer)).map(({ version }) => version)).toEqual([4]);
  expect((await readRuleOverview(engineer))?.versions.map(({ version }) => version)).toEqual([4, 3, 2, 1]);
});

test("a person of one site finds the lines there and no other", async () => {
  const lines = await readStandings(personWith("viewer", group.north), { asOf });
  expect(lines.map(({ code }) => code)).toEqual(["NOR-01", "NOR-02"]);
  expect(await readStandings({ ...engineer, grants: [] }, { asOf })).toEqual([]);
});

function pick({ code, kind, terms, note, source, evidence, retired }: ChangedRule) {
  return { code, kind, terms, note, source, evidence, retired };
}
