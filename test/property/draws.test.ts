import {
  array,
  assert,
  constantFrom,
  double,
  integer,
  property,
  record,
  shuffledSubarray,
  tuple,
} from "fast-check";
import { describe, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { drawRanks } from "@/lib/risk/draws/drawRanks";
import { placeTable } from "@/lib/risk/draws/placeTable";
import type { GroupInput } from "@/lib/risk/evaluation";
import { line, smallGroup } from "../support/smallGroup";

const runs = { numRuns: 25 };
const options = { draws: 60, seed: 7 };

const group = array(
  record({
    costPerHour: double({ min: 100, max: 5000, noNaN: true }),
    costEvidence: constantFrom("measured", "documented", "inferred", "assumed"),
    bufferHours: double({ min: 0, max: 4, noNaN: true }),
    units: integer({ min: 1, max: 50 }),
    poolId: constantFrom("oak", "heron", "unidentified:drive"),
    siteId: constantFrom("VEL", "TAD"),
  }),
  { minLength: 2, maxLength: 9 },
).map(
  (rows): GroupInput => ({
    ...smallGroup,
    lines: rows.map(({ units: _, poolId: __, siteId, ...more }, i) => line(`L-${i}`, siteId, more)),
    installed: rows.map(({ units, poolId }, i) => ({ lineId: `L-${i}`, poolId, units })),
  }),
);

const byId = (places: ReturnType<typeof drawRanks>) =>
  JSON.stringify([...places].sort((a, b) => a.lineId.localeCompare(b.lineId, "en")));

describe("draws of the ranking", () => {
  test("the order of the lines in the input changes nothing", () => {
    const shuffled = group.chain((input) =>
      tuple(
        shuffledSubarray([...input.lines], { minLength: input.lines.length }),
        shuffledSubarray([...input.installed], { minLength: input.installed.length }),
      ).map(([lines, installed]) => ({ input, other: { ...input, lines, installed } })),
    );
    assert(
      property(shuffled, ({ input, other }) => {
        const draw = (one: GroupInput) => byId(drawRanks(one, likelyAssumptions, options));
        return draw(input) === draw(other);
      }),
      runs,
    );
  });

  test("places lie between one and the number of lines, in order, and the odds against a neighbour add up", () => {
    assert(
      property(group, (input) => {
        const places = drawRanks(input, likelyAssumptions, options);
        return places.every(({ lineId, place, neighbours, firstFive }) => {
          const ordered = 1 <= place.low && place.low <= place.mid && place.mid <= place.high;
          const adds = neighbours.every(({ lineId: other, before }) => {
            const back = places
              .find((one) => one.lineId === other)
              ?.neighbours.find((one) => one.lineId === lineId);
            return back !== undefined && Math.abs(before + back.before - 1) < 1e-12;
          });
          return ordered && adds && place.high <= input.lines.length && firstFive >= 0 && firstFive <= 1;
        });
      }),
      runs,
    );
  });

  test("a place among changed losses is the place counted one by one", () => {
    const loss = integer({ min: 0, max: 6 });
    const table = array(tuple(loss, loss, loss), { minLength: 1, maxLength: 8 });
    assert(
      property(table, (rows) => {
        const ids = rows.map((_, i) => `L-${i}`);
        const now = new Map<string, Float64Array>(rows.map(([own], i) => [`L-${i}`, Float64Array.of(own)]));
        const changed = new Map<string, Float64Array>(
          rows.flatMap(([, then, coin], i) =>
            coin % 2 === 0 ? [[`L-${i}`, Float64Array.of(then)] as const] : [],
          ),
        );
        const value = (id: string) => (changed.get(id) ?? now.get(id))?.[0] ?? Number.NaN;
        const places = placeTable(now, 1);
        return ids.every(
          (id) =>
            places.placesIf(id, changed)[0] === 1 + ids.filter((other) => value(other) > value(id)).length,
        );
      }),
    );
  });
});
