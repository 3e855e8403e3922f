import { array, assert, constantFrom, double, integer, option, property, record, tuple } from "fast-check";
import { describe, test } from "vitest";
import { borrowAndCount } from "@/lib/reliability/borrow";
import { downtimeSplit } from "@/lib/reliability/downtime";
import { homogeneity } from "@/lib/reliability/homogeneity";
import { lognormalMean, meanBeyond, shrinkLognormal } from "@/lib/reliability/lognormal";
import { consumptionRate, rateInterval } from "@/lib/reliability/rate";
import { laplaceTrend, powerLawOfCounts, powerLawTrend } from "@/lib/reliability/trend";
import { sumsOf } from "../support/sumsOf";

const between = (min: number, max: number) => double({ min, max, noNaN: true });
const near = (a: number, b: number, tolerance = 1e-9) =>
  Math.abs(a - b) <= tolerance * Math.max(1, Math.abs(a), Math.abs(b));

describe("rates", () => {
  const rate = record({ a: between(0.3, 5000), b: between(0.1, 5000) });
  test("the range holds the mean, and one more event or one unit-year less moves all of it up", () => {
    assert(
      property(rate, constantFrom(0.5, 0.8, 0.9, 0.99), ({ a, b }, level) => {
        const now = rateInterval({ a, b }, level);
        const more = rateInterval({ a: a + 1, b }, level);
        const shorter = rateInterval({ a, b: b * 0.9 }, level);
        const rises = (up: typeof now) => up.low > now.low && up.mean > now.mean && up.high > now.high;
        return (
          (level === 0.5 || (now.low <= now.mean && now.mean <= now.high)) && rises(more) && rises(shorter)
        );
      }),
    );
  });
  test("a rate lies between what was believed and what was counted; with no events between zero and the belief", () => {
    assert(
      property(rate, integer({ min: 0, max: 60 }), between(0.1, 500), ({ a, b }, events, unitYears) => {
        const { a: shape, b: time } = borrowAndCount({ a, b }, { events, unitYears });
        const [low = 0, high = 0] = [a / b, events / unitYears].sort((x, y) => x - y);
        const mean = shape / time;
        return mean > 0 && mean >= low * (1 - 1e-9) && mean <= high * (1 + 1e-9);
      }),
    );
  });
  test("consumption never exceeds removals and falls as more comes back", () => {
    assert(
      property(rate, between(0, 1), between(0, 1), (removal, one, other) => {
        const [less = 0, more = 0] = [one, other].sort((x, y) => x - y);
        const all = rateInterval(removal, 0.9);
        const [used, fewer] = [consumptionRate(removal, less), consumptionRate(removal, more)];
        return used.mean <= all.mean && used.high <= all.high && fewer.mean <= used.mean && fewer.low >= 0;
      }),
    );
  });
});

describe("homogeneity", () => {
  const groups = array(record({ events: integer({ min: 0, max: 40 }), unitYears: between(1, 500) }), {
    minLength: 2,
    maxLength: 6,
  });
  test("has its chance in [0, 1], whatever the order and whatever the unit of time", () => {
    assert(
      property(groups, between(0.01, 100), (list, unit) => {
        const plain = homogeneity(list);
        if (plain === null) return list.every(({ events }) => events === 0);
        const turned = homogeneity([...list].reverse());
        const scaled = homogeneity(list.map((g) => ({ ...g, unitYears: g.unitYears * unit })));
        const alike = near(turned?.p ?? -1, plain.p) && near(scaled?.p ?? -1, plain.p, 1e-6);
        return plain.p >= 0 && plain.p <= 1 && plain.degrees === list.length - 1 && alike;
      }),
    );
  });
  test("finds nothing where every group has its share, and less the more one group departs", () => {
    assert(
      property(array(integer({ min: 1, max: 30 }), { minLength: 2, maxLength: 6 }), (counts) => {
        const alike = counts.map((events) => ({ events, unitYears: 12 * events }));
        const [first, ...rest] = alike;
        if (!first) return false;
        const apart = (by: number) =>
          homogeneity([{ ...first, events: first.events + by }, ...rest])?.p ?? -1;
        return near(homogeneity(alike)?.p ?? -1, 1) && apart(5) < 1 && apart(20) < apart(5);
      }),
    );
  });
});

