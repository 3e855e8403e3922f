import { expect, test } from "vitest";
import { codeOfSite, company, familyOfPart, part } from "@/test/data/seedLookup";

function booked(familyName: string, keyOf: (lot: (typeof company.StockLot)[number]) => string | undefined) {
  const lots = company.StockLot.filter(({ partId }) => familyOfPart(partId) === familyName);
  const sums: Record<string, [number, number]> = {};
  for (const lot of lots) {
    const [book, usable] = sums[keyOf(lot) ?? ""] ?? [0, 0];
    const pieces = lot.quantity ?? 0;
    sums[keyOf(lot) ?? ""] = [book + pieces, usable + (lot.state === "usable" ? pieces : 0)];
  }
  return sums;
}
const bySite = ({ siteId }: { siteId: string }) => codeOfSite.get(siteId);
const bySize = ({ partId }: { partId: string }) => part.get(partId)?.number.slice(-3);

test("of 66 Heron R on the books 39 are usable, by site and size as told", () => {
  expect(booked("Heron R", () => "group")).toEqual({ group: [66, 39] });
  expect(booked("Heron R", bySite)).toEqual({
    VEL: [9, 6],
    OST: [41, 22],
    KAR: [3, 2],
    PIN: [8, 5],
    TAD: [2, 1],
    THO: [3, 3],
  });
  const usable = Object.entries(booked("Heron R", bySize)).map(([size, [, pieces]]) => [size, pieces]);
  expect(Object.fromEntries(usable)).toEqual({ "010": 20, "020": 10, "040": 6, "080": 3 });
});

test("of 21 Oak on the books 8 are usable, at three sites", () => {
  expect(booked("Oak", bySite)).toEqual({ VEL: [7, 2], OST: [9, 5], KAR: [1, 0], PIN: [3, 1], TAD: [1, 0] });
});

test("Ostrowka holds 62 % of the booked Heron R and 19 of its 41 cannot be used", () => {
  const lots = company.StockLot.filter(
    ({ siteId, partId }) => codeOfSite.get(siteId) === "OST" && familyOfPart(partId) === "Heron R",
  );
  const states: Record<string, number> = {};
  for (const { state, quantity } of lots) states[state] = (states[state] ?? 0) + (quantity ?? 0);
  expect(states).toEqual({ usable: 22, wrong_revision: 8, unproven: 6, on_hold: 3, reserved: 2 });
  const [book = 0] = booked("Heron R", () => "group").group ?? [];
  expect(lots.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0) / book).toBeCloseTo(0.62, 2);
});

test("of every other class 70 to 90 % of the booked pieces are usable", () => {
  const told = ["Heron R", "Oak"];
  const sums: Record<string, [number, number]> = {};
  for (const { partId, quantity, state } of company.StockLot) {
    if (told.includes(familyOfPart(partId) ?? "")) continue;
    const itemClass = part.get(partId)?.itemClass ?? "";
    const [book, usable] = sums[itemClass] ?? [0, 0];
    sums[itemClass] = [book + (quantity ?? 0), usable + (state === "usable" ? (quantity ?? 0) : 0)];
  }
  expect(Object.keys(sums)).toHaveLength(8);
  for (const [book, usable] of Object.values(sums)) {
    expect(usable / book).toBeGreaterThanOrEqual(0.7);
    expect(usable / book).toBeLessThanOrEqual(0.9);
  }
});

test("9 Heron R are out for repair, 2 of them due more than 60 days ago; 60 % of those that came back work", () => {
  const heron = company.RepairOrder.filter(({ partId }) => familyOfPart(partId) === "Heron R");
  const out = heron.filter(({ returnedOn }) => returnedOn === null);
  expect(out).toHaveLength(9);
  expect(out.filter(({ dueOn }) => dueOn !== null && dueOn < "2026-10-01")).toHaveLength(2);
  const back = heron.filter(({ returnedOn }) => returnedOn !== null);
  expect(back.filter(({ finding }) => finding !== "beyond repair").length / back.length).toBeCloseTo(0.6, 1);
});
