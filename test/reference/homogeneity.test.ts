import { describe, expect, test } from "vitest";
import { randomStream } from "@/lib/kernel/random";
import { homogeneity } from "@/lib/reliability/homogeneity";

const near = (value: number | undefined, printed: number, tolerance: number) =>
  expect(Math.abs((value ?? Number.NaN) - printed), `${value} against ${printed}`).toBeLessThanOrEqual(
    tolerance,
  );

test("horse kicks by corps (Bortkiewicz 1898, totals from memory): 27.29 on 13 degrees, not one rate at 5 %", () => {
  const corps = [16, 16, 12, 12, 8, 11, 17, 12, 7, 13, 15, 25, 24, 8];
  const result = homogeneity(corps.map((events) => ({ events, unitYears: 20 })));
  near(result?.rate, 0.7, 1e-12);
  // 382 / 14, added by hand; between the textbook points 24.736 (2.5 %) and 27.688 (1 %).
  near(result?.statistic, 382 / 14, 1e-12);
  expect(result?.degrees).toBe(13);
  expect(result?.p).toBeGreaterThan(0.01);
  expect(result?.p).toBeLessThan(0.025);
});

describe("two groups of equal time whose counts give a chi-square point of the textbook tables", () => {
  // (n1 - n2)^2 / (n1 + n2) is the statistic; counts chosen so that it falls on both sides of the point.
  test.each([
    [3.841, 0.05],
    [6.635, 0.01],
    [10.828, 0.001],
  ])("%d leaves %d", (point, chance) => {
    const sum = 1_000_000;
    const apart = Math.sqrt(point * sum);
    const p = (difference: number) =>
      homogeneity([
        { events: (sum + difference) / 2, unitYears: 5 },
        { events: (sum - difference) / 2, unitYears: 5 },
      ])?.p ?? Number.NaN;
    near(p(2 * Math.round(apart / 2)), chance, 0.01 * chance);
  });
});

test("expected counts follow the time in service (derived): 9 and 1 in 300 and 100 unit-years", () => {
  const result = homogeneity([
    { events: 9, unitYears: 300 },
    { events: 1, unitYears: 100 },
  ]);
  near(result?.statistic, 1.5 ** 2 / 7.5 + 1.5 ** 2 / 2.5, 1e-12);
  near(result?.leastExpected, 2.5, 1e-12);
});

test("nothing to compare is null, not alike: no event, one group, or no time in service", () => {
  const some = { events: 3, unitYears: 10 };
  const none = { events: 0, unitYears: 10 };
  expect(homogeneity([none, none])).toBeNull();
  expect(homogeneity([some])).toBeNull();
  expect(homogeneity([])).toBeNull();
  expect(homogeneity([some, { events: 0, unitYears: 0 }])).toBeNull();
  expect(homogeneity([some, none, { events: 0, unitYears: 0 }])).toEqual(homogeneity([some, none]));
});
test.each([
  ["events", { events: 0.5, unitYears: 1 }],
  ["events", { events: -1, unitYears: 1 }],
  ["unitYears", { events: 1, unitYears: 0 }],
  ["unitYears", { events: 0, unitYears: -1 }],
  ["unitYears", { events: 0, unitYears: Number.POSITIVE_INFINITY }],
])("bad %s are refused by name", (name, group) => {
  expect(() => homogeneity([{ events: 1, unitYears: 1 }, group])).toThrow(name);
});

/** Every way the events can fall into the groups, with its chance when all share one rate. */
function* splits(events: number, shares: readonly number[]): Generator<{ counts: number[]; chance: number }> {
  const [share = 1, ...rest] = shares;
  if (rest.length === 0) {
    yield { counts: [events], chance: 1 };
    return;
  }
  const left = rest.reduce((sum, value) => sum + value, 0);
  const inFirst = share / (share + left);
  let choose = 1;
  for (let here = 0; here <= events; here += 1) {
    const chance = choose * inFirst ** here * (1 - inFirst) ** (events - here);
    for (const below of splits(events - here, rest))
      yield { counts: [here, ...below.counts], chance: chance * below.chance };
    choose = (choose * (events - here)) / (here + 1);
  }
}

const groupsOf = (counts: readonly number[], times: readonly number[]) =>
  times.map((unitYears, i) => ({ events: counts[i] ?? 0, unitYears }));

/** How often sites that are alike would be called unlike at a level, by adding up every outcome. */
function falseAlarms(events: number, times: readonly number[], level: number): number {
  let sum = 0;
  for (const { counts, chance } of splits(events, times))
    if ((homogeneity(groupsOf(counts, times))?.p ?? 1) < level) sum += chance;
  return sum;
}

describe("called unlike though alike, over every outcome of the events seen", () => {
  test("chances of all outcomes sum to one", () => {
    let sum = 0;
    for (const { chance } of splits(12, [30, 80, 240])) sum += chance;
    near(sum, 1, 1e-12);
  });
  test.each([
    [12, [100, 100, 100]],
    [25, [30, 80, 240]],
    [30, [60, 60, 90, 200]],
  ] as const)(
    "%d events in %j unit-years at a level of 5 %: 2.5 to 7.5 %, as counts are whole",
    (events, times) => {
      const share = falseAlarms(events, times, 0.05);
      expect(share).toBeGreaterThan(0.025);
      expect(share).toBeLessThan(0.075);
    },
  );
  test("twenty uneven cases with at least one event expected in each group: never above 9 % at a level of 5 %", () => {
    const stream = randomStream(12, "uneven sites");
    for (let run = 0; run < 20; run += 1) {
      const times = Array.from({ length: stream.integer(2, 4) }, () => stream.between(20, 200));
      const events =
        Math.ceil(times.reduce((sum, t) => sum + t, 0) / Math.min(...times)) + stream.integer(0, 4);
      expect(falseAlarms(events, times, 0.05)).toBeLessThan(0.09);
    }
  });
});
