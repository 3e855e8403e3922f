import { afterAll, beforeAll, expect, test } from "vitest";
import { database } from "@/lib/data/client";
import { binaryNumbers } from "@/lib/data/group/binaryNumbers";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

let fresh: FreshDatabase;

beforeAll(async () => {
  fresh = await freshDatabase("binary_numbers");
});
afterAll(() => fresh.close());

async function through(numbers: readonly number[]): Promise<{ back: number[]; length: number }[]> {
  return database().$queryRaw`
    SELECT n."a" AS "back", cardinality(n."a") AS "length" FROM (SELECT ${binaryNumbers(numbers)}::float8[] AS "a") n`;
}

test("numbers come back from PostgreSQL to the last bit, in their order", async () => {
  const numbers = [0, -0, 1 / 3, -2.5e-300, Number.MAX_VALUE, Number.MIN_VALUE, 0.1 + 0.2, 1e15 + 0.5];
  const [found] = await through(numbers);
  expect(found?.length).toBe(numbers.length);
  expect(found?.back.every((value, i) => Object.is(value, numbers[i]))).toBe(true);
});

test("a piece of the list is that piece", async () => {
  const numbers = Array.from({ length: 12 }, (_, i) => i / 7);
  const rows = await database().$queryRaw<{ piece: number[] }[]>`
    SELECT n."a"[i * 4 + 1 : (i + 1) * 4] AS "piece"
    FROM (SELECT ${binaryNumbers(numbers)}::float8[] AS "a") n, generate_series(0, 2) i ORDER BY i`;
  expect(rows.flatMap(({ piece }) => piece)).toEqual(numbers);
});
