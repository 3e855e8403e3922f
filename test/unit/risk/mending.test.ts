import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LinePoolResult } from "@/lib/risk/evaluation";
import { gapEffect, type WeighedLine } from "@/lib/risk/mending/gapEffect";
import { type FixLine, type FixWork, nextFixes } from "@/lib/risk/mending/nextFixes";

const pool = (poolId: string, loss: number, unknownLoss: number | null = 0) =>
  ({ poolId, baseLoss: loss / 4, shortageLoss: (loss * 3) / 4, unknownLoss }) as LinePoolResult;

function line(id: string, siteId: string, pools: readonly LinePoolResult[]): WeighedLine {
  const mean = pools.reduce((sum, one) => sum + (one.baseLoss ?? 0) + (one.shortageLoss ?? 0), 0);
  return { siteId, result: { lineId: id, stopLoss: { mean, low: mean, high: mean }, pools } };
}

const lines = [
  line("a", "N", [pool("x", 400, 100), pool("unidentified:drive", 100, 80)]),
  line("b", "S", [pool("x", 200, 50), pool("y", 200), pool("unidentified:drive", 100, 80)]),
];
const bears = (siteId: string, of: "line" | "part", ids: readonly string[]) => ({
  siteId,
  of,
  ids: new Set(ids),
});

describe("what of the loss hangs on a gap", () => {
  it("is the whole loss of a line whose cost is poor, once however often it is named", () => {
    const gaps = [bears("N", "line", ["a"]), bears("S", "line", ["a"])];
    expect(gapEffect(lines, gaps, false)).toEqual({ rests: 500, share: 0.5, unknown: null });
  });

  it("counts a part on every line, wherever its shelf is", () => {
    expect(gapEffect(lines, [bears("S", "part", ["x"])], true)).toEqual({
      rests: 600,
      share: 0.6,
      unknown: 150,
    });
  });

  it("counts places nobody read at their own site only", () => {
    expect(gapEffect(lines, [bears("N", "part", ["unidentified:drive"])], true)).toEqual({
      ...{ rests: 100, share: 0.1, unknown: 80 },
    });
  });

  it("gives no share where no line has a loss, and never more than the whole", () => {
    expect(gapEffect([], [bears("N", "part", ["x"])], true)).toEqual({ rests: 0, share: null, unknown: 0 });
    const anyGaps = fc.array(
      fc.tuple(
        fc.constantFrom("N", "S"),
        fc.uniqueArray(fc.constantFrom("x", "y", "z", "unidentified:drive")),
      ),
    );
    fc.assert(
      fc.property(anyGaps, (gaps) => {
        const { rests, unknown } = gapEffect(
          lines,
          gaps.map(([site, ids]) => bears(site, "part", ids)),
          true,
        );
        expect(rests).toBeLessThanOrEqual(1000 + 1e-9);
        expect(unknown ?? 0).toBeLessThanOrEqual(rests + 1e-9);
      }),
    );
  });
});

const fixLine = (
  id: string,
  pools: readonly LinePoolResult[],
  unknowns: FixLine["unknowns"] = [],
): FixLine => ({
  ...{ id, unknowns },
  result: { pools, stopLoss: null },
});
const moves = (
  kind: "cost" | "stock" | "part",
  poolId: string | null,
  [low, high]: readonly [number, number],
) => ({
  ...{ kind, poolId, siteIds: [], placeAtLow: low, placeAtHigh: high, places: Math.abs(high - low) },
});
const work = (given: Partial<FixWork> = {}): FixWork => ({
  ...{ lots: new Map(), unread: new Map(), undated: new Set<string>() },
  ...given,
});
const HOURS = { cost: 2, count: 0.5, read: 0.5, date: 1 };
const TERMS = { hours: HOURS, cut: 5 };

describe("what to find out next", () => {
  it("puts a line carried over the cut before more places, and places before money, each for an hour", () => {
    const found = nextFixes(
      [
        fixLine("a", [pool("x", 9, 5000)], [moves("cost", null, [4, 6])]),
        fixLine("b", [pool("y", 9, 10)], [moves("stock", "y", [7, 15])]),
      ],
      work({
        lots: new Map([
          ["y", 2],
          ["x", 4],
        ]),
      }),
      TERMS,
    );
    expect(
      found.map(({ kind, lineId, poolId, hours, crossings, places, unknownLoss }) => [
        kind,
        lineId ?? poolId,
        hours,
        crossings,
        places,
        unknownLoss,
      ]),
    ).toEqual([
      ["cost", "a", 2, 1, 2, null],
      ["count", "y", 1, 0, 8, 10],
      ["count", "x", 2, 0, 0, 5000],
    ]);
  });

  it("puts one shelf of a part on several lines together, and reads places line by line", () => {
    const unread = "unidentified:drive";
    const found = nextFixes(
      [
        fixLine(
          "a",
          [pool("x", 9, 30), pool(unread, 9, 40)],
          [moves("stock", "x", [1, 3]), moves("part", unread, [1, 2])],
        ),
        fixLine("b", [pool("x", 9, 20), pool(unread, 9, 0)], [moves("stock", "x", [6, 7])]),
      ],
      work({ lots: new Map([["x", 1]]), unread: new Map([[`a ${unread}`, 6]]) }),
      TERMS,
    );
    expect(found).toMatchObject([
      { kind: "count", poolId: "x", places: 3, unknownLoss: 50, lines: [{ lineId: "a" }, { lineId: "b" }] },
      { kind: "read", lineId: "a", pieces: 6, hours: 3, places: 1, unknownLoss: 40 },
    ]);
  });

  it("leaves out what moves nothing, and dates what no source dates", () => {
    const lone = [fixLine("a", [pool("x", 9, 0), pool("y", 9, 7)])];
    expect(
      nextFixes(lone, work({ lots: new Map([["x", 1]]), undated: new Set(["y"]) }), TERMS),
    ).toMatchObject([{ kind: "date", poolId: "y", unknownLoss: 7 }]);
  });
});
