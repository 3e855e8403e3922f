import { array, assert, constantFrom, integer, oneof, property, tuple } from "fast-check";
import { expect, test } from "vitest";
import {
  compareFirmware,
  type LevelOrder,
  meetsLevel,
  parseFirmwareLevel,
} from "@/lib/retrofit/firmwareLevel";

const part = constantFrom("0", "1", "01", "9", "10", "11", "011", "0011", "110", "99", "099");
const written = tuple(
  constantFrom("", "v", ">="),
  integer({ min: 18, max: 21 }),
  array(part, { maxLength: 2 }),
  constantFrom("", " SP 1", " SP 2", " HF 1"),
);
const level = oneof(
  {
    weight: 12,
    arbitrary: written.map(([mark, first, rest, patch]) => `${mark}${[first, ...rest].join(".")}${patch}`),
  },
  { weight: 1, arbitrary: constantFrom("latest", "20/21", "<20") },
).map(parseFirmwareLevel);
const turned: Readonly<Record<LevelOrder, LevelOrder>> = {
  ...{ before: "after", after: "before", same: "same", undecidable: "undecidable" },
};
const RUNS = { numRuns: 20_000 };

test("the other way round is the other answer", () => {
  assert(
    property(level, level, (a, b) => compareFirmware(b, a) === turned[compareFirmware(a, b)]),
    RUNS,
  );
});

test("before and before is before, and what is the same is so to all others", () => {
  let decided = 0;
  assert(
    property(level, level, level, (a, b, c) => {
      const [ab, bc, ac] = [compareFirmware(a, b), compareFirmware(b, c), compareFirmware(a, c)];
      if (ab === "before" && bc === "before") {
        decided += 1;
        return ac === "before";
      }
      return ab !== "same" || ac === bc;
    }),
    RUNS,
  );
  expect(decided).toBeGreaterThan(300);
});

test("every exact pair of one depth and no patch is decided, and is the same only when the writing is", () => {
  const exact = tuple(integer({ min: 1, max: 40 }), part, part).map((parts) => parts.join("."));
  assert(
    property(exact, exact, (a, b) => {
      const order = compareFirmware(parseFirmwareLevel(a), parseFirmwareLevel(b));
      return order !== "undecidable" && (order === "same") === (a === b);
    }),
    RUNS,
  );
});

test("meeting a level goes on upwards: what comes after something that meets it meets it", () => {
  const floor = integer({ min: 18, max: 21 }).map((n) => parseFirmwareLevel(String(n)));
  assert(
    property(level, level, floor, (a, b, least) => {
      const after = compareFirmware(a, b) === "after";
      return !(after && meetsLevel(b, least) === "yes") || meetsLevel(a, least) === "yes";
    }),
    RUNS,
  );
});
