import { afterEach, describe, expect, test } from "vitest";
import { type Locale, READER } from "@/lib/kernel/locale";
import { readTypedNumber, typedNumber } from "@/lib/schema/typedNumber";

const world = globalThis as { [READER]?: () => Locale };
const readBy = (reader: Locale) => {
  world[READER] = () => reader;
};
const plain = (text: string) => {
  const read = readTypedNumber(text);
  return read.kind === "number" ? read.plain : read.kind;
};

afterEach(() => {
  delete world[READER];
});

describe("a number as typed", () => {
  test("what can only be one number is that for everybody", () => {
    for (const numbers of ["space-point", "space-comma", "point-comma"] as const) {
      readBy({ language: "en", numbers });
      const typed = ["12", "1,5", "1.5", "-0,25", "0.125", "0,125", "1.234.567", "1,234,567"];
      expect(typed.map(plain)).toEqual([
        ...["12", "1.5", "1.5", "-0.25", "0.125", "0.125", "1234567", "1234567"],
      ]);
      const grouped = ["1.234,5", "1,234.5", "1 234,5", "1\u202f234"];
      expect(grouped.map(plain)).toEqual(["1234.5", "1234.5", "1234.5", "1234"]);
    }
  });

  test("one mark before three digits is read by the marks of whoever typed it, and never guessed", () => {
    expect([plain("1.234"), plain("1,234")]).toEqual(["1.234", "ambiguous"]);
    readBy({ language: "de", numbers: "space-comma" });
    expect([plain("1.234"), plain("1,234")]).toEqual(["ambiguous", "1.234"]);
    readBy({ language: "de", numbers: "point-comma" });
    expect([plain("1.234"), plain("1,234")]).toEqual(["1234", "1.234"]);
  });

  test("what is no number stays for the next check; what is two is asked", () => {
    expect(["", "12a", "1,2,3", "--1", "1.23.456"].map(plain)).toEqual(Array(5).fill("other"));
    readBy({ language: "de", numbers: "space-comma" });
    expect(typedNumber.safeParse("12.500").error?.issues[0]?.message).toBe(
      "This can be read in two ways: write 12500 or 12,500.",
    );
  });
});
