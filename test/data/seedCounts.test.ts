import { expect, test } from "vitest";
import { shelfSteps } from "@/lib/schema/lotStep";
import { codeOfSite, company } from "@/test/data/seedLookup";

const countOf = (reference: string) => {
  const count = company.StockCount.find((one) => one.reference === reference);
  if (!count) throw new Error(`no ${reference}`);
  return { count, lines: company.CountLine.filter(({ countId }) => countId === count.id) };
};

test("Ostrowka posted one count last month and has one under way, with pieces nobody had on record", () => {
  expect(company.StockCount.map(({ siteId }) => codeOfSite.get(siteId))).toEqual(["OST", "OST"]);
  const { count: posted, lines: all } = countOf("Count 1");
  expect(posted.postedOn?.slice(0, 7)).toBe("2026-10");
  expect(all.every(({ found }) => found !== null)).toBe(true);
  const { count: open, lines } = countOf("Count 2");
  expect(open.postedOn).toBeNull();
  expect(lines.some(({ found }) => found === null)).toBe(true);
  expect(lines.filter(({ lotId }) => lotId === null)).toMatchObject([{ originUnknown: true, found: 1 }]);
});

test("a line's book is its lot as it stands, but for the piece the posted count found missing", () => {
  const lots = new Map(company.StockLot.map((lot) => [lot.id, lot]));
  const off = company.CountLine.filter(({ lotId, bookQuantity, bookState, bookPoweredOn }) => {
    const lot = lots.get(lotId ?? "");
    if (!lot) return false;
    return lot.quantity !== bookQuantity || lot.state !== bookState || lot.lastPoweredOn !== bookPoweredOn;
  });
  expect(off).toHaveLength(1);
  const steps = shelfSteps.parse(JSON.parse(countOf("Count 1").count.steps ?? ""));
  expect(steps.lots.map(({ lotId }) => lotId)).toEqual([off[0]?.lotId]);
  expect((steps.lots[0]?.before?.quantity ?? 0) - (steps.lots[0]?.after.quantity ?? 0)).toBe(1);
});

test("one drive went to its repairer again 41 days after it had come back", () => {
  const [first, second] = company.RepairOrder.filter(
    ({ serial }, _, all) => all.filter((other) => other.serial === serial).length > 1,
  );
  expect(first?.returnedOn && second?.sentOn && second.sentOn > first.returnedOn).toBe(true);
});
