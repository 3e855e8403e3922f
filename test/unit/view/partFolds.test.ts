import { expect, test } from "vitest";
import { partFolds } from "@/lib/view/partFolds";

const site = { siteCode: "VEL", siteName: "Velmark", deductions: [] };
const elsewhere = { installed: 1, book: 1, usable: 1, repairsOut: 0, repairsOverdue: 0 };

test("stock not counted is not read as none", () => {
  const stock = [
    { ...site, book: 4, usable: 2.5 },
    { ...site, book: null, usable: 0 },
  ];
  expect(partFolds.book({ stock, elsewhere: null })).toBe("2.5 usable of 4 on the books, some not counted");
  expect(partFolds.book({ stock: [], elsewhere: null })).toBe("no stock recorded");
  expect(partFolds.book({ stock: [], elsewhere })).toBe("no stock at your sites");
});

test("sums of some sites say so", () => {
  const repair = {
    id: "r",
    siteCode: "VEL",
    reference: "R",
    serial: null,
    sentOn: "2026-01-01",
    dueOn: null,
  };
  const repairs = [
    { ...repair, daysOverdue: 60 },
    { ...repair, daysOverdue: 0 },
    { ...repair, daysOverdue: null },
  ];
  expect(partFolds.repairs({ repairs, elsewhere })).toBe("3 out, 1 overdue, at your sites");
});

test("a part without family or successor says so", () => {
  const alone = { maker: "Tarnholt Motion", family: null, successors: [] };
  expect(partFolds.identity(alone)).toBe("Tarnholt Motion, no family; no successor recorded");
});
