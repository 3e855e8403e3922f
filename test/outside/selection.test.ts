import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { relaxSelection, type Selection, solveSelection } from "@/lib/portfolio/solve";

/** Folder of published problems; they are not part of the project. */
const folder = process.env.EBBLINE_OUTSIDE_DATA;
let cases = 0;

function numbersOf(name: string): number[] {
  const text = readFileSync(join(folder ?? "", "knapsack", name), "utf8");
  return text.trim().split(/\s+/).map(Number);
}

interface Published extends Selection {
  readonly optimum: number;
}

/** Takes one problem off the front: items, limits, optimum, values, weights by limit, limits. */
function takeProblem(numbers: number[]): Published {
  const [items = 0, rows = 0, optimum = Number.NaN] = numbers.splice(0, 3);
  const values = numbers.splice(0, items);
  const costs = Array.from({ length: rows }, () => numbers.splice(0, items));
  return { optimum, values, costs, limits: numbers.splice(0, rows) };
}

/** The problems of the collection by name: limits and items, values, limits, weights by limit, optimum. */
function collection(): ReadonlyMap<string, Published> {
  const text = readFileSync(join(folder ?? "", "knapsack", "mknap2.txt"), "utf8");
  const parts = text.split(/^ *problem (\w+)\.DAT$/m).slice(1);
  const problems = parts.flatMap((name, i): [string, Published][] => {
    if (i % 2 === 1) return [];
    const numbers = (parts[i + 1] ?? "").replaceAll("+", " ").trim().split(/\s+/).map(Number);
    const [rows = 0, items = 0] = numbers.splice(0, 2);
    const values = numbers.splice(0, items);
    const limits = numbers.splice(0, rows);
    const costs = Array.from({ length: rows }, () => numbers.splice(0, items));
    return [[name, { optimum: numbers[0] ?? Number.NaN, values, costs, limits }]];
  });
  return new Map(problems);
}

async function expectOptimum(problem: Published, printed: number): Promise<void> {
  cases += 1;
  const result = await solveSelection(problem);
  expect(result.status).toBe("optimal");
  expect(result.objective).toBeCloseTo(printed, 6);
  for (const [row, limit] of problem.limits.entries()) {
    const used = result.chosen.reduce((sum, item) => sum + (problem.costs[row]?.[item] ?? 0), 0);
    expect(used).toBeLessThanOrEqual(limit + 1e-9);
  }
  expect((await relaxSelection(problem))?.objective).toBeGreaterThanOrEqual(printed - 1e-6);
}

test("a problem is taken off the front of the numbers, and the rest stays", () => {
  const numbers = [2, 1, 9, 5, 4, 1, 2, 3, 7];
  expect(takeProblem(numbers)).toEqual({ optimum: 9, values: [5, 4], costs: [[1, 2]], limits: [3] });
  expect(numbers).toEqual([7]);
});

if (folder) {
  describe("0/1 selections under several limits, optima as published (OR-Library copies)", () => {
    test.each([
      ["weing1", 141_278],
      ["weing2", 130_883],
      ["weing3", 95_677],
      ["weing4", 119_337],
      ["weing5", 98_796],
      ["weing6", 130_623],
      ["weing7", 1_095_445],
      ["weing8", 624_319],
    ])("Weingartner and Ness, %s: %d", async (name, optimum) => {
      await expectOptimum(takeProblem(numbersOf(`sac94/weing/${name}.dat`)), optimum);
    });

    test.each([
      ["pet2", 87_061],
      ["pet3", 4015],
      ["pet4", 6120],
      ["pet5", 12_400],
      ["pet6", 10_618],
      ["pet7", 16_537],
    ])("Petersen, %s: %d", async (name, optimum) => {
      await expectOptimum(takeProblem(numbersOf(`sac94/pet/${name}.dat`)), optimum);
    });

    test("the collection of 48 from six papers, each to the optimum printed with it", async () => {
      const problems = collection();
      expect(problems.size).toBe(48);
      for (const problem of problems.values()) await expectOptimum(problem, problem.optimum);
    }, 240_000);

    test("Petersen, seven problems of ten and five periods", async () => {
      const numbers = numbersOf("mknap1.txt");
      expect(numbers.shift()).toBe(7);
      for (const optimum of [3800, 8706.1, 4015, 6120, 12_400, 10_618, 16_537])
        await expectOptimum(takeProblem(numbers), optimum);
      expect(numbers).toEqual([]);
    });
  });
}

afterAll(() => {
  const told = folder ? `${cases} outside cases` : "0 outside cases: EBBLINE_OUTSIDE_DATA is not set";
  process.stdout.write(`${told}\n`);
});
