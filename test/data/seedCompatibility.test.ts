import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { database } from "@/lib/data/client";
import { readStandings } from "@/lib/data/lineCompatibility";
import { changeRule } from "@/lib/data/ruleChange";
import { previewRule } from "@/lib/data/ruleEffect";
import { type LineStanding, standingCounts, standingRows } from "@/lib/view/standing";
import { load } from "@/seed/load";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { company, countBy, D0 } from "@/test/data/seedLookup";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { personWith } from "@/test/support/twoSites";

vi.setConfig({ testTimeout: 120_000 });

const viewer = personWith("viewer", null);
let fresh: FreshDatabase;
let lines: LineStanding[];

beforeAll(async () => {
  fresh = await freshDatabase("seedCompatibility");
  await load(fresh.url, "showcase", showcase());
  await database().user.create({
    data: { id: "person", name: "Person", email: "person@halvenor.example", emailVerified: true },
  });
  lines = await readStandings(viewer, { asOf: D0 });
}, 120_000);
afterAll(() => fresh.close());

const line = (code: string) => {
  const found = lines.find((one) => one.code === code);
  if (!found) throw new Error(`no line ${code}`);
  return found;
};
const leadVerdict = (code: string, rule: string) =>
  line(code).lead?.verdicts.find((one) => one.code === rule);
const leads = company.Controller.filter(({ leadsLineId }) => leadsLineId !== null);
const codeOf = new Map(company.Line.map(({ id, code }) => [id, code]));

test("by its leading controller, 10 lines need a swap, 9 are below the floor, 6 are ready, 15 have the new drives", () => {
  expect(countBy(lines, ({ standing }) => standing ?? "none")).toEqual({
    swap: 10,
    below: 9,
    ready: 6,
    converted: 15,
  });
});

test("raised to 24, PIN-01's memory blocks at 101 %, five lines are a caution and three are clear", () => {
  const sums = lines
    .filter(({ standing }) => standing === "below")
    .map(({ code }) => [
      code,
      leadVerdict(code, "R3")?.state,
      /= ([\d.]+ %)/.exec(leadVerdict(code, "R3")?.arithmetic ?? "")?.[1],
    ]);
  expect(sums).toEqual([
    ["KAR-01", "caution", "87 %"],
    ["OST-01", "clear", "81 %"],
    ["OST-02", "caution", "85.1 %"],
    ["PIN-01", "blocked", "101 %"],
    ["PIN-05", "clear", "77 %"],
    ["TAD-02", "caution", "86 %"],
    ["TAD-04", "caution", "92 %"],
    ["VEL-01", "clear", "82 %"],
    ["VEL-02", "caution", "90 %"],
  ]);
});

test("VEL-03 is blocked by two rules about its controller: the floor and the ceiling", () => {
  const blocked = line("VEL-03").lead?.verdicts.filter(
    ({ state, kind }) => state === "blocked" && /floor|ceiling/.test(kind),
  );
  expect(blocked?.map(({ code }) => code)).toEqual(["R1", "R2"]);
});

test("the last batch of Heron R runs on no controller of TAD-02, and not on the Slate 3 or the two at 20", () => {
  const at = (code: string) =>
    line(code).controllers.flatMap(({ facts, verdicts }) =>
      verdicts.filter((one) => one.code === "R6").map(({ state }) => [facts.model, facts.level.raw, state]),
    );
  const blocked = lines.filter(({ code }) => at(code).some(([, , state]) => state === "blocked"));
  expect(blocked.map(({ code }) => code)).toEqual(["OST-03", "PIN-01", "TAD-02", "VEL-02", "VEL-03"]);
  expect(at("TAD-02").filter(([, , state]) => state === "clear")).toEqual([]);
  for (const code of ["VEL-02", "PIN-01"]) {
    expect(
      at(code)
        .filter(([, , state]) => state === "blocked")
        .map(([model, raw]) => [model, raw]),
    ).toEqual([
      ["Slate 5", "20"],
      ["Slate 5", "20"],
    ]);
    expect(leadVerdict(code, "R6")?.state).toBe("clear");
  }
  for (const code of ["VEL-03", "OST-03"])
    expect(new Set(at(code).map(([model, , state]) => `${model} ${state}`))).toEqual(
      new Set(["Slate 3 blocked"]),
    );
});

