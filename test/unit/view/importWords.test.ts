import { describe, expect, test } from "vitest";
import { countThings, listChanges, type WrittenThing } from "@/lib/view/importChanges";
import { meaningOf } from "@/lib/view/importQuestion";
import { cellWord, storedFieldWord, storedWord, valueWord } from "@/lib/view/importWords";

describe("values in words", () => {
  test.each([
    [null, "not known"],
    ["", "not known"],
    [0, "0"],
    [6450.5, "6\u202f450.5"],
    [true, "yes"],
    ["2026-03-04", "4 Mar 2026"],
    ["2026-03-04T14:20", "4 Mar 2026, 14:20"],
    ["WO-1", "WO-1"],
  ])("%s reads “%s”", (value, word) => expect(valueWord(value)).toBe(word));

  test("a year is no quantity, read or stored", () => {
    expect(cellWord(2009, "year")).toBe("2009");
    expect(storedWord("inServiceYear", 2009)).toBe("2009");
    expect(storedWord("quantity", 2009)).toBe("2\u202f009");
  });

  test("a part number shows its revision, a firmware whether it is only a floor", () => {
    const part = {
      base: "TM-HR-020",
      revision: "B1",
      raw: "",
      key: "",
      fullKey: "",
      split: "pattern",
    } as const;
    expect(cellWord(part, "partNumber")).toBe("TM-HR-020 rev. B1");
    expect(cellWord({ ...part, revision: null }, "partNumber")).toBe("TM-HR-020");
    expect(cellWord({ level: 20, minor: "011", bound: "atLeast", raw: "" }, "firmware")).toBe(
      "at least 20.011",
    );
  });

  test("a stored field's name is no code word", () => {
    expect(storedFieldWord("costPerHour")).toBe("cost per hour");
    expect(storedFieldWord("partId")).toBe("part");
  });
});

describe("what a value may mean", () => {
  test("a date either way", () => {
    expect(meaningOf("03/04/2026", "dayFirst")).toBe("3 Apr 2026");
    expect(meaningOf("03/04/2026", "monthFirst")).toBe("4 Mar 2026");
    expect(meaningOf("03/04/2026 14:20", "monthFirst")).toBe("4 Mar 2026");
    expect(meaningOf("13/04/2026", "monthFirst")).toBeNull();
  });

  test("a number either way", () => {
    expect(meaningOf("1,234", "comma")).toBe("1.234");
    expect(meaningOf("1,234", "point")).toBe("1\u202f234");
  });
});

describe("what a file writes", () => {
  const thing = (more: Partial<WrittenThing>): WrittenThing => ({
    entity: "Line",
    rowNumber: 2,
    name: "OST-01",
    kind: "same",
    before: null,
    after: {},
    ...more,
  });

  test("is counted by kind of thing", () => {
    const things = [thing({}), thing({ kind: "add" }), thing({ kind: "change" }), thing({ entity: "Site" })];
    expect(countThings(things)).toEqual([
      { entity: "Line", label: "lines", added: 1, changed: 1, unchanged: 1 },
      { entity: "Site", label: "sites", added: 0, changed: 0, unchanged: 1 },
    ]);
  });

  test("is told from before to after by row, with names for ids and nothing for what is new", () => {
    const things = [
      thing({ rowNumber: 9, kind: "change", before: { partId: "p1" }, after: { partId: "p2" } }),
      thing({ rowNumber: 3, kind: "change", before: { costPerHour: null }, after: { costPerHour: 5 } }),
      thing({ rowNumber: 1, kind: "add", after: { code: "OST-02" } }),
    ];
    const names: Readonly<Record<string, string>> = { p1: "Heron 1" };
    const told = listChanges(things, (id) => names[id]);
    expect(told.map(({ rowNumber, field, before, after }) => [rowNumber, field, before, after])).toEqual([
      [3, "cost per hour", "not known", "5"],
      [9, "part", "Heron 1", "p2"],
    ]);
  });
});