describe("trends", () => {
  const times = array(between(0.001, 0.999), { minLength: 1, maxLength: 40 }).map((list) =>
    list.sort((a, b) => a - b),
  );
  test("chances lie in [0, 1], and time run backwards turns Laplace's sign", () => {
    assert(
      property(times, (list) => {
        const { u, p } = laplaceTrend(list, 1);
        const back = laplaceTrend(list.map((t) => 1 - t).reverse(), 1);
        const test = powerLawTrend(list, 1);
        return near(back.u, -u) && p >= 0 && p <= 1 && test.p >= 0 && test.p <= 1 + 1e-12;
      }),
    );
  });
  const counts = tuple(
    array(integer({ min: 0, max: 30 }), { minLength: 3, maxLength: 8 }),
    array(between(0.1, 5), { minLength: 8, maxLength: 8 }),
  ).map(([events, widths]) => {
    let end = 0;
    return events.map((n, i) => {
      end += widths[i] ?? 1;
      return { end, events: n + 1 };
    });
  });
  test("the fitted curve ends on the count, keeps its shape in any unit, and later events bend it up", () => {
    assert(
      property(counts, between(0.01, 100), (list, unit) => {
        const fit = powerLawOfCounts(list);
        const total = list.reduce((sum, { events }) => sum + events, 0);
        const end = list.at(-1)?.end ?? Number.NaN;
        const scaled = powerLawOfCounts(list.map((c) => ({ ...c, end: c.end * unit })));
        const later = powerLawOfCounts(list.map((c) => (c.end === end ? { ...c, events: c.events + 1 } : c)));
        return (
          near(fit.lambda * end ** fit.beta, total) &&
          near(scaled.beta, fit.beta, 1e-6) &&
          near(scaled.intensity * unit, fit.intensity, 1e-6) &&
          later.beta > fit.beta
        );
      }),
    );
  });
});

test("waiting and repair of the stops that tell both add up to their restoration", () => {
  const stop = record({ repair: between(0, 200), logisticHours: option(between(0, 800)) });
  assert(
    property(array(stop, { maxLength: 20 }), (list) => {
      const stops = list.map(({ repair, logisticHours }) => ({
        downtimeHours: repair + (logisticHours ?? 0),
        logisticHours,
      }));
      const told = stops.filter(({ logisticHours }) => logisticHours !== null);
      const { waiting, repair, restoration } = downtimeSplit(stops);
      const whole = downtimeSplit(told).restoration.hours;
      const sum = waiting.hours === null || repair.hours === null ? null : waiting.hours + repair.hours;
      return (
        restoration.stops === stops.length &&
        waiting.stops === told.length &&
        (sum === null ? whole === null : near(sum, whole ?? -1))
      );
    }),
  );
});

describe("recorded stops", () => {
  const times = array(between(0.01, 5000), { minLength: 1, maxLength: 30 });
  const prior = record({ mu: between(-1, 6), sigma: between(0.1, 1.5), weight: between(0.5, 50) });
  test("a shorter stop never raises the mean time, nor the mean time beyond any buffer", () => {
    assert(
      property(prior, times, tuple(between(1e-6, 1), between(0, 100)), (belief, hours, [share, buffer]) => {
        const at = (first: number) => shrinkLognormal(belief, sumsOf([first, ...hours.slice(1)]));
        const [long, short] = [at(hours[0] ?? 1), at((hours[0] ?? 1) * share)];
        const slack = 1 + 1e-9;
        return (
          lognormalMean(short) <= lognormalMean(long) * slack &&
          meanBeyond(short, buffer) <= meanBeyond(long, buffer) * slack + 1e-9
        );
      }),
    );
  });
  test("the mean lies between what was believed and what was recorded", () => {
    assert(
      property(prior, times, (belief, hours) => {
        const recorded = hours.reduce((sum, hour) => sum + hour, 0) / hours.length;
        const mean = lognormalMean(shrinkLognormal(belief, sumsOf(hours)));
        const ends = [recorded, lognormalMean(belief)];
        return mean >= Math.min(...ends) * (1 - 1e-9) && mean <= Math.max(...ends) * (1 + 1e-9);
      }),
    );
  });
});
