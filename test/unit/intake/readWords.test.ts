import { describe, expect, it } from "vitest";
import { readBoolean, readChoice } from "@/lib/intake/readChoice";
import { readEmpty } from "@/lib/intake/readEmpty";
import { readFirmware } from "@/lib/intake/readFirmware";
import type { Reading } from "@/lib/intake/reading";
import { findField, REGISTERS } from "@/lib/intake/registers";

function outcomeOf<T>(reading: Reading<T>): T | "missing" | "refused" {
  return reading.state === "value" ? reading.value : reading.state;
}

function fieldOf(register: keyof typeof REGISTERS, key: string) {
  const field = findField(REGISTERS[register], key);
  if (field === null) throw new Error(`no field ${key}`);
  return field;
}

describe("firmware", () => {
  it.each([
    ["v20", 20, null, "exact"],
    ["20.011", 20, "011", "exact"],
    ["20.11", 20, "11", "exact"],
    ["FW 22", 22, null, "exact"],
    ["≥20", 20, null, "atLeast"],
    [">= 20.4", 20, "4", "atLeast"],
    ["20+", 20, null, "atLeast"],
    [22, 22, null, "exact"],
  ])("reads %s", (...[cell, level, minor, bound]) => {
    expect(outcomeOf(readFirmware(cell))).toMatchObject({ level, minor, bound });
  });

  it.each(["latest", "20/21", "<24", "aktuell"])("keeps %s as not known", (text) => {
    expect(readFirmware(text)).toMatchObject({
      state: "missing",
      caution: { problem: expect.stringContaining(text) },
    });
  });
});

describe("cells that hold nothing", () => {
  it.each(["", "  ", "-", "n/a", "XXX", "tbd", "brak", "k.A.", null])("takes %s as empty", (cell) => {
    expect(readEmpty(cell, "decimal")).toEqual({ state: "missing", caution: null });
  });

  it.each(["9999", "1900-01-01", "1900-01-01T00:00", "01.01.1900", "#N/A", "#REF!", "#BEZUG!"])(
    "takes %s as a stand-in and says so",
    (text) => {
      expect(readEmpty(text, "date")).toMatchObject({
        state: "missing",
        caution: { problem: expect.any(String) },
      });
    },
  );

  it("leaves 9999 alone where it is a code", () => {
    expect(readEmpty("9999", "code")).toBeNull();
  });

  it.each([
    ["=VLOOKUP(A1;B:B;1)", "code"],
    ["=cmd|' /C calc'!A0", "partNumber"],
    ["+SUM(A1)", "date"],
    ["=1+2", "decimal"],
  ] as const)("refuses the formula %s in a %s", (text, kind) => {
    expect(readEmpty(text, kind)).toMatchObject({ state: "refused" });
  });

  it("takes a formula in a remark as nothing and says so, for a remark is not worth the row", () => {
    expect(readEmpty("=cmd|' /C calc'!A0", "text")).toMatchObject({
      state: "missing",
      caution: { problem: expect.stringContaining("formula") },
    });
  });

  it.each(["=A1+B2-T3", "-U12", "+G1"])("leaves the reference designation %s alone", (text) => {
    expect(readEmpty(text, "code")).toBeNull();
  });
});

describe("words for classes, states, yes and no", () => {
  const classes = fieldOf("axes", "itemClass").choices;
  it.each(["Drive", "Servo amp", "Amplifier", "Inverter axis", "UMRICHTER", "napęd"])(
    "takes %s as a drive",
    (word) => {
      expect(outcomeOf(readChoice(word, classes))).toBe("drive");
    },
  );

  it("only suggests for a near miss", () => {
    expect(readChoice("Controler", classes)).toMatchObject({
      state: "refused",
      remedy: expect.stringContaining("“Controller”"),
    });
    expect(readChoice("bicycle", classes)).toMatchObject({
      state: "refused",
      remedy: expect.stringContaining("Use one of"),
    });
  });

  it("gives no two classes the same word", () => {
    const seen = new Map<string, string>();
    for (const choice of classes) {
      for (const word of [choice.value, choice.label, ...choice.synonyms]) {
        const other = seen.get(word.toLowerCase());
        expect(other === undefined || other === choice.value, word).toBe(true);
        seen.set(word.toLowerCase(), choice.value);
      }
    }
  });

  it.each([
    ["ja", true],
    ["tak", true],
    ["Sí", true],
    ["x", true],
    ["nein", false],
    [false, false],
  ])("reads %s as %s", (cell, wanted) => {
    expect(outcomeOf(readBoolean(cell))).toBe(wanted);
  });

  it("refuses maybe", () => {
    expect(readBoolean("maybe").state).toBe("refused");
  });
});
