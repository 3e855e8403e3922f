import { assert, constantFrom, integer, option, property, record, uniqueArray } from "fast-check";
import { expect, test } from "vitest";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import { buildScope, type Scope } from "@/lib/retrofit/scope/buildScope";
import type { ScopeAxis } from "@/lib/retrofit/scope/scopeFacts";
import { likelyScopeNorms as norms } from "@/lib/retrofit/scope/scopeNorms";
import { scopeOptions } from "@/lib/retrofit/scope/scopeOptions";
import { axis, controller, line, newDrive, oldDrive, part } from "../support/scopeFacts";

const open = part("XX-020", { family: "Other", stage: "open" });
const motor = (powerKw: number | null) => ({ number: "W", family: "Wren", powerKw });
const anyAxis = record({
  code: integer({ min: 1, max: 60 }),
  machine: constantFrom("M1", "M2", "M3"),
  drive: constantFrom(oldDrive, newDrive, open, null),
  ring: constantFrom("R1", "R2", null),
  motor: constantFrom(motor(1), motor(6), motor(null), null),
  controller: constantFrom("K1", "K2", null),
}).map(({ code, ...given }) => axis(`A${code}`, given));
const someAxes = uniqueArray(anyAxis, { minLength: 1, maxLength: 25, selector: ({ id }) => id });
const anyController = record({
  model: constantFrom("Slate 3", "Slate 5", "Slate 7"),
  level: option(integer({ min: 10, max: 30 })),
});

type Made = Parameters<Parameters<typeof anyController.map>[0]>[0];
const factsOf = (axes: readonly ScopeAxis[], { model, level }: Made) =>
  line(axes, {
    parts: [oldDrive, newDrive, open],
    controllers: ["K1", "K2"].map((designation) =>
      controller({ designation, model, level: parseFirmwareLevel(level === null ? null : String(level)) }),
    ),
  });

const scopeOf = (axes: readonly ScopeAxis[], made: Made): Scope | null => {
  const built = buildScope(factsOf(axes, made), { target: "Heron E", norms });
  return built.ok ? built.value : null;
};

const rises = ([low, typical, high]: readonly [number, number, number]) => {
  expect(low).toBeLessThanOrEqual(typical + 1e-9);
  expect(typical).toBeLessThanOrEqual(high + 1e-9);
};

test("no task begins before what it waits for has ended, and the last end is the total", () => {
  assert(
    property(someAxes, anyController, (axes, made) => {
      const scope = scopeOf(axes, made);
      if (!scope) return;
      const { tasks, total, criticalPath } = scope.schedule;
      const end = new Map(tasks.map((task) => [task.id, task.end]));
      expect(end.size).toBe(tasks.length);
      for (const { start, after } of tasks)
        for (const id of after) expect(start).toBeGreaterThanOrEqual((end.get(id) ?? Infinity) - 1e-9);
      expect(Math.max(...end.values())).toBeCloseTo(total[1], 9);
      const days = new Map(tasks.map((task) => [task.id, task.days[1]]));
      expect(criticalPath.reduce((sum, id) => sum + (days.get(id) ?? 0), 0)).toBeCloseTo(total[1], 6);
    }),
  );
});

test("low never lies above typical, nor typical above high", () => {
  assert(
    property(someAxes, anyController, (axes, made) => {
      const scope = scopeOf(axes, made);
      if (!scope) return;
      for (const row of scope.money.rows) rises(row.total);
      rises(scope.money.cost);
      rises(scope.money.hours);
      rises(scope.work.clock);
      rises(scope.schedule.total);
      for (const order of scope.orders) rises(order.quantity);
    }),
  );
});

test("the same holds for every way to treat the line whose figure is known", () => {
  assert(
    property(someAxes, anyController, (axes, made) => {
      const full = scopeOf(axes, made);
      if (!full) return;
      const facts = factsOf(axes, made);
      const options = scopeOptions({ facts, full, target: "Heron E", norms, window: null });
      const known = options
        .flatMap(({ cost, weeks }) => [cost, weeks])
        .flatMap((one) => ("value" in one ? [one.value] : []));
      expect(known.length).toBeGreaterThan(0);
      for (const value of known) rises(value);
    }),
  );
});

test("one more old axis never makes it cheaper, shorter or smaller", () => {
  assert(
    property(someAxes, anyController, (axes, made) => {
      const less = scopeOf(axes, made);
      const more = scopeOf([...axes, axis("A99", { motor: motor(6) })], made);
      if (!less || !more) return;
      for (const at of [0, 1, 2] as const) {
        expect(more.money.cost[at]).toBeGreaterThan(less.money.cost[at]);
        expect(more.work.clock[at]).toBeGreaterThan(less.work.clock[at]);
        expect(more.schedule.total[at]).toBeGreaterThanOrEqual(less.schedule.total[at] - 1e-9);
      }
    }),
  );
});

test("every axis is converted or stays, rings are converted whole, and what comes out is what was in", () => {
  assert(
    property(someAxes, anyController, (axes, made) => {
      const scope = scopeOf(axes, made);
      if (!scope) return;
      expect(scope.axes.length + scope.staying.length).toBe(axes.length);
      const rings = new Set(scope.rings.map(({ name }) => name));
      for (const { ring, drive } of scope.staying)
        expect(ring !== null && rings.has(ring) && drive?.family !== "Heron E").toBe(false);
      expect(scope.released.reduce((sum, { units }) => sum + units, 0)).toBe(scope.axes.length);
    }),
  );
});
