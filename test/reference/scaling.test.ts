import { describe, expect, test } from "vitest";
import { countsPerUnit } from "../../lib/retrofit/scaling";

test("2500 lines read fourfold on a 10 mm screw give one micrometre a count (derived)", () => {
  expect(
    1 / countsPerUnit({ countsPerRev: 10000, motorRevs: 1, loadRevs: 1, unitsPerLoadRev: 10 }),
  ).toBeCloseTo(0.001, 15);
});
test("a 5 mm screw on 20 bits gives 4.76837158203125e-6 mm a count (derived)", () => {
  expect(1 / countsPerUnit({ countsPerRev: 2 ** 20, motorRevs: 1, loadRevs: 1, unitsPerLoadRev: 5 })).toBe(
    4.76837158203125e-6,
  );
});
test("a gear of ten to one gives ten times the counts", () => {
  const direct = { countsPerRev: 4096, motorRevs: 1, loadRevs: 1, unitsPerLoadRev: 360 };
  expect(countsPerUnit({ ...direct, motorRevs: 10 })).toBeCloseTo(10 * countsPerUnit(direct), 12);
});
test("a gear without load revolutions is refused by name", () => {
  expect(() => countsPerUnit({ countsPerRev: 1, motorRevs: 1, loadRevs: 0, unitsPerLoadRev: 1 })).toThrow(
    "loadRevs",
  );
});

describe("encoder arithmetic (derived)", () => {
  const ARC_SECONDS = 360 * 3600;
  test.each([
    [17, 131_072],
    [20, 1_048_576],
    [23, 8_388_608],
    [24, 16_777_216],
  ])("%d bits are %d counts a revolution", (bits, counts) => {
    const turn = { countsPerRev: 2 ** bits, motorRevs: 1, loadRevs: 1, unitsPerLoadRev: 1 };
    expect(countsPerUnit(turn)).toBe(counts);
  });
  test("20 bits read 1.2359619140625 seconds of arc a count, behind ten to one a tenth", () => {
    const seconds = { countsPerRev: 2 ** 20, motorRevs: 1, loadRevs: 1, unitsPerLoadRev: ARC_SECONDS };
    expect(1 / countsPerUnit(seconds)).toBeCloseTo(1.2359619140625, 13);
    expect(1 / countsPerUnit({ ...seconds, motorRevs: 10 })).toBeCloseTo(0.12359619140625, 13);
  });
});
