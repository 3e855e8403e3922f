import { describe, expect, it, test } from "vitest";
import { type RepairTrip, repairRecords, shareOf, soonAgain } from "@/lib/spares/repairRecord";

let next = 0;
const trip = (given: Partial<RepairTrip>): RepairTrip => ({
  ...{ id: `t${next++}`, partId: "oak", serial: null, repairer: "Bench", sentOn: "2026-01-01" },
  ...{ returnedOn: "2026-02-01", finding: "repaired" },
  ...given,
});

describe("a share that was counted", () => {
  it("has Wilson's range", () => {
    // Wilson's formula written another way: (p + z²/2n ± z √(p(1-p)/n + z²/4n²)) / (1 + z²/n), 8 of 10, z = 1.644854.
    const [p, n, z] = [0.8, 10, 1.6448536269514722];
    const half = z * Math.sqrt((p * (1 - p)) / n + z ** 2 / (4 * n ** 2));
    const at = (sign: number) => (p + z ** 2 / (2 * n) + sign * half) / (1 + z ** 2 / n);
    const share = shareOf(8, 10);
    expect(share.mean).toBe(0.8);
    expect(share.low).toBeCloseTo(at(-1), 12);
    expect(share.high).toBeCloseTo(at(1), 12);
  });

  it("of none of n begins at 0, of all ends at 1, and is never a point", () => {
    expect(shareOf(0, 4).low).toBe(0);
    expect(shareOf(0, 4).high).toBeGreaterThan(0.3);
    expect(shareOf(4, 4).high).toBe(1);
    expect(shareOf(4, 4).low).toBeLessThan(0.7);
  });

  it.each([
    [1, 0],
    [3, 2],
    [-1, 2],
    [0.5, 2],
  ])("of %s in %s is refused", (k, n) => {
    expect(() => shareOf(k, n)).toThrow(RangeError);
  });
});

describe("a unit sent again", () => {
  const unit = { serial: "S1" };
  const first = trip({ ...unit, sentOn: "2026-01-01", returnedOn: "2026-02-01" });

  it("is found by part and serial, within the days asked for", () => {
    const second = trip({ ...unit, sentOn: "2026-03-03", returnedOn: null, finding: null });
    expect(soonAgain([second, first], 30)).toEqual(new Map([[second.id, 30]]));
    expect(soonAgain([second, first], 29).size).toBe(0);
    expect(soonAgain([{ ...second, partId: "elm" }, first], 30).size).toBe(0);
    expect(
      soonAgain(
        [
          { ...second, serial: null },
          { ...first, serial: null },
        ],
        999,
      ).size,
    ).toBe(0);
  });

  it("does not count when it came back beyond repair, and is compared with the trip just before", () => {
    const scrap = trip({ ...unit, sentOn: "2026-02-10", returnedOn: "2026-02-20", finding: "beyond repair" });
    const third = trip({ ...unit, sentOn: "2026-03-01", returnedOn: null, finding: null });
    expect([...soonAgain([first, scrap, third], 90).keys()]).toEqual([scrap.id]);
  });

  it("counts against whoever repaired it before", () => {
    const second = trip({
      ...unit,
      repairer: "Other",
      sentOn: "2026-03-03",
      returnedOn: null,
      finding: null,
    });
    const again = repairRecords([first, second], 90).map(({ repairer, again: n, out }) => [repairer, n, out]);
    expect(again).toEqual([
      ["Bench", 1, 0],
      ["Other", 0, 1],
    ]);
  });
});

test("a record counts usable and no fault found of those with a finding, and days of those back", () => {
  const [record] = repairRecords(
    [
      trip({ returnedOn: "2026-01-11" }),
      trip({ returnedOn: "2026-01-31", finding: "no fault found" }),
      trip({ returnedOn: "2026-01-21", finding: "beyond repair" }),
      trip({ returnedOn: "2026-01-21", finding: null }),
      trip({ returnedOn: null, finding: null }),
    ],
    90,
  );
  expect(record).toMatchObject({ out: 1, back: 4, days: { median: 20, shortest: 10, longest: 30 } });
  expect(record?.usable?.mean).toBeCloseTo(2 / 3, 12);
  expect(record?.noFaultFound?.mean).toBeCloseTo(1 / 3, 12);
  expect(repairRecords([trip({ returnedOn: null, finding: null })], 90)[0]).toMatchObject({
    ...{ usable: null, noFaultFound: null, days: null },
  });
});
