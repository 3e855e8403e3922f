import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readBoard } from "@/lib/data/planBoard";
import { fillBoard, makeBoard, pinLine } from "@/lib/data/planBoardChange";
import { markInterrupted } from "@/lib/data/planning/runSolve";
import { cancelSolve, listSolveRuns, readSolveInput, readSolveRun, startSolve } from "@/lib/data/solveRun";
import { solvePlan } from "@/lib/portfolio/solvePlan";
import type { SolveRunPage } from "@/lib/view/solveRun";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let planId: string;
const engineer = personWith("engineer", null);
const day = (text: string) => new Date(`${text}T00:00:00Z`);

/** Money, a shutdown a year at each site, and a way to convert the old drives. */
async function stateInputs(): Promise<void> {
  const stated = { source: "letter", owner: "Finance", statedOn: day("2026-11-01") };
  await database().planFigure.createMany({
    data: [
      ...[2027, 2028].map((year) => ({
        ...stated,
        kind: "budget" as const,
        year,
        value: 400_000,
        currency: "EUR",
      })),
      { ...stated, kind: "horizon" as const, value: 4 },
      { ...stated, kind: "worth_per_euro" as const, value: 0 },
    ],
  });
  await database().shutdownWindow.createMany({
    data: [world.north, world.south].flatMap((siteId) =>
      [2027, 2028].map((year) => ({
        ...{ siteId, name: `Summer ${year}`, usableHours: 400 },
        ...{ startsOn: day(`${year}-08-02`), endsOn: day(`${year}-08-22`) },
      })),
    ),
  });
  const family = await database().family.create({
    data: { maker: "Tarnholt", name: "Heron E", itemClass: "drive" },
  });
  await database().part.updateMany({
    where: { number: "TM-HE-020" },
    data: { familyId: family.id, price: "8000.00", priceCurrency: "PLN", leadWeeks: 9, leadWeeksP80: 16 },
  });
}

beforeAll(async () => {
  made = await freshDatabase("solveRun");
  world = await makeTwoSites();
  await stateInputs();
  const board = await makeBoard(engineer, { name: "Retrofits", asOf });
  if (!board.ok) throw new Error(board.error.reason);
  planId = board.value.planId;
}, 60_000);

afterAll(() => made.close());

const version = async () => (await database().plan.findUniqueOrThrow({ where: { id: planId } })).version;

async function start(): Promise<string> {
  const started = await startSolve(engineer, { planId, version: await version(), timeLimitSeconds: 120 });
  if (!started.ok) throw new Error(started.error.reason);
  return started.value.runId;
}

