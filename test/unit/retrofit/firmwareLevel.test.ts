import { describe, expect, test } from "vitest";
import { compareFirmware, firmwareWord, meetsLevel, parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";

const level = parseFirmwareLevel;

describe("reading a level", () => {
  test.each([
    ["20", "exact", ["20"]],
    ["v20", "exact", ["20"]],
    ["FW 020", "exact", ["20"]],
    ["20.011", "exact", ["20", "011"]],
    ["20.11.3", "exact", ["20", "11", "3"]],
    [">=20", "atLeast", ["20"]],
    ["≥ 20.011", "atLeast", ["20", "011"]],
    ["20+", "atLeast", ["20"]],
  ])("%s", (raw, state, parts) => {
    expect(level(raw)).toEqual({ state, parts, patch: null, raw });
  });

  test("keeps a patch apart from the parts", () => {
    expect(level("20.11 SP 2")).toMatchObject({ parts: ["20", "11"], patch: { word: "sp", number: 2 } });
  });

  test.each([["latest"], ["<24"], ["20/21"], [""], ["n/a"]])("%j is unknown and keeps its text", (raw) => {
    expect(level(raw)).toEqual({ state: "unknown", raw });
  });

  test("nothing read is unknown too, and is not zero", () => {
    expect(level(null)).toEqual({ state: "unknown", raw: null });
    expect(firmwareWord(level(null))).toBe("not read");
    expect(firmwareWord(level("latest"))).toBe("not known (“latest”)");
  });
});

describe("which comes first", () => {
  test.each([
    ["20", "21", "before"],
    ["20.9", "20.10", "before"],
    ["v20.11", "20.11", "same"],
    ["20.11", "20.011", "after"],
    ["20.011", "20.11", "before"],
    ["20", "20.11", "undecidable"],
    ["20.11 SP 1", "20.11 SP 2", "before"],
    ["20.11 SP 1", "20.11 HF 1", "undecidable"],
    ["20.11", "20.11 SP 1", "undecidable"],
    [">=20", "19", "after"],
    [">=20", "20", "undecidable"],
    [">=20", "24", "undecidable"],
    ["19", ">=20", "before"],
    [">=20", ">=30", "undecidable"],
    ["latest", "1", "undecidable"],
  ])("%s and %s: %s", (a, b, order) => {
    expect(compareFirmware(level(a), level(b))).toBe(order);
  });
});

describe("meeting a lowest level (common practice, no source)", () => {
  test.each([
    ["21", "20", "yes"],
    ["20", "20", "yes"],
    ["19", "20", "no"],
    ["20", "21", "no"],
    ["24.011", "24", "yes"],
    ["24 SP 2", "24", "yes"],
    ["24", "24.011", "undecidable"],
    ["24.9", "24.011", "no"],
    ["24 SP 1", "24 SP 2", "no"],
    [">=25", "24", "yes"],
    [">=20", "24", "undecidable"],
    ["latest", "24", "undecidable"],
  ])("%s against %s: %s", (own, floor, answer) => {
    expect(meetsLevel(level(own), level(floor))).toBe(answer);
  });

  test("a lowest level that is itself a range decides nothing", () => {
    expect(meetsLevel(level("30"), level(">=24"))).toBe("undecidable");
  });
});
