import { array, assert, boolean, constantFrom, integer, property, record } from "fast-check";
import { describe, test } from "vitest";
import { addDays, addMonths, daysBetween, isIsoDate } from "@/lib/kernel/isoDate";
import { sumAmounts } from "@/lib/kernel/money";
import { cutByBudget, type Pin } from "@/lib/portfolio/cutByBudget";

const day = integer({ min: 0, max: 60_000 }).map((n) => addDays("1950-01-01", n));

describe("dates", () => {
  test("a day added and taken off is the day, and text order is time order", () => {
    assert(
      property(day, integer({ min: 1, max: 20_000 }), (date, days) => {
        const later = addDays(date, days);
        return (
          isIsoDate(later) &&
          later > date &&
          daysBetween(date, later) === days &&
          addDays(later, -days) === date
        );
      }),
    );
  });
  test("a month later is 28 to 31 days later and twelve are a year, but for a leap day", () => {
    assert(
      property(day, (date) => {
        const days = daysBetween(date, addMonths(date, 1));
        const year = Number(date.slice(0, 4)) + 1;
        const sameDay = date.endsWith("02-29") ? `${year}-02-28` : `${year}${date.slice(4)}`;
        return days >= 28 && days <= 31 && addMonths(date, 12) === sameDay;
      }),
    );
  });
});

test("amounts add up as whole cents do", () => {
  assert(
    property(array(integer({ min: -1e9, max: 1e9 })), (cents) => {
      const texts = cents.map(
        (c) =>
          `${c < 0 ? "-" : ""}${Math.floor(Math.abs(c) / 100)}.${String(Math.abs(c) % 100).padStart(2, "0")}`,
      );
      const total = cents.reduce((sum, c) => sum + c, 0);
      return Math.round(Number(sumAmounts(texts)) * 100) === total;
    }),
  );
});

test("a cut never spends more than there is, keeps pins and skips nothing that comes before what it funds unless filling", () => {
  const lines = array(
    record({ cost: integer({ min: 1, max: 500 }), pin: constantFrom<Pin>("in", "out", "none", "none") }),
    {
      maxLength: 12,
    },
  ).map((list) => list.map((entry, i) => ({ id: `l${i}`, ...entry })));
  assert(
    property(lines, integer({ min: 0, max: 2000 }), boolean(), (list, budget, fill) => {
      const cut = cutByBudget(list, { budget, fill });
      const pinned = list.filter(({ pin }) => pin === "in");
      const enough = pinned.reduce((sum, { cost }) => sum + cost, 0);
      if (!cut.ok)
        return cut.error.reason === "pins-exceed-budget" && cut.error.enough === enough && enough > budget;
      const { funded, spent, remaining, below } = cut.value;
      const kept = list.every(({ id, pin }) => pin === "none" || funded.includes(id) === (pin === "in"));
      const free = list.filter(({ pin }) => pin === "none").map(({ id }) => id);
      const prefix = fill || free.every((id, i) => funded.includes(id) === i < free.length - below.length);
      const maximal = list.every(({ id, cost }) => !below.includes(id) || !fill || cost > remaining);
      return spent + remaining === budget && remaining >= 0 && kept && prefix && maximal;
    }),
  );
});
