import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { daySpanAfter } from "@/lib/intake/notice/noticeDate";
import { readNotice } from "@/lib/intake/notice/readNotice";
import { addDays, addMonths, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import { orderBy } from "@/lib/lifecycle/orderBy";
import { apportion } from "@/lib/spares/apportion";
import { type ListedNotice, noticeRows } from "@/lib/view/noticeList";

const anyDay = fc.integer({ min: 0, max: 40_000 }).map((days): IsoDate => addDays("1990-01-01", days));
const weeks = fc.integer({ min: 0, max: 208 }).map((halves) => halves / 2);

describe("days of a notice", () => {
  it("keep the day of the month, or end with a shorter month, over any months and years", () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 1, max: 60 }), (from, count) => {
        const to = daySpanAfter(from, { count, unit: "month" });
        const [own, day] = [Number(from.slice(8)), Number(to.slice(8))];
        const whole = (text: string) => Number(text.slice(0, 4)) * 12 + Number(text.slice(5, 7));
        expect(whole(to) - whole(from)).toBe(count);
        if (day !== own) {
          expect(day).toBeLessThan(own);
          expect(addDays(to, 1).slice(8)).toBe("01");
        }
      }),
    );
  });

  it("make a year of twelve months, and two halves never later than it", () => {
    fc.assert(
      fc.property(anyDay, (from) => {
        const year = daySpanAfter(from, { count: 1, unit: "year" });
        expect(year).toBe(daySpanAfter(from, { count: 12, unit: "month" }));
        const half = daySpanAfter(from, { count: 6, unit: "month" });
        expect(daySpanAfter(half, { count: 6, unit: "month" }) <= year).toBe(true);
      }),
    );
  });

  it("put the order by so many days before the last order, and earlier the longer the house takes", () => {
    fc.assert(
      fc.property(anyDay, weeks, weeks, (last, quoteWeeks, approvalWeeks) => {
        const cycle = { quoteWeeks, approvalWeeks, purchaseWeeks: 1 };
        const by = orderBy(last, cycle);
        expect(daysBetween(by, last)).toBe(Math.ceil((quoteWeeks + approvalWeeks + 1) * 7));
        expect(orderBy(last, { ...cycle, purchaseWeeks: 2 }) < by).toBe(true);
      }),
    );
  });

  it("written in any of these ways are found again", () => {
    const MONTHS =
      "January February March April May June July August September October November December".split(" ");
    const written = (day: IsoDate) => {
      const [year = "", month = "", date = ""] = day.split("-");
      const name = MONTHS[Number(month) - 1] ?? "";
      return [
        day,
        `${date}.${month}.${year}`,
        `${Number(date)} ${name} ${year}`,
        `${name} ${Number(date)}, ${year}`,
      ];
    };
    const soon = fc.integer({ min: 0, max: 20_000 }).map((days): IsoDate => addDays("1995-01-01", days));
    fc.assert(
      fc.property(soon, fc.integer({ min: 0, max: 3 }), (day, shape) => {
        const { dates } = readNotice(`Last order: ${written(day)[shape]}`, []);
        expect(dates).toMatchObject([{ kind: "lastOrderOn", says: { readings: [{ on: day }] } }]);
      }),
    );
  });

  it("are read from any text without failing", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 300 }), (text) => void readNotice(text, [])),
    );
  });
});

describe("pieces over shelves", () => {
  it("are whole, sum up, and stay within one of their share", () => {
    const weights = fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), weights, (pieces, shares) => {
        const split = apportion(pieces, shares);
        expect(split.reduce((sum, count) => sum + count, 0)).toBe(pieces);
        const all = shares.reduce((sum, weight) => sum + weight, 0);
        if (all > 0)
          split.forEach((count, i) => {
            expect(Math.abs(count - (pieces * (shares[i] ?? 0)) / all)).toBeLessThan(1 + 1e-6);
          });
      }),
    );
    expect(() => apportion(-1, [1])).toThrow(RangeError);
    expect(() => apportion(1, [Number.NaN])).toThrow(RangeError);
  });
});

describe("the list of notices", () => {
  it("has what is open on top, least days left first, whatever order it comes in", () => {
    const notice = fc.record({ by: fc.option(anyDay), takenBack: fc.boolean(), decided: fc.boolean() });
    fc.assert(
      fc.property(fc.array(notice, { maxLength: 8 }), (given) => {
        const listed = given.map(
          ({ by, takenBack, decided }, i): ListedNotice => ({
            ...{
              id: String(i),
              maker: "",
              document: "",
              noticeOn: null,
              lastShipOn: null,
              repairUntilOn: null,
            },
            ...{
              lastOrderOn: by === null ? null : addMonths(by, 2),
              orderByOn: by,
              recordedOn: "2020-01-01",
            },
            ...{ evidence: "documented", takenBack, parts: [], units: 0 },
            families: [{ id: "f", name: "F", decisionId: decided ? "d" : null }],
          }),
        );
        const rows = noticeRows(listed, "2026-11-30");
        const open = rows.filter(({ state }) => state === "open");
        expect(rows.slice(0, open.length)).toEqual(open);
        const left = open.map(({ daysLeft }) => daysLeft ?? Number.POSITIVE_INFINITY);
        expect(left).toEqual([...left].sort((a, b) => a - b));
      }),
    );
  });
});
