import { describe, expect, test } from "vitest";
import { type StockLot, type StorageRules, usableCount, worksAfterStorage } from "@/lib/spares/usableCount";

const rules: StorageRules = {
  asOf: "2026-11-30",
  bands: [
    { untilYears: 1, works: 0.97 },
    { untilYears: 3, works: 0.93 },
    { untilYears: 6, works: 0.85 },
    { untilYears: null, works: 0.7 },
  ],
  unknownWorks: 0.7,
  unprovenWorks: 0,
  removedUntestedWorks: 0.5,
};
const lot = (state: StockLot["state"], quantity: number | null, siteId = "OST"): StockLot => ({
  siteId,
  state,
  quantity,
  lastPoweredOn: "2026-06-01",
});

test.each([
  ["2026-11-30", 0.97],
  ["2025-12-01", 0.97],
  ["2025-11-29", 0.93],
  ["2023-11-30", 0.85],
  ["2016-01-01", 0.7],
])("last powered on %s it works with chance %d", (day, works) => {
  expect(worksAfterStorage(day, rules)).toBe(works);
});

test("a power-up after the day looked at was not known on it", () => {
  expect(worksAfterStorage("2026-12-01", rules)).toBe(rules.unknownWorks);
});

describe("books against use, the hoarder's shelf", () => {
  const shelf = [
    lot("usable", 22),
    lot("wrong_revision", 8),
    lot("unproven", 6),
    lot("on_hold", 3),
    lot("reserved", 2),
    lot("usable", 4, "VEL"),
  ];
  const count = usableCount(shelf, rules);
  test("41 on the books at one site are 22 that may work", () => {
    expect(count.bySite.OST?.book).toBe(41);
    expect(count.bySite.OST?.usable).toBeCloseTo(22 * 0.97, 12);
    expect(count.book).toBe(45);
    expect(count.usable).toBeCloseTo(26 * 0.97, 12);
  });
  test("every piece off the books has its reason, and nothing is lost between", () => {
    const off = Object.fromEntries(count.deductions.map(({ reason, pieces }) => [reason, pieces]));
    expect(off).toMatchObject({ wrong_revision: 8, unproven: 6, on_hold: 3, reserved: 2 });
    expect(off.storage).toBeCloseTo(26 * 0.03, 12);
    const sum = count.deductions.reduce((total, { pieces }) => total + pieces, 0);
    expect((count.book ?? 0) - sum).toBeCloseTo(count.usable, 12);
  });
  test("pieces alike in their chance stand together", () => {
    expect(count.pieces).toEqual([{ count: 26, works: 0.97 }]);
  });
});

test("a lot nobody counted is not zero pieces but an unknown", () => {
  expect(usableCount([lot("usable", null)], rules)).toMatchObject({
    book: null,
    usable: 0,
    lotsNotCounted: 1,
  });
  expect(usableCount([lot("usable", null), lot("usable", 2)], rules).book).toBe(2);
  expect(usableCount([], rules).book).toBe(0);
});
test("an unknown last power-up is counted low and reported", () => {
  const count = usableCount([{ ...lot("usable", 3), lastPoweredOn: null }], rules);
  expect(count.usable).toBeCloseTo(2.1, 12);
  expect(count.piecesOfUnknownStorage).toBe(3);
});
test("removed and untested pieces count by the stated share, beyond repair never", () => {
  expect(usableCount([lot("removed_untested", 8)], rules).usable).toBe(4);
  expect(usableCount([lot("beyond_repair", 8)], rules).usable).toBe(0);
});
test("a negative or broken count is refused", () => {
  expect(() => usableCount([lot("usable", -1)], rules)).toThrow("quantity");
  expect(() => usableCount([lot("usable", 1.5)], rules)).toThrow("quantity");
});