/** Asks until the run has ended, as a page does. */
async function ended(runId: string): Promise<SolveRunPage> {
  for (;;) {
    const run = await readSolveRun(engineer, runId);
    if (!run) throw new Error("the run must be there");
    if (run.state !== "running") return run;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
}

describe("a search for the best plan", () => {
  it("runs beside the pages, tells how far it is, and keeps what it was made from and what it found", async () => {
    const runId = await start();
    let ticks = 0;
    const pulse = setInterval(() => {
      ticks += 1;
    }, 20);
    const run = await ended(runId);
    clearInterval(pulse);
    // The thread that answers pages was never held up for long.
    expect(ticks).toBeGreaterThan(5);
    expect(run).toMatchObject({ state: "solved", planVersion: 1, asOf, startedBy: "Person", seed: 0 });
    expect(run.inputHash).toMatch(/^[0-9a-f]{64}$/);
    expect(run.progress.done).toBe(1);
    if (run.outcome?.kind !== "plan") throw new Error("a plan must be found");
    expect(run.worth).toBeCloseTo(run.outcome.plan.worth.worth, 2);
    expect(run.worth).toBeGreaterThan(0);
    expect(run.outcome.plan.choices.length).toBeGreaterThan(0);
    expect(run.outcome.companions?.rankAndCut?.worth.worth).toBeLessThan((run.worth ?? 0) - 10_000);
    expect(await database().auditEntry.count({ where: { deed: "plan:solve", entityId: runId } })).toBe(1);

    const again = await ended(await start());
    expect(again.inputHash).toBe(run.inputHash);
    expect(again.outcome).toEqual(run.outcome);

    // What it was made from is kept, once, and searched again gives the same plan.
    expect(await database().solveInput.count()).toBe(1);
    const kept = await readSolveInput(engineer, runId);
    if (!kept) throw new Error("the input must be kept");
    const watch = { seconds: () => 0, report: () => undefined };
    const found = await solvePlan(kept, { timeLimitSeconds: 120, companions: false }, watch);
    if (found.kind !== "plan") throw new Error("a plan must be found again");
    expect(found.plan.choices).toEqual(run.outcome.plan.choices);
    expect(await readSolveInput(personWith("engineer", world.north), runId)).toBeNull();
    expect((await listSolveRuns(engineer, planId)).map(({ id }) => id)).toEqual([again.id, runId]);
  }, 240_000);

  it("of one plan there is one at a time, and it can be stopped and keeps the best it had", async () => {
    const runId = await start();
    const second = await startSolve(engineer, { planId, version: await version(), timeLimitSeconds: 60 });
    expect(second).toMatchObject({ ok: false, error: { code: "impossible" } });
    expect(await cancelSolve(engineer, { runId })).toMatchObject({ ok: true });
    const stopped = await ended(runId);
    expect(stopped).toMatchObject({ state: "cancelled", outcome: { kind: "plan", companions: null } });
    if (stopped.outcome?.kind !== "plan") throw new Error("a plan must be kept");
    expect(stopped.outcome.plan.ended).toBe("cancelled");
    expect(stopped.worth).toBeCloseTo(stopped.outcome.plan.worth.worth, 2);
    expect(await cancelSolve(engineer, { runId })).toMatchObject({
      ok: false,
      error: { code: "impossible" },
    });
  }, 60_000);

  it("starts from the plan as the person saw it, and keeps its pins", async () => {
    const stale = await startSolve(engineer, { planId, version: 99, timeLimitSeconds: 60 });
    expect(stale).toMatchObject({ ok: false, error: { code: "conflict" } });
    const lineId = world.lines["NOR-01"] as string;
    const before = await ended(await start());
    await pinLine(engineer, { planId, version: await version(), lineId, pin: "in", reason: "promised" });
    const after = await ended(await start());
    expect(after.inputHash).not.toBe(before.inputHash);
    if (after.outcome?.kind !== "plan") throw new Error("a plan must be found");
    expect(after.outcome.plan.choices.map((choice) => choice.lineId)).toEqual([lineId]);
    expect(after.worth).toBeLessThan(before.worth ?? 0);

    // What was found for a line pinned in comes onto the board with the rest, and goes with it.
    const placed = async () =>
      (await readBoard(engineer, { planId, whole: false }))?.view.choices.map((one) => one.lineId);
    const choices = [...after.outcome.plan.choices];
    await fillBoard(engineer, { planId, version: await version(), choices, back: false });
    expect(await placed()).toEqual([lineId]);
    const board = await readBoard(engineer, { planId, whole: false });
    expect(board?.view.worth.worth).toBeCloseTo(after.worth ?? Number.NaN, 2);
    await fillBoard(engineer, { planId, version: await version(), choices: [], back: false });
    expect(await placed()).toEqual([lineId]);
    await fillBoard(engineer, { planId, version: await version(), choices: [], back: true });
    expect(await placed()).toEqual([]);
  }, 120_000);

  it("whose server stopped is interrupted and does not run for ever", async () => {
    const { id } = await database().solveRun.create({
      data: {
        ...{
          planId,
          planVersion: 1,
          asOf: day(asOf),
          engine: "x",
          dataVersion: 1,
          inputHash: "0",
          solver: "x",
        },
        ...{ seed: 0, timeLimitSeconds: 60, startedBy: "person", beatAt: new Date(Date.now() - 300_000) },
        progress: { step: "model", done: 0.1, worth: null, bound: null },
      },
    });
    await markInterrupted();
    const run = await readSolveRun(engineer, id);
    expect(run).toMatchObject({ state: "interrupted", outcome: null });
    expect(run?.endedAt).not.toBeNull();
  });

  it("is for those who may plan all its lines, and seen by those who may see them", async () => {
    const [run] = await listSolveRuns(engineer, planId);
    const runId = run?.id ?? "";
    for (const actor of [personWith("engineer", world.north), personWith("viewer", world.south)]) {
      expect(await readSolveRun(actor, runId)).toBeNull();
      expect(await listSolveRuns(actor, planId)).toEqual([]);
    }
    expect(await readSolveRun(personWith("viewer", null), runId)).not.toBeNull();
    const may = await startSolve(personWith("viewer", null), { planId, version: 1, timeLimitSeconds: 60 });
    expect(may).toMatchObject({ ok: false, error: { code: "missing" } });
    expect(await cancelSolve(personWith("viewer", null), { runId })).toMatchObject({ ok: false });
  });
});
