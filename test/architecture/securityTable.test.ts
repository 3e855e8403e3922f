import { existsSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readText } from "./sources";

const isThere = (path: string) => existsSync(join(import.meta.dirname, "../..", path));

/** Requirements of levels 1 and 2 in each section of the standard, as counted in the stored chapters; V17 apart. */
const ASKED = {
  ...{ "1.1": 2, "1.2": 9, "1.3": 11, "1.4": 3, "1.5": 2, "2.1": 3, "2.2": 3, "2.3": 4, "2.4": 1 },
  ...{ "3.2": 2, "3.3": 4, "3.4": 6, "3.5": 5, "3.7": 2, "4.1": 3, "4.2": 1, "5.1": 1, "5.2": 3 },
  ...{ "5.3": 2, "5.4": 3, "6.1": 3, "6.2": 11, "6.3": 3, "6.4": 4, "6.5": 5, "6.6": 3, "6.8": 3 },
  ...{ "7.1": 3, "7.2": 4, "7.3": 2, "7.4": 5, "7.5": 2, "7.6": 2, "8.1": 2, "8.2": 3, "8.3": 1, "8.4": 1 },
  ...{ "10.1": 2, "10.2": 2, "10.5": 5, "11.1": 2, "11.2": 3, "11.3": 3, "11.4": 3, "11.5": 1, "11.6": 1 },
  ...{ "12.1": 3, "12.2": 2, "12.3": 4, "13.1": 1, "13.2": 5, "13.3": 2, "13.4": 5, "14.1": 2, "14.2": 4 },
  ...{ "14.3": 3, "15.1": 3, "15.2": 3, "15.3": 7, "16.1": 1, "16.2": 5, "16.3": 4, "16.4": 3, "16.5": 3 },
};

const section = /^## Security, against OWASP[\s\S]*?(?=^## )/m.exec(readText("DEVELOPERS.md"))?.[0] ?? "";
const rows = [...section.matchAll(/^\| (\d[^|]*?) +\| ([^|]*?) +\| ([^|]*?) +\| (.*?) +\|$/gm)].map(
  ([, numbers = "", what = "", state = "", where = ""]) => ({ numbers, what, state, where }),
);

/** `1.2.6–1.2.8` or `1.4.1, 1.4.3` as single numbers, where all are of one section. */
function numbersOf(text: string): string[] {
  return text.split(", ").flatMap((piece) => {
    const [from = "", to = from] = piece.split("–");
    const of = from.slice(0, from.lastIndexOf("."));
    const [first, last] = [from, to].map((number) => Number(number.slice(number.lastIndexOf(".") + 1)));
    return Array.from({ length: (last ?? 0) - (first ?? 0) + 1 }, (_, i) => `${of}.${(first ?? 0) + i}`);
  });
}

test("the table of security has a state for each requirement, and no number twice", () => {
  expect(rows.length).toBeGreaterThan(150);
  expect(rows.filter(({ state }) => !["met", "not met", "n/a"].includes(state))).toEqual([]);
  const given = rows.flatMap(({ numbers }) => numbersOf(numbers));
  expect(new Set(given).size).toBe(given.length);
  const counted = Object.keys(ASKED).map((of) => [
    of,
    given.filter((one) => one.startsWith(`${of}.`)).length,
  ]);
  expect(Object.fromEntries(counted)).toEqual(ASKED);
});

test("each test the table of security names is there, and each file", () => {
  const tests = rows.flatMap(({ where }) =>
    [...where.matchAll(/(test\/[\w/.]+\.ts) › “([^”]*)”/g)].map(([, file = "", title = ""]) => ({
      file,
      title,
    })),
  );
  // Each sign is followed by a title, or the one above would not be looked for.
  expect(tests.length).toBe(section.match(/› “/g)?.length);
  expect(tests.length).toBeGreaterThan(60);
  expect(tests.filter(({ file, title }) => !isThere(file) || !readText(file).includes(title))).toEqual([]);
  const files = section.matchAll(
    /`((?:lib|app|deploy|public|test)\/[\w/.-]+|Dockerfile|docker-compose\.yml)`/g,
  );
  expect([...files].flatMap(([, file = ""]) => (isThere(file) ? [] : [file]))).toEqual([]);
});
