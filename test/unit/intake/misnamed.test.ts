import { expect, test } from "vitest";
import { misnamed } from "@/lib/intake/misnamed";

test("a file whose name and content agree is taken", () => {
  expect(misnamed("Shelf.XLSX", "workbook")).toBeNull();
  expect(misnamed("shelf.csv", "csv")).toBeNull();
  expect(misnamed("shelf.txt", "csv")).toBeNull();
});

test("a workbook named as text, and text named as a workbook, are refused with what to do", () => {
  expect(misnamed("shelf.csv", "workbook")).toMatch(/does not end in \.xlsx/);
  expect(misnamed("shelf.xlsx", "csv")).toMatch(/holds plain text/);
});
