import fc from "fast-check";
import { expect, test } from "vitest";
import { readRowList, writeRowList } from "@/lib/view/importRows";

test("a list written is the list read", () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 1_048_576 })), (rows) => {
      expect(readRowList(writeRowList(rows))).toEqual([...rows].sort((a, b) => a - b));
    }),
  );
});

test("runs are written short", () => {
  expect(writeRowList([9, 3, 4, 5, 3])).toBe("3-5,9");
});

test("runs that overlap give each row once, whatever parts them", () => {
  expect(readRowList("4–6; 5-7 2")).toEqual([2, 4, 5, 6, 7]);
});

test("rows no sheet has are cut off", () => {
  expect(readRowList("1048575-999999999")).toEqual([1_048_575, 1_048_576]);
});

test.each(["all", "3-", "-3", "3--5", "1.5"])("“%s” is no list of rows", (text) => {
  expect(readRowList(text)).toBeNull();
});
