import { describe, expect, it } from "vitest";
import { ambientUses } from "./determinism";
import { coreRank } from "./layers";
import { parseModule, readModules } from "./sources";

const core = readModules("lib").filter(({ path }) => coreRank(path) >= 0);

describe("the core", () => {
  it("gives the same answer on every machine and at every hour", () => {
    expect(core.length).toBeGreaterThan(10);
    expect(core.flatMap(ambientUses)).toEqual([]);
  });

  it.each([
    "Math.random();",
    "const roll = Math.random;",
    "Date.now();",
    "performance.now();",
    "crypto.randomUUID();",
    "new Date();",
    "Date();",
    "date.getFullYear();",
    "date.toLocaleDateString();",
    "count.toLocaleString(undefined, { style: 'percent' });",
    "a.localeCompare(b);",
    "new Intl.NumberFormat();",
  ])("is told of a planted %s", (text) => {
    expect(ambientUses(parseModule("lib/risk/planted.ts", text))).toHaveLength(1);
  });

  it.each(["new Date(0);", "date.getUTCFullYear();", "new Intl.NumberFormat('en-GB');", "Math.max(1, 2);"])(
    "is not told of %s",
    (text) => {
      expect(ambientUses(parseModule("lib/risk/planted.ts", text))).toEqual([]);
    },
  );
});