test("70 Wren of 6 kW are without a match; those on ring drives stand in the way, eleven of them at KAR-02", () => {
  const unmatched = (code: string) =>
    line(code).controllers.reduce((sum, { verdicts }) => {
      const found = verdicts.find((one) => one.code === "R5")?.arithmetic ?? "";
      return sum + Number(/(\d+) to be sized anew/.exec(found)?.[1] ?? 0);
    }, 0);
  expect(unmatched("KAR-02")).toBe(11);
  const large = company.Part.find(({ powerKw }) => powerKw === 6);
  expect(company.Position.filter(({ partId }) => partId === large?.id)).toHaveLength(70);
});

test("every controller nobody has read is unknown or blocked, never clear", () => {
  const unread = lines
    .flatMap(({ controllers }) => controllers)
    .filter(({ facts }) => facts.level.state === "unknown");
  expect(unread).toHaveLength(24);
  expect(
    unread.filter(({ state, step }) => state === "clear" || state === "caution" || step === "none"),
  ).toEqual([]);
});

describe("the floor moved by one level changes the lines counted by hand", () => {
  /** Lines led by a Slate 5 at exactly this level, from the table the demonstration is built of. */
  const ledAt = (level: number) =>
    leads
      .filter(({ model, firmware }) => model === "Slate 5" && firmware === level)
      .map(({ leadsLineId }) => codeOf.get(leadsLineId ?? ""))
      .sort();
  const terms = (level: string) => ({
    families: ["Heron E", "Elm"],
    controllers: [
      { model: "Slate 5", level },
      { model: "Slate 7", level: "27" },
    ],
  });
  const movedBy = async (level: string) => {
    const answer = await previewRule(personWith("engineer", null), {
      ...{ code: "R1", seen: 1, kind: "controller_floor", terms: terms(level), retired: false },
    });
    if (!answer.ok) throw new Error(answer.error.reason);
    return answer.value.lines.flatMap(({ code, standing }) => (standing ? [{ code, ...standing }] : []));
  };

  test("up to 25: the six that were ready are below it", async () => {
    expect(ledAt(24)).toHaveLength(6);
    expect(await movedBy("25")).toEqual(ledAt(24).map((code) => ({ code, before: "ready", after: "below" })));
  });

  test("down to 23: OST-01, OST-02 and PIN-05 are ready", async () => {
    expect(ledAt(23)).toEqual(["OST-01", "OST-02", "PIN-05"]);
    expect(await movedBy("23")).toEqual(ledAt(23).map((code) => ({ code, before: "below", after: "ready" })));
  });

  test("and what was foretold is what stands once it is written", async () => {
    const told = await movedBy("25");
    const said = { note: "Trial", source: "Test, no source", evidence: "assumed" as const, retired: false };
    const engineer = personWith("engineer", null);
    const written = await changeRule(engineer, {
      code: "R1",
      seen: 1,
      kind: "controller_floor",
      terms: terms("25"),
      ...said,
    });
    expect(written).toEqual({ ok: true, value: { code: "R1", version: 2 } });
    const after = await readStandings(viewer, { asOf: D0 });
    const moved = after.filter(({ standing }, i) => standing !== lines[i]?.standing);
    expect(moved.map(({ code, standing }) => [code, standing])).toEqual(
      told.map((one) => [one.code, one.after]),
    );
    expect(after.find(({ code }) => code === "VEL-06")?.lead?.verdicts[0]).toMatchObject({
      code: "R1",
      version: 2,
    });
    await changeRule(engineer, {
      code: "R1",
      seen: 2,
      kind: "controller_floor",
      terms: terms("24"),
      ...said,
    });
    const back = await readStandings(viewer, { asOf: D0 });
    expect(back.map(({ standing }) => standing)).toEqual(lines.map(({ standing }) => standing));
  });
});

test("the counts on the page are those of the lines, and say where another controller stands worse", () => {
  const rows = standingRows(lines);
  expect(standingCounts(rows)).toEqual({
    standings: [
      { word: "Controller swap", lines: 10 },
      { word: "Below the floor", lines: 9 },
      { word: "Ready", lines: 6 },
      { word: "Has the new drives", lines: 15 },
    ],
    memoryBlocked: 1,
    memoryCaution: 5,
    revisionBlocked: 5,
    readyWithWorse: 5,
  });
});
