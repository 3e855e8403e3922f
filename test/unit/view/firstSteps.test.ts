import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { canRank, EXAMPLE_FILES, type FirstHoldings, firstSteps, isExampleFile } from "@/lib/view/firstSteps";
import { LOADING_ORDER } from "@/lib/view/importPattern";

const nothing: FirstHoldings = { people: 1, parts: 0, lines: 0, axes: 0, lots: 0, events: 0, costed: 0 };
const open = (has: FirstHoldings) => firstSteps(has).flatMap(({ key, isDone }) => (isDone ? [] : [key]));

describe("the first steps", () => {
  it("are all open in an empty installation, and each is done by what it asks for", () => {
    expect(open(nothing)).toEqual(["people", "dates", "assets", "axes", "stock", "events", "cost"]);
    expect(open({ ...nothing, people: 2, parts: 3, lots: 1 })).toEqual(["assets", "axes", "events", "cost"]);
    expect(open({ people: 2, parts: 1, lines: 1, axes: 1, lots: 1, events: 1, costed: 1 })).toEqual([]);
  });

  it("ask about people only who may know them", () => {
    expect(open({ ...nothing, people: null })).not.toContain("people");
  });

  it("load the registers in the order the import asks for", () => {
    const order = LOADING_ORDER.map(({ key }) => key);
    const registers = firstSteps(nothing).flatMap(({ register }) => (register ? [register] : []));
    expect(registers).toEqual(order.slice(0, registers.length));
  });

  it("end in a ranking once parts, lines and axes are there", () => {
    expect(canRank(nothing)).toBe(false);
    expect(canRank({ ...nothing, parts: 1, lines: 1 })).toBe(false);
    expect(canRank({ ...nothing, parts: 1, lines: 1, axes: 1 })).toBe(true);
  });

  it("offer files that are there, one for each register, and no others", () => {
    for (const name of Object.keys(EXAMPLE_FILES))
      expect(existsSync(join("seed/registers", name)), name).toBe(true);
    const registers = firstSteps(nothing).flatMap(({ register }) => (register ? [register] : []));
    expect(Object.keys(EXAMPLE_FILES).map((name) => name.replace(/^\w+-(\w+)\.csv$/, "$1"))).toEqual(
      registers,
    );
    expect(isExampleFile("../../package.json")).toBe(false);
    expect(isExampleFile("toString")).toBe(false);
  });
});
