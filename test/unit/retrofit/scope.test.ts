import { describe, expect, test } from "vitest";
import { likelyNorms, retrofitCost } from "@/lib/retrofit/costNorm";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import { buildScope, type Scope } from "@/lib/retrofit/scope/buildScope";
import { orderBy } from "@/lib/retrofit/scope/orderList";
import type { ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";
import { costNormsOf, likelyScopeNorms as norms } from "@/lib/retrofit/scope/scopeNorms";
import { scopeOptions } from "@/lib/retrofit/scope/scopeOptions";
import { successorIn } from "@/lib/retrofit/scope/successorFor";
import { targetChoices } from "@/lib/retrofit/scope/targetChoices";
import { fitWindow, windowWork } from "@/lib/retrofit/scope/windowFit";
import { axis, controller, line, newDrive, oldDrive, part } from "@/test/support/scopeFacts";

const target = "Heron E";

function scopeOf(facts: ScopeFacts): Scope {
  const built = buildScope(facts, { target, norms });
  if (!built.ok) throw new Error(built.error.kind);
  return built.value;
}

const named = ({ blockers }: Scope) => blockers.map(({ name, state }) => `${name} ${state}`);

describe("what takes a drive's place", () => {
  const strange = part("TM-HE-040", { family: target });
  const facts = { parts: [oldDrive, newDrive, strange], successors: [] };
  const follows = (partId: string, successorId: string, condition: string | null = null) => ({
    ...{ partId, successorId, condition },
  });

  test("is the recorded successor of the family, over steps, with every condition on the way", () => {
    const between = part("TM-HX-020", { family: "Between" });
    const found = successorIn(oldDrive, target, {
      parts: [...facts.parts, between],
      successors: [follows(oldDrive.id, between.id, "first"), follows(between.id, strange.id, "second")],
    });
    expect(found).toMatchObject({ part: strange, basis: "recorded", condition: "first second" });
  });
  test("is of the same size where two are recorded", () => {
    const successors = [follows(oldDrive.id, strange.id), follows(oldDrive.id, newDrive.id)];
    expect(successorIn(oldDrive, target, { ...facts, successors })?.part).toBe(newDrive);
  });
  test("is else only the part with the same size mark, and said so", () => {
    expect(successorIn(oldDrive, target, facts)).toMatchObject({ part: newDrive, basis: "same size" });
  });
  test("is nothing where neither is on record", () => {
    expect(successorIn(part("TM-HR-099"), target, facts)).toBeNull();
    const scope = scopeOf(line([axis("A1", { drive: part("TM-HR-099") })]));
    expect(named(scope)).toContain("Successor missing unknown");
  });
  test("is refused with the numbers when parts follow themselves", () => {
    const third = part("TM-HR-030");
    const built = buildScope(
      line([axis("A1")], {
        parts: [oldDrive, newDrive, third],
        successors: [follows(oldDrive.id, third.id), follows(third.id, oldDrive.id)],
      }),
      { target, norms },
    );
    expect(built).toEqual({
      ok: false,
      error: { kind: "loop", numbers: ["TM-HR-020", "TM-HR-030", "TM-HR-020"] },
    });
  });
});

describe("which axes are converted", () => {
  test("those out of open supply, not those in it, and nothing is no scope", () => {
    const open = part("XX-1", { stage: "open", family: "Other" });
    const scope = scopeOf(line([axis("A1"), axis("A2", { drive: open }), axis("A3", { drive: null })]));
    expect(scope.axes.map(({ axis: { code } }) => code)).toEqual(["A1", "A3"]);
    expect(scope.staying.map(({ code }) => code)).toEqual(["A2"]);
    expect(buildScope(line([axis("A2", { drive: open })]), { target, norms })).toMatchObject({
      error: { kind: "nothing" },
    });
  });
  test("a ring comes along whole, over machines and lines; drives of the family stay", () => {
    const open = part("XX-1", { stage: "open", family: "Other" });
    const scope = scopeOf(
      line([
        axis("A1", { ring: "R1" }),
        axis("A2", { ring: "R1", machine: "M2", drive: open }),
        axis("A3", { ring: "R1", lineCode: "NOR-02", drive: open }),
        axis("A4", { ring: "R1", drive: newDrive }),
        axis("A5", { ring: "R2", drive: open }),
      ]),
    );
    expect(scope.axes.map(({ axis: { code }, why }) => `${code} ${why}`)).toEqual([
      "A1 out of supply",
      "A2 in the ring",
    ]);
    expect(scope.elsewhere.map(({ code }) => code)).toEqual(["A3"]);
    expect(scope.rings).toEqual([{ name: "R1", axes: 3 }]);
  });
  test("the family most axes have a successor in is offered first", () => {
    const elm = part("BW-EL-020", { family: "Elm", stage: "open" });
    const choices = targetChoices(line([axis("A1")], { parts: [oldDrive, elm, newDrive] }));
    expect(choices).toEqual([
      { family: "Heron E", axes: 1, recorded: 1 },
      { family: "Elm", axes: 1, recorded: 0 },
    ]);
  });
});

describe("motors and controllers, by the rules", () => {
  const wren = (powerKw: number | null) => ({ number: "DV-WR", family: "Wren", powerKw });

  test("a motor fits with an adapter, has to be sized, or nobody knows", () => {
    const finch = { number: "DV-FI", family: "Finch", powerKw: 2 };
    const motors = [wren(2), wren(6), wren(null), finch, null];
    const scope = scopeOf(line(motors.map((motor, i) => axis(`A${i}`, { motor }))));
    expect(scope.axes.map(({ motor }) => motor.fit)).toEqual([
      ...["adapter", "sizing", "unknown", "unknown", "unknown"],
    ]);
    expect(scope.counts.motors).toEqual([1, 1, 4]);
    expect(scope.counts.adapters).toEqual([1, 4, 4]);
  });
  test("without a rule no motor is taken to fit", () => {
    const [one] = scopeOf(line([axis("A1")], { rules: [] })).axes;
    expect(one?.motor).toMatchObject({ fit: "unknown", words: "No rule speaks of Wren on Heron E." });
  });
  test("a controller that cannot reach the floor is swapped, with the racks its card loses", () => {
    const slate3 = controller({
      ...{ model: "Slate 3", level: parseFirmwareLevel("16"), racks: [{ family: "Pebble", pieces: 2 }] },
      cards: [{ family: "Link R", revision: "B1", evidence: "documented" }],
    });
    const scope = scopeOf(line([axis("A1")], { controllers: [slate3] }));
    expect(scope.counts).toMatchObject({ swapped: [1, 1, 1], raised: [0, 0, 0], racks: [2, 2, 2] });
    expect(named(scope).slice(0, 2)).toEqual(["Firmware floor blocked", "Hardware ceiling blocked"]);
    expect(named(scope)).toContain("I/O stranded blocked");
  });
  test("one whose level nobody read counts as a swap but for the low end", () => {
    const unread = controller({ model: "Slate 5", level: parseFirmwareLevel(null) });
    expect(scopeOf(line([axis("A1")], { controllers: [unread] })).counts.swapped).toEqual([0, 1, 1]);
  });
  test("a machine without a recorded controller is counted as if nobody had read it, and said", () => {
    const scope = scopeOf(line([axis("A1", { controller: null }), axis("A2", { controller: null })]));
    expect(scope.counts.swapped).toEqual([0, 1, 1]);
    expect(named(scope)).toContain("Controller not recorded unknown");
  });
  test("a controller of another line or without converted axes is not judged", () => {
    const other = controller({ designation: "K9", model: "Slate 3" });
    expect(scopeOf(line([axis("A1")], { controllers: [controller(), other] })).controllers).toHaveLength(1);
  });
});

describe("money", () => {
  test("one axis added up by hand at typical norms", () => {
    const { money } = scopeOf(line([axis("A1")]));
    const hours = 0.5 + 4 + 6 + 60 + 4 + 3 + 2.5 + 24;
    expect(money.hours[1]).toBeCloseTo(hours, 9);
    expect(money.cost[1]).toBeCloseTo((hours * 90 + 2500 + 450 + 350) * 1.15, 6);
  });
  test("agrees with the estimate of the plan where both count the same", () => {
    const scope = scopeOf(line([axis("A1"), axis("A2")], { rules: [], parts: [oldDrive], successors: [] }));
    const { cost } = scope.money;
    const units = { machines: 1, drives: 2, motors: 0, controllers: 0, hmis: 0, drivePrice: null };
    // Without a rule the low end holds neither a motor nor an adapter nor a controller.
    expect(cost[0]).toBeCloseTo(retrofitCost(units, costNormsOf(norms)).low, 6);
    expect(costNormsOf(norms)).toEqual(likelyNorms);
  });
});

describe("window and order days", () => {
  const counts = { ...scopeOf(line([axis("A1")])).counts, axes: 54, machines: 7 };
  const window = { id: "w", name: "Summer", startsOn: "2027-08-02", endsOn: "2027-08-20", note: null };

  test("54 axes on 7 machines, worked out by hand", () => {
    const work = windowWork(counts, norms);
    // (54 × 1.5 + 54 × 1 + 7 × 8) / 4 and so on.
    expect(work.clock).toEqual([191 / 4, 465 / 4, 1208 / 4]);
    expect(work.planned).toBeCloseTo((47.75 + 4 * 116.25 + 302) / 6 + (0.8416 * (302 - 47.75)) / 6, 9);
    expect(work.days).toBeCloseTo(17.1, 1);
    const fit = fitWindow(work, { ...window, usableHours: 140 }, norms);
    expect(fit).toMatchObject({ state: "short", usableDays: 14, plannable: 112 });
    expect(fit.left).toBeCloseTo(112 - work.planned, 9);
  });
  test("fits at the edge, and hours nobody knows are not known", () => {
    const work = windowWork(counts, norms);
    const usableHours = work.planned / norms.plain.windowShare;
    expect(fitWindow(work, { ...window, usableHours: usableHours + 1e-9 }, norms).state).toBe("fits");
    expect(fitWindow(work, { ...window, usableHours: usableHours - 0.01 }, norms).state).toBe("short");
    expect(fitWindow(work, { ...window, usableHours: null }, norms).state).toBe("unknown");
  });
  test("the last day to order, counted by hand", () => {
    // 16 + 1 + 8 + 1.5 weeks are 185.5 days.
    expect(orderBy("2027-06-30", 16, norms.plain)).toBe("2026-12-26");
    expect(orderBy("2027-06-30", null, norms.plain)).toBeNull();
  });
});

test("the ways to treat a line say what they cost, or why that is not known", () => {
  const facts = line([
    axis("A1", { ring: "R1" }),
    axis("A2", { machine: "M2" }),
    axis("A3", { machine: "M2" }),
  ]);
  const full = scopeOf(facts);
  const options = scopeOptions({ facts, full, target, norms, window: null });
  expect(options.map(({ id }) => id)).toEqual([
    ...["nothing", "care", "stock", "repair", "pool", "controller", "partial", "full", "replace"],
  ]);
  const of = (id: string) => options.find((one) => one.id === id);
  expect(of("replace")?.cost).toEqual({ unknown: "ask a builder for an offer" });
  expect(of("stock")?.blockers).toEqual(["Heron R cannot be ordered from its maker any more"]);
  expect(of("full")?.cost).toEqual({ value: full.money.cost });
  expect(of("partial")?.released).toEqual([expect.objectContaining({ units: 2 })]);
  expect(of("controller")?.cost).toEqual({ value: [0, 0, 0] });
});
