import {
  array,
  assert,
  constant,
  integer,
  nat,
  option,
  property,
  record,
  shuffledSubarray,
  tuple,
} from "fast-check";
import { expect, test } from "vitest";
import { addDays } from "@/lib/kernel/isoDate";
import { type Activity, criticalPath, type NetworkTerms } from "@/lib/projects/criticalPath";
import { MONDAY_TO_FRIDAY, weekday, workDays } from "@/lib/projects/workCalendar";

const START = "2026-03-02";
const terms: NetworkTerms = { startsOn: START, asOf: null, calendar: MONDAY_TO_FRIDAY, windows: [] };

interface Drawn {
  readonly days: number;
  readonly after: readonly (readonly [task: number, lag: number])[];
  readonly notBefore: number | null;
}

/** Networks without a circle: a task only waits for tasks drawn before it; given in any order. */
const networks = array(
  record({
    days: integer({ min: 1, max: 12 }),
    after: array(tuple(nat({ max: 6 }), nat({ max: 4 })), { maxLength: 3 }),
    notBefore: option(nat({ max: 40 })),
  }),
  { minLength: 1, maxLength: 7 },
)
  .chain((drawn) =>
    tuple(
      constant(drawn.map(activity)),
      shuffledSubarray(
        drawn.map((_, i) => i),
        { minLength: drawn.length },
      ),
    ),
  )
  .map(([tasks, order]) => order.map((i) => tasks[i] as Activity));

function activity({ days, after, notBefore }: Drawn, i: number): Activity {
  const links = new Map(after.filter(([task]) => task < i).map(([task, lag]) => [`t${task}`, lag]));
  return {
    ...{ id: `t${i}`, days, inWindow: false, startedOn: null, finishedOn: null },
    after: [...links].map(([id, lag]) => ({ id, lag })),
    notBefore: notBefore === null ? null : addDays(START, notBefore),
  };
}

function placed(tasks: readonly Activity[], given: Partial<NetworkTerms> = {}) {
  const network = criticalPath(tasks, { ...terms, ...given });
  if (!network.ok) throw new Error(`refused: ${network.error.ids.join(", ")}`);
  return network.value;
}

const work = () => workDays(MONDAY_TO_FRIDAY, START);

test("no task lies before one it waits for, its lag, its own earliest day, or on a day not worked", () => {
  assert(
    property(networks, (tasks) => {
      const at = new Map(placed(tasks).tasks.map((one) => [one.id, one]));
      const days = work();
      for (const { id, after, notBefore, days: length } of tasks) {
        const own = at.get(id);
        if (!own) throw new Error(id);
        expect([1, 2, 3, 4, 5]).toContain(weekday(own.start));
        expect(days.placeOf(own.finish) - days.placeOf(own.start)).toBe(length - 1);
        if (notBefore !== null) expect(own.start >= notBefore).toBe(true);
        for (const link of after)
          expect(days.placeOf(own.start)).toBeGreaterThan(
            days.placeOf(at.get(link.id)?.finish ?? "9999-01-01") + link.lag,
          );
      }
    }),
  );
});

/** Length of the longest of all ways through, found by walking each of them. */
function longest(tasks: readonly Activity[], days: ReturnType<typeof work>): number {
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const endOf = (task: Activity): number => {
    const free = task.after.map(({ id, lag }) => endOf(byId.get(id) as Activity) + lag);
    return Math.max(0, task.notBefore === null ? 0 : days.placeOf(task.notBefore), ...free) + task.days;
  };
  return Math.max(...tasks.map(endOf));
}

test("the end is the longest of all ways through, each walked on its own", () => {
  assert(
    property(networks, (tasks) => {
      const days = work();
      expect(days.placeOf(placed(tasks).finish ?? START) + 1).toBe(longest(tasks, days));
    }),
  );
});

test("a task slips by its total float without moving the end, and by one day more moves it", () => {
  assert(
    property(networks, (tasks) => {
      const before = placed(tasks);
      const days = work();
      for (const { id, start, totalFloat, critical } of before.tasks) {
        expect(totalFloat).toBeGreaterThanOrEqual(0);
        expect(critical).toBe(totalFloat === 0);
        const slipped = (by: number) =>
          placed(
            tasks.map((task) =>
              task.id === id ? { ...task, notBefore: days.dayAt(days.placeOf(start) + by) } : task,
            ),
          ).finish;
        expect(slipped(totalFloat ?? 0)).toBe(before.finish);
        expect((slipped((totalFloat ?? 0) + 1) ?? "") > (before.finish ?? "")).toBe(true);
      }
    }),
    { numRuns: 60 },
  );
});

test("a task slips by its free float without moving any other, and the free is never above the total", () => {
  assert(
    property(networks, (tasks) => {
      const before = placed(tasks);
      const days = work();
      for (const { id, start, totalFloat, freeFloat } of before.tasks) {
        expect(freeFloat).toBeGreaterThanOrEqual(0);
        expect(freeFloat ?? 0).toBeLessThanOrEqual(totalFloat ?? 0);
        const day = days.dayAt(days.placeOf(start) + (freeFloat ?? 0));
        const after = placed(tasks.map((task) => (task.id === id ? { ...task, notBefore: day } : task)));
        const others = (network: typeof before) =>
          network.tasks.filter((one) => one.id !== id).map((one) => one.start);
        expect(others(after)).toEqual(others(before));
      }
    }),
    { numRuns: 60 },
  );
});

test("some tasks are always critical, and they reach from the start, or an earliest day, to the end", () => {
  assert(
    property(networks, (tasks) => {
      const { tasks: found, finish } = placed(tasks);
      const critical = found.filter((one) => one.critical);
      expect(critical.some((one) => one.finish === finish)).toBe(true);
      const freeOfDays = tasks.every(({ notBefore }) => notBefore === null);
      if (freeOfDays) expect(critical.some(({ start }) => start === START)).toBe(true);
    }),
  );
});

test("nothing that has not begun lies before today, and what runs ends today at the earliest", () => {
  assert(
    property(networks, nat({ max: 60 }), (tasks, later) => {
      const asOf = work().dayAt(later);
      const [first, ...rest] = tasks;
      if (!first) return;
      const running = { ...first, startedOn: START };
      const found = placed([running, ...rest], { asOf }).tasks;
      expect((found[0]?.finish ?? "") >= asOf).toBe(true);
      expect(found.slice(1).every(({ start }) => start >= asOf)).toBe(true);
      expect(found.every(({ totalFloat }) => (totalFloat ?? 0) >= 0)).toBe(true);
    }),
  );
});

test("a circle is refused, and each task named waits for the one named before it", () => {
  assert(
    property(networks, (tasks) => {
      const circle = tasks.map((task, i) => {
        const before = tasks.at(i - 1)?.id ?? "";
        return { ...task, after: [...task.after, { id: before, lag: 0 }] };
      });
      const network = criticalPath(circle, terms);
      if (network.ok) throw new Error("a circle was placed");
      const { kind, ids } = network.error;
      expect(kind).toBe("circle");
      ids.forEach((id, i) => {
        const links = circle.find((task) => task.id === id)?.after ?? [];
        expect(links.map((link) => link.id)).toContain(ids.at(i - 1));
      });
    }),
  );
});
