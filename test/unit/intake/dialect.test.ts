import { describe, expect, it } from "vitest";
import { detectDialect } from "@/lib/intake/dialect";

describe("how a file writes numbers", () => {
  it("settles 1.234 by a value that tells", () => {
    const found = detectDialect([{ header: "Price", kind: "decimal", cells: ["1.234", "0,5", null, "12"] }]);
    expect(found.decimalMark).toMatchObject({ state: "certain", choice: "comma", ambiguous: 1, total: 3 });
    expect(found.proposal.decimalMark).toBe("comma");
    expect(found.ask).toEqual([]);
  });

  it("settles a column by the rest of the file", () => {
    const found = detectDialect([
      { header: "Price", kind: "decimal", cells: ["1.234", "2.400"] },
      { header: "Buffer", kind: "decimal", cells: ["1,5"] },
    ]);
    expect(found.proposal.decimalMark).toBe("comma");
    expect(found.ask).toEqual([]);
  });

  it("asks when nothing tells, with the share and examples", () => {
    const found = detectDialect([{ header: "Price", kind: "decimal", cells: ["2.400", "1.234", "7", "8"] }]);
    expect(found.decimalMark).toMatchObject({
      state: "ambiguous",
      choice: null,
      ambiguousShare: 0.5,
      examples: ["2.400", "1.234"],
    });
    expect(found.ask).toEqual(["decimalMark"]);
  });

  it("keeps two columns apart that are written differently", () => {
    const found = detectDialect([
      { header: "Price", kind: "decimal", cells: ["1,5", "2,5"] },
      { header: "Lead", kind: "decimal", cells: ["1.5", "2.5"] },
    ]);
    expect(found.decimalMark).toMatchObject({ state: "conflict", votes: { comma: 2, point: 2 } });
    expect(found.proposal).toMatchObject({
      decimalMark: "point",
      columns: { Price: { decimalMark: "comma" } },
    });
    expect(found.ask).toEqual([]);
  });

  it("asks when one column contradicts itself", () => {
    expect(detectDialect([{ header: "Price", kind: "decimal", cells: ["1,5", "2.5"] }]).ask).toEqual([
      "decimalMark",
    ]);
  });

  it("takes whole numbers and number cells as no evidence", () => {
    const found = detectDialect([{ header: "Qty", kind: "quantity", cells: ["4", 5, 1.5] }]);
    expect(found.decimalMark.state).toBe("plain");
    expect(found.ask).toEqual([]);
  });
});

describe("how a file writes dates", () => {
  const dates = (cells: string[]) => detectDialect([{ header: "Date", kind: "date", cells }]);

  it.each([
    [["03/04/2026", "13/04/2026"], "dayFirst"],
    [["03/04/2026", "04/13/2026"], "monthFirst"],
    [["03/04/2026 10:30", "8/25/2026 11:05"], "monthFirst"],
  ])("reads %j as %s", (cells, order) => {
    expect(dates(cells).proposal.dateOrder).toBe(order);
    expect(dates(cells).ask).toEqual([]);
  });

  it("asks when every date reads both ways, with the share", () => {
    const found = dates(["03/04/2026", "05/05/2026", "2026-04-03", "3.4.26"]);
    expect(found.dateOrder).toMatchObject({ state: "ambiguous", ambiguous: 1, ambiguousShare: 0.25 });
    expect(found.ask).toEqual(["dateOrder"]);
  });

  it("asks when dates contradict each other", () => {
    expect(dates(["13/04/2026", "04/13/2026"]).dateOrder.state).toBe("conflict");
    expect(dates(["13/04/2026", "04/13/2026"]).ask).toEqual(["dateOrder"]);
  });

  it("has nothing to ask of dotted and year-first dates", () => {
    expect(dates(["3.4.2026", "2026-04-03"])).toMatchObject({ dateOrder: { state: "plain" }, ask: [] });
  });
});
