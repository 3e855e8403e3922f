import { describe, expect, it } from "vitest";
import { readPartNumber, suggestLookAlikes } from "@/lib/intake/readPartNumber";

function partOf(cell: string | number) {
  const reading = readPartNumber(cell);
  if (reading.state !== "value") throw new Error(`${cell}: ${reading.state}`);
  return reading.value;
}

describe("spelling of part numbers", () => {
  it.each(["TM-HR-020-B1", "TMHR020B1", "tm hr 020 b1", "TM–HR–020–B1", "ＴＭ-HR-020-B1", "TM_HR_020_B1"])(
    "gives %s the key of the base and the whole",
    (text) => {
      expect(partOf(text)).toMatchObject({ key: "TMHR020", revision: "B1", fullKey: "TMHR020B1" });
    },
  );

  it("marks a split without separators as a guess", () => {
    expect(readPartNumber("TMHR020B1")).toMatchObject({ inferred: true, value: { split: "guess" } });
    expect(readPartNumber("TM-HR-020-B1")).toMatchObject({
      inferred: false,
      value: { split: "pattern", base: "TM-HR-020" },
    });
  });

  it("keeps letter O and digit 0 apart and only suggests", () => {
    const part = partOf("TM–HR–O20–B1");
    expect(part.key).toBe("TMHRO20");
    expect(suggestLookAlikes(part.key, ["TMHR020", "TMHR040", "TMHRO20"])).toEqual(["TMHR020"]);
  });
});

describe("revisions", () => {
  it.each([
    ["TM-HR-020-C3", "TM-HR-020", "C3", "pattern"],
    ["TM-HR-020/C", "TM-HR-020", "C", "marked"],
    ["TM-HR-020 ser. C", "TM-HR-020", "C", "marked"],
    ["TM-HR-020 (Rev 2)", "TM-HR-020", "2", "marked"],
    ["TM-HR-020", "TM-HR-020", null, "none"],
    ["100045871", "100045871", null, "none"],
    ["00123", "00123", null, "none"],
  ])("parts %s", (...[text, base, revision, split]) => {
    expect(partOf(text)).toMatchObject({ base, revision, split, raw: text });
  });
});

describe("what spreadsheets do to part numbers", () => {
  it.each(["4.5871E+08", "4,5871E+08", "4E+8", 4.5871, 1e21, -3])("refuses %s", (cell) => {
    expect(readPartNumber(cell).state).toBe("refused");
  });

  it("leaves a number alone that only looks like it", () => {
    expect(partOf("12E4").base).toBe("12E4");
  });

  it("warns of zeros lost where the cell is a number", () => {
    expect(readPartNumber(123)).toMatchObject({
      value: { base: "123" },
      inferred: true,
      caution: { problem: expect.stringContaining("zeros") },
    });
  });

  it("refuses signs alone", () => {
    expect(readPartNumber("///").state).toBe("refused");
  });
});
