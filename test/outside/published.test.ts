import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { mtbfBounds } from "@/lib/reliability/mtbf";
import { powerLaw } from "@/lib/reliability/trend";
import { expectedBackorders, poissonAtMost } from "@/lib/spares/demand";
import { lastBuy } from "@/lib/spares/lastBuy";

/** Folder of published tables and data sets; they are not part of the project. */
const folder = process.env.EBBLINE_OUTSIDE_DATA;
let cases = 0;

function rowsOf(name: string): string[][] {
  const text = readFileSync(join(folder ?? "", name), "utf8");
  const lines = text.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
  return lines.map((line) => line.split(","));
}

function near(value: number | null, printed: string | undefined, tolerance: number): void {
  cases += 1;
  const wanted = Number(printed);
  expect(Math.abs((value ?? Number.NaN) - wanted), `${value} against ${printed}`).toBeLessThanOrEqual(
    tolerance,
  );
}

/** Half a unit in the last digit printed; shorter figures have lost trailing zeros, so at least `places`. */
const halfUnit = (printed: string, places: number) =>
  0.5000001 * 10 ** -Math.max(places, printed.split(".")[1]?.length ?? 0);

interface Cell {
  readonly failures: number;
  /** Column name, a letter and the confidence in per cent. */
  readonly name: string;
  readonly printed: string;
}

/** The printed cells of a table by failures and confidence; an empty cell does not exist. */
function cellsOf(name: string): Cell[] {
  const [header = [], ...rows] = rowsOf(name);
  return rows.flatMap((row) =>
    header.flatMap((column, i) => {
      const printed = row[i];
      return i === 0 || !printed ? [] : [{ failures: Number(row[0]), name: column, printed }];
    }),
  );
}

test("a figure is held to half a unit of its last digit", () => {
  expect(halfUnit("0.3177", 4)).toBeCloseTo(0.00005, 9);
  expect(halfUnit("19.5", 4)).toBeCloseTo(0.00005, 9);
  expect(halfUnit("0.847610", 4)).toBeCloseTo(0.0000005, 11);
});

if (folder) {
  describe("NIST/SEMATECH e-Handbook tables, recomputed from their formulas", () => {
    test("8.4.5.1 confidence factors of the MTBF", () => {
      for (const { failures, name, printed } of cellsOf("nist/mtbf_factors_8451.csv")) {
        const confidence = Number(name.slice(1)) / 100;
        const { lower, upper } = mtbfBounds({ time: Math.max(1, failures), failures, confidence, sides: 2 });
        near(name.startsWith("L") ? lower : upper, printed, halfUnit(printed, 4));
      }
    });
    test("8.3.1.2 test length factors: the one-sided lower bound turned round", () => {
      for (const { failures, name, printed } of cellsOf("nist/test_length_factors_8312.csv")) {
        const confidence = Number(name.slice(1)) / 100;
        const { lower } = mtbfBounds({ time: 1, failures, confidence, sides: 1 });
        near(1 / lower, printed, halfUnit(printed, 4));
      }
    });
  });

  test("Poisson spares, 40-digit arithmetic: cumulative chance, fill rate and expected backorders", () => {
    const [, ...rows] = rowsOf("poisson_spares_table.csv");
    for (const [mu, s, , cdf, fill, ebo] of rows) {
      const mean = Number(mu);
      const spares = Number(s);
      near(poissonAtMost(mean, spares), cdf, 1e-9);
      near(poissonAtMost(mean, spares - 1), fill, 1e-9);
      near(expectedBackorders(mean, spares), ebo, 1e-9 * Math.max(1, mean));
      const target = Number(cdf);
      if (target >= 0.999999 || target <= 1e-6) continue;
      const buy = lastBuy({
        ...{ a: mean * 1e12, b: 1e12, exposure: 1, usable: 0 },
        ...{ underCost: target - 1e-7, overCost: 1 - target + 1e-7 },
      });
      near(buy.quantity, s, 0);
    }
  });

  describe("published failure data (NIST Dataplot, public domain)", () => {
    const failed = (name: string) => {
      const rows = rowsOf(`repair/${name}`);
      const time = rows.reduce((sum, row) => sum + Number(row[0]), 0);
      return { time, failures: rows.filter((row) => Number(row[1]) === 1).length };
    };
    test.each([
      ["dataplot_EXPCEN.csv", 171.818, 5e-4],
      ["dataplot_EXPCEN2.csv", 155.917, 5e-4],
      ["dataplot_NELS28.csv", 28_703.3, 0.05],
    ])("mean life of %s", (name, printed, tolerance) => {
      near(mtbfBounds({ ...failed(name), confidence: 0.9, sides: 2 }).estimate, String(printed), tolerance);
    });
    test("mean intervals of 13 aircraft (Proschan, Technometrics 1963; plane numbers from memory)", () => {
      const rows = rowsOf("repair/proschan1963_aircond.csv").slice(1);
      const printed = [
        ...[
          ["7907", 82.17],
          ["7908", 95.7],
          ["7909", 83.52],
          ["7910", 121.27],
          ["7911", 130.86],
        ],
        ...[
          ["7912", 59.6],
          ["7913", 76.81],
          ["7914", 64.125],
          ["7915", 200],
          ["7916", 106.5],
        ],
        ...[
          ["7917", 311.5],
          ["8044", 108.083],
          ["8045", 82],
        ],
      ] as const;
      for (const [plane, mean] of printed) {
        const hours = rows.filter((row) => row[0] === plane).map((row) => Number(row[2]));
        const time = hours.reduce((sum, h) => sum + h, 0);
        const { estimate } = mtbfBounds({ time, failures: hours.length, confidence: 0.9, sides: 2 });
        near(estimate, String(mean), 0.005);
      }
    });
    test("power law of the failure-terminated TOB384 and TOB375", () => {
      const times = (name: string) => rowsOf(`repair/${name}`).map((row) => Number(row[0]));
      const late = times("dataplot_TOB375.csv");
      near(powerLaw(late, null).beta, "0.847610", 5e-7);
      const events = rowsOf("repair/dataplot_TOB384.csv").filter((row) => Number(row[1]) === 1);
      near(
        powerLaw(
          events.map((row) => Number(row[0])),
          650,
        ).beta,
        "0.649957",
        5e-7,
      );
    });
  });
}

afterAll(() => {
  const told = folder ? `${cases} outside cases` : "0 outside cases: EBBLINE_OUTSIDE_DATA is not set";
  process.stdout.write(`${told}\n`);
});
