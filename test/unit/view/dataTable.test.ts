import fc from "fast-check";
import { expect, test } from "vitest";
import { type Column, choicesOf, wordOf } from "@/app/_ui/DataTable/column";
import { readAddress, writeAddress } from "@/app/_ui/DataTable/tableAddress";
import { nextSort, searchRows, visibility } from "@/app/_ui/DataTable/tableModel";

interface Part {
  readonly number: string;
  readonly site: string;
  readonly stage: number | null;
}

const columns: readonly Column<Part>[] = [
  { key: "number", header: "Part", value: (part) => part.number, filter: "text" },
  { key: "site", header: "Site", value: (part) => part.site, filter: "choice" },
  {
    key: "stage",
    header: "Stage",
    value: (part) => part.stage,
    word: (part) => (part.stage === null ? "Undated" : `Stage ${part.stage}`),
    hidden: true,
  },
];
const rows: readonly Part[] = [
  { number: "HR-020-B1", site: "VEL", stage: 10 },
  { number: "HR-010-B1", site: "OST", stage: 2 },
  { number: "EL-020-A2", site: "VEL", stage: null },
];
const none = { search: "", sort: null, choices: {}, columns: null };

test("what a person set on a table comes back from the address", () => {
  const word = fc.string({ minLength: 1, maxLength: 12 });
  const key = fc.stringMatching(/^[a-z][a-z0-9-]{0,8}$/);
  const state = fc.record({
    search: fc.string({ maxLength: 12 }),
    sort: fc.option(fc.record({ key, descending: fc.boolean() }), { nil: null }),
    choices: fc.dictionary(key, word, { noNullPrototype: true }),
    columns: fc.option(fc.array(key), { nil: null }),
  });
  fc.assert(
    fc.property(state, (set) => {
      const address = writeAddress("parts", "?asOf=2027-04-30", set);
      expect(readAddress("parts", new URLSearchParams(address))).toEqual(set);
      expect(new URLSearchParams(address).get("asOf")).toBe("2027-04-30");
    }),
    { seed: 20261130 },
  );
});

test("two tables of one page keep out of each other's way", () => {
  const first = writeAddress("lines", "", { ...none, search: "carton" });
  const both = writeAddress("parts", first, { ...none, search: "HR" });
  expect(readAddress("lines", new URLSearchParams(both)).search).toBe("carton");
  expect(readAddress("lines", new URLSearchParams(writeAddress("parts", both, none))).search).toBe("carton");
});

test("an address written by hand that means nothing sets nothing", () => {
  const odd = new URLSearchParams("parts.sort=number.sideways");
  expect(readAddress("parts", odd)).toEqual(none);
});

test("every word of a search must be found, in any searched column and in any case", () => {
  const numbers = (search: string) => searchRows(rows, columns, search).map((row) => row.number);
  expect(numbers("hr vel")).toEqual(["HR-020-B1"]);
  expect(numbers("020")).toEqual(["HR-020-B1", "EL-020-A2"]);
  expect(numbers("stage")).toEqual([]);
  expect(numbers("  ")).toHaveLength(3);
});

test("choices follow the sort value where it is a number, and unknown has a word", () => {
  const stage = columns[2] as Column<Part>;
  expect(choicesOf(stage, rows.slice(0, 2))).toEqual(["Stage 2", "Stage 10"]);
  expect(choicesOf(columns[1] as Column<Part>, rows)).toEqual(["OST", "VEL"]);
  expect(wordOf({ ...columns[0], value: () => null } as Column<Part>, rows[0] as Part)).toBe("not known");
});

test("the first column always shows; the others follow the person's choice, else the table's", () => {
  expect(visibility(columns, none)).toEqual({ number: true, site: true, stage: false });
  expect(visibility(columns, { ...none, columns: ["stage"] })).toEqual({
    number: true,
    site: false,
    stage: true,
  });
});

test("a header sorts the useful way first, then the other, then not at all", () => {
  const first = nextSort("loss", true, null);
  expect(first).toEqual({ key: "loss", descending: true });
  const second = nextSort("loss", true, first);
  expect(second).toEqual({ key: "loss", descending: false });
  expect(nextSort("loss", true, second)).toBeNull();
  expect(nextSort("name", false, second)).toEqual({ key: "name", descending: false });
});
