import { expect, test } from "vitest";
import { csv } from "@/lib/view/csv";

test("quotes what would break a row, and keeps formulas text", () => {
  expect(
    csv([
      ["a", 'b "c", d', null],
      [1.5, "=1+1", -2],
    ]),
  ).toBe('\uFEFFa,"b ""c"", d",\r\n1.5,\'=1+1,-2\r\n');
});
