import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { assumptionFields, assumptionValue, withAssumptions } from "@/lib/risk/assumptionFields";
import {
  boldAssumptions,
  carefulAssumptions,
  classAgesOnShelf,
  productSets,
} from "@/lib/risk/assumptionSets";
import { assumptionNotes, likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import { readAssumptions } from "@/lib/risk/readAssumptions";
import { smallGroup } from "../../support/smallGroup";

const problemsOf = (json: unknown) => {
  const read = readAssumptions(json);
  return read.ok ? [] : read.error;
};
const lossOf = (values: typeof likelyAssumptions, group = smallGroup) =>
  evaluate(group, values).stopLoss.mean;

describe("the product's own sets", () => {
  it.each(Object.values(productSets))("$kind can be read, and survives being stored", ({ values }) => {
    expect(readAssumptions(JSON.parse(JSON.stringify(values)))).toEqual({ ok: true, value: values });
  });

  // Stored results are found by set and version, so a changed value under an old version would show old figures.
  // A value that is new for every set needs no new version: stored sets are read with it, stored results by engine.
  it.each([
    ["careful", 1, "44d763ce29932ef9"],
    ["likely", 1, "c8d40494b7e42261"],
    ["bold", 1, "25768943013c9488"],
  ] as const)("%s still has the values of its version %i", (kind, version, print) => {
    const set = productSets[kind];
    const values = assumptionFields.map((field) => [field.path, assumptionValue(set.values, field)]);
    const text = JSON.stringify(values, (_, value) =>
      typeof value === "number" ? value.toPrecision(9) : value,
    );
    expect(set.version).toBe(version);
    expect(createHash("sha256").update(text).digest("hex").slice(0, 16), "raise the version").toBe(print);
  });

  it("order the loss of a group", () => {
    const group = { ...smallGroup, restorations: [] };
    const [careful, likely, bold] = [carefulAssumptions, likelyAssumptions, boldAssumptions].map((set) =>
      lossOf(set, group),
    );
    expect(careful).toBeGreaterThan(likely ?? Number.NaN);
    expect(likely).toBeGreaterThan(bold ?? Number.NaN);
  });

  it("order it too where many stops far longer than believed are recorded", () => {
    const stops = { itemClass: "drive" as const, stops: 40, sumLog: 40 * Math.log(200) };
    const sums = { ...stops, sumLogSquared: 40 * Math.log(200) ** 2, sumHours: 40 * 200 };
    const group = { ...smallGroup, restorations: [true, false].map((at) => ({ ...sums, spareAtHand: at })) };
    const shorter = {
      ...likelyAssumptions,
      classes: {
        ...likelyAssumptions.classes,
        drive: {
          ...likelyAssumptions.classes.drive,
          withSpare: { ...likelyAssumptions.classes.drive.withSpare, mu: Math.log(1.5) },
        },
      },
    };
    expect(lossOf(shorter, group)).toBeLessThan(lossOf(likelyAssumptions, group));
    const [careful, likely, bold] = [carefulAssumptions, likelyAssumptions, boldAssumptions].map((set) =>
      lossOf(set, group),
    );
    expect(careful).toBeGreaterThan(likely ?? Number.NaN);
    expect(likely).toBeGreaterThan(bold ?? Number.NaN);
  });

  it("differ in beliefs about the plant, not in how the score is made up", () => {
    for (const { values } of Object.values(productSets)) {
      expect(values.weights).toEqual(likelyAssumptions.weights);
      expect(values.horizonMonths).toBe(likelyAssumptions.horizonMonths);
    }
  });

  it("agree on which classes age on the shelf", () => {
    for (const { values } of Object.values(productSets))
      for (const itemClass of ["drive", "motor", "power_supply"] as const)
        expect(values.classes[itemClass].storage.length > 1).toBe(classAgesOnShelf(itemClass));
    expect(classAgesOnShelf("drive")).toBe(true);
    expect(classAgesOnShelf("motor")).toBe(false);
  });
});

describe("reading assumptions", () => {
  it("names the value out of its bounds, and the bounds", () => {
    const drive = { ...likelyAssumptions.classes.drive, removalRate: 40 };
    const classes = { ...likelyAssumptions.classes, drive };
    expect(problemsOf({ ...likelyAssumptions, classes })).toEqual([
      { path: "classes.drive.removalRate", message: "Write a number from 0.0001 to 5." },
    ]);
  });

  it("refuses what is not a number, and a name nobody knows", () => {
    expect(problemsOf({ ...likelyAssumptions, transferHours: "30" })[0]?.path).toBe("transferHours");
    expect(problemsOf({ ...likelyAssumptions, transferHours: Number.NaN })[0]?.path).toBe("transferHours");
    expect(problemsOf({ ...likelyAssumptions, transferHuors: 3 })).toHaveLength(1);
    expect(problemsOf(null)).toHaveLength(1);
  });

  it("refuses values that do not fit together", () => {
    const { weights, classes } = likelyAssumptions;
    expect(problemsOf({ ...likelyAssumptions, weights: { ...weights, stage: 0.4 } })).toEqual([
      { path: "weights", message: "The three weights must sum to 1." },
    ]);
    const storage = classes.drive.storage.map((band, i) => (i === 2 ? { ...band, works: 0.99 } : band));
    const rising = { ...classes, drive: { ...classes.drive, storage } };
    expect(problemsOf({ ...likelyAssumptions, classes: rising })[0]?.message).toContain("must not rise");
    const ladder = classes.drive.ladder.slice(0, -1);
    const open = { ...classes, drive: { ...classes.drive, ladder } };
    expect(problemsOf({ ...likelyAssumptions, classes: open })[0]?.message).toContain("must be certain");
  });

  it("puts the likely value where a set was written before there was one", () => {
    const { undatedOrderable: _, ...older } = carefulAssumptions;
    expect(readAssumptions(older)).toEqual({
      ok: true,
      value: { ...carefulAssumptions, undatedOrderable: likelyAssumptions.undatedOrderable },
    });
  });
});

describe("the list of values", () => {
  it("holds every number of the assumptions once", () => {
    const leaves = (inner: unknown, path: string): string[] => {
      if (typeof inner === "number") return [path];
      if (typeof inner !== "object" || inner === null) return [];
      return Object.entries(inner).flatMap(([name, value]) =>
        leaves(value, path === "" ? name : `${path}.${name}`),
      );
    };
    // The bounds of the storage bands belong to the class and are not a belief.
    const numbers = leaves(likelyAssumptions, "").filter((path) => !path.endsWith(".untilYears"));
    expect(assumptionFields.map(({ path }) => path).sort()).toEqual(numbers.sort());
    expect(new Set(assumptionFields.map(({ note }) => note))).toEqual(new Set(Object.keys(assumptionNotes)));
  });

  it("shows each value of each set within its bounds", () => {
    for (const { values } of Object.values(productSets))
      for (const field of assumptionFields) {
        const value = assumptionValue(values, field);
        expect(value >= field.range.least && value <= field.range.most, field.path).toBe(true);
      }
  });

  it("gives back what was put in, and leaves the rest and the former set alone", () => {
    for (const field of assumptionFields) {
      const before = assumptionValue(likelyAssumptions, field);
      const wanted = before === 0 ? 0.125 : before * 0.5;
      const after = withAssumptions(likelyAssumptions, { [field.path]: wanted });
      expect(assumptionValue(after, field), field.path).toBeCloseTo(wanted, 10);
      const others = assumptionFields.filter(
        (one) => assumptionValue(after, one) !== assumptionValue(likelyAssumptions, one),
      );
      expect(others.map(({ path }) => path)).toEqual([field.path]);
    }
    expect(likelyAssumptions.classes.drive.removalRate).toBe(0.04);
    expect(() => withAssumptions(likelyAssumptions, { nothing: 1 })).toThrow("path");
  });
});
