import { describe, expect, it, test } from "vitest";
import { needsSecondPerson, stateAfterCount, varianceOf } from "@/lib/spares/countedLine";
import { togetherInBin } from "@/lib/spares/togetherInBin";

const pieces = { found: 2, state: "usable", tested: null, originUnknown: false, holdReason: "" } as const;

describe("the state counted pieces are booked in", () => {
  it.each([
    [{}, "usable"],
    [{ tested: false }, "unproven"],
    [{ tested: true }, "usable"],
    [{ originUnknown: true }, "unproven"],
    [{ originUnknown: true, tested: true }, "usable"],
    [{ originUnknown: true, tested: false }, "unproven"],
    [{ state: "wrong_revision", tested: true }, "wrong_revision"],
    [{ holdReason: "wet box", tested: true }, "on_hold"],
    [{ state: "beyond_repair", originUnknown: true }, "beyond_repair"],
  ] as const)("of %o is %s", (given, state) => {
    expect(stateAfterCount({ ...pieces, ...given })).toBe(state);
  });
});

describe("a difference", () => {
  it("is found less book, in pieces and money", () => {
    expect(varianceOf({ found: 3, book: 5, price: 1650 })).toEqual({ pieces: -2, euro: -3300 });
    expect(varianceOf({ found: 4, book: 0, price: 10 })).toEqual({ pieces: 4, euro: 40 });
  });

  it("of a lot nobody had counted is not known, and none where the number is the same", () => {
    expect(varianceOf({ found: 3, book: null, price: 1650 })).toEqual({ pieces: null, euro: null });
    expect(varianceOf({ found: 3, book: 3, price: null })).toEqual({ pieces: 0, euro: 0 });
    expect(varianceOf({ found: 3, book: 2, price: null })).toEqual({ pieces: 1, euro: null });
  });

  it("of pieces that are not whole is refused", () => {
    expect(() => varianceOf({ found: 0.5, book: 1, price: 1 })).toThrow("found must be a whole number");
  });
});

describe("a second person", () => {
  const of = (euro: number | null) => ({ pieces: 1, euro });
  it("is needed above the limit, the signs left out, and for what cannot be valued", () => {
    expect(needsSecondPerson([of(600), of(-600)], 1000)).toBe(true);
    expect(needsSecondPerson([of(600), of(-400)], 1000)).toBe(false);
    expect(needsSecondPerson([of(null)], 1e9)).toBe(true);
    expect(needsSecondPerson([], 0)).toBe(false);
  });
});

test("pieces put together have the earliest day of power-up, and none when it is unknown of some", () => {
  const lot = (quantity: number | null, lastPoweredOn: string | null) => ({ quantity, lastPoweredOn });
  expect(togetherInBin(lot(2, "2026-01-01"), lot(1, "2024-05-05"))).toEqual(lot(3, "2024-05-05"));
  expect(togetherInBin(lot(2, "2023-01-01"), lot(1, "2024-05-05"))).toEqual(lot(3, "2023-01-01"));
  expect(togetherInBin(lot(2, "2026-01-01"), lot(1, null))).toEqual(lot(3, null));
  expect(togetherInBin(lot(0, null), lot(1, "2024-05-05"))).toEqual(lot(1, "2024-05-05"));
  expect(togetherInBin(lot(2, "2026-01-01"), lot(0, null))).toEqual(lot(2, "2026-01-01"));
  expect(togetherInBin(lot(null, "2026-01-01"), lot(1, "2026-02-01")).quantity).toBeNull();
});
