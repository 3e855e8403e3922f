import fc from "fast-check";
import { expect, test } from "vitest";
import { readRowList, writeRowList } from "@/lib/view/importRows";

test("a list written is the list read", () => {
  const known = Array.from({ length: 60 }, (_, i) => i + 2);
  fc.assert(
    fc.property(fc.uniqueArray(fc.constantFrom(...known)), (rows) => {
      expect(readRowList(writeRowList(rows), known)).toEqual([...rows].sort((a, b) => a - b));
    }),
  );
});

test("runs are written short", () => {
  expect(writeRowList([9, 3, 4, 5, 3])).toBe("3-5,9");
});

test("rows the file does not have are left out, so a huge range costs nothing", () => {
  expect(readRowList("4-9999999", [2, 3, 4, 6])).toEqual([4, 6]);
});

test.each(["all", "3-", "-3", "3--5", "1.5"])("“%s” is no list of rows", (text) => {
  expect(readRowList(text, [1, 2, 3])).toBeNull();
});
