import { describe, expect, it } from "vitest";
import { readDecimal } from "@/lib/intake/readDecimal";
import type { Reading } from "@/lib/intake/reading";
import { readInteger, readMeasure, readPercent } from "@/lib/intake/readMeasure";
import { readQuantity } from "@/lib/intake/readQuantity";
import { findField, REGISTERS } from "@/lib/intake/registers";

function outcomeOf<T>(reading: Reading<T>): T | "missing" | "refused" {
  return reading.state === "value" ? reading.value : reading.state;
}

function fieldOf(register: keyof typeof REGISTERS, key: string) {
  const field = findField(REGISTERS[register], key);
  if (field === null) throw new Error(`no field ${key}`);
  return field;
}

describe("numbers with decimal comma or point", () => {
  it.each([
    ["1.234,50", "comma", 1234.5],
    ["1 234,50", "comma", 1234.5],
    ["1'234.50", "point", 1234.5],
    ["1,234.50", "point", 1234.5],
    ["1,234,567", "point", 1234567],
    ["0,75", "comma", 0.75],
    ["1.234", "comma", 1234],
    ["1.234", "point", 1.234],
    ["−5", "point", -5],
    ["5-", "point", -5],
    [",5", "comma", 0.5],
  ] as const)("reads %s with decimal %s as %d", (text, mark, wanted) => {
    expect(outcomeOf(readDecimal(text, mark))).toBe(wanted);
  });

  it.each([
    ["1,234.50", "comma"],
    ["1.234,50", "point"],
    ["1.5", "comma"],
    ["0.125", "comma"],
    ["12,34,5", "point"],
    ["-5-", "point"],
    ["five", "point"],
    ["4.5871E+08", "point"],
  ] as const)("refuses %s with decimal %s", (text, mark) => {
    expect(readDecimal(text, mark).state).toBe("refused");
  });

  it("names the other mark when the number follows that one", () => {
    const reading = readDecimal("1.5", "comma");
    expect(reading).toMatchObject({ state: "refused", problem: expect.stringContaining("decimal point") });
  });
});

describe("units beside numbers", () => {
  const stop = fieldOf("events", "downtimeHours");
  it.each([
    ["3,5 h", 3.5],
    ["90 min", 1.5],
    ["2 days", 48],
  ])("reads a stop of %s as %d h", (text, wanted) => {
    expect(outcomeOf(readMeasure(text, stop, { decimalMark: "comma" }))).toBe(wanted);
  });

  it("refuses a unit the column does not know", () => {
    expect(readMeasure("3 lb-in", stop, { decimalMark: "point" }).state).toBe("refused");
  });

  it("flags a price of zero and refuses one below zero", () => {
    const price = fieldOf("lifecycle", "price");
    expect(readMeasure("0", price, { decimalMark: "point" })).toMatchObject({
      state: "value",
      value: 0,
      caution: { problem: "The amount is zero" },
    });
    expect(readMeasure("-3", price, { decimalMark: "point" }).state).toBe("refused");
  });

  it("takes the amount beside a currency sign and says so", () => {
    const reading = readMeasure("$2,400", fieldOf("lifecycle", "price"), { decimalMark: "point" });
    expect(reading).toMatchObject({ state: "value", value: 2400, inferred: true });
  });

  it("reads shares written three ways", () => {
    const memory = fieldOf("assets", "memoryPercent");
    expect(outcomeOf(readPercent("88 %", memory, "comma"))).toBe(88);
    expect(outcomeOf(readPercent(0.07, memory, "comma"))).toBe(7);
    expect(outcomeOf(readPercent("0,6", memory, "comma"))).toBe(60);
    expect(readPercent("0,6", memory, "comma")).toMatchObject({ inferred: true });
    expect(readPercent("101", memory, "comma").state).toBe("refused");
  });

  it("refuses a fraction of shifts and more than a week has", () => {
    const shifts = fieldOf("assets", "shiftsPerWeek");
    expect(readInteger("18", shifts, { decimalMark: "comma" })).toMatchObject({ value: 18 });
    expect(readInteger("17,5", shifts, { decimalMark: "comma" }).state).toBe("refused");
    expect(readInteger("22", shifts, { decimalMark: "comma" }).state).toBe("refused");
  });
});

describe("quantities", () => {
  it.each([
    ["2+1", 3, true],
    ["ca. 5", 5, true],
    ["około 5", 5, true],
    ["5 (2 def.)", 3, true],
    ["5 (box opened)", 5, true],
    ["5", 5, false],
    ["5 szt.", 5, false],
    [4, 4, false],
    ["0", 0, false],
  ])("reads %s as %d (inferred: %s)", (cell, wanted, inferred) => {
    expect(readQuantity(cell, "comma")).toMatchObject({ state: "value", value: wanted, inferred });
  });

  it("warns of the defective ones and asks for rows of their own", () => {
    expect(readQuantity("5 (2 def.)", "comma")).toMatchObject({
      caution: { remedy: expect.stringContaining("Split") },
    });
  });

  it.each(["some", "einige", "<5", "5-10", "2 sets"])("keeps %s as not known, not as zero", (text) => {
    expect(readQuantity(text, "comma")).toMatchObject({
      state: "missing",
      caution: { problem: expect.stringContaining(text) },
    });
  });

  it.each(["-3", "2,5"])("refuses %s", (text) => {
    expect(readQuantity(text, "comma").state).toBe("refused");
  });
});
