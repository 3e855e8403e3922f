import { describe, expect, it } from "vitest";
import { footingLead, footingRows, type SiteGap, trendWords } from "@/lib/view/footing";
import { GAPS, type GapKey } from "@/lib/view/gap";
import { mendHref } from "@/lib/view/gapRow";
import { moveWords, nameFixes } from "@/lib/view/nextFix";

const gap = (siteId: string, key: GapKey, given: Partial<SiteGap> = {}): SiteGap => ({
  ...{ siteId, key, missing: 2, of: 8, oldestOn: null, bearsOn: [] },
  ...given,
});
const facts = (gaps: readonly SiteGap[], given: object = {}) => ({
  ...{ gaps, lines: [], earlier: [], norms: [] },
  ...given,
});
const rowOf = (key: GapKey, of: Parameters<typeof footingRows>[0]) =>
  footingRows(of).find((row) => row.key === key);

describe("the board of gaps", () => {
  it("sums sites, takes the earliest day, and shows every gap that is looked for", () => {
    const both = facts([
      gap("N", "controller-old", { oldestOn: "2024-05-01" }),
      gap("S", "controller-old", { missing: 1, of: 2, oldestOn: "2023-02-01" }),
    ]);
    expect(rowOf("controller-old", both)).toMatchObject({
      missing: 3,
      of: 10,
      oldestOn: "2023-02-01",
      effect: null,
    });
    expect(footingRows(both)).toHaveLength(GAPS.length);
  });

  it("puts first what most of the loss rests on, and what is not missing last", () => {
    const lines = [
      {
        siteId: "N",
        result: { lineId: "a", stopLoss: { mean: 9, low: 9, high: 9 }, pools: [] },
      },
    ];
    const rows = footingRows(
      facts(
        [
          gap("N", "backup-missing", { missing: 8 }),
          gap("N", "buffer-missing", { bearsOn: ["a"] }),
          gap("N", "cost-unowned", { missing: 0, bearsOn: ["a"] }),
        ],
        { lines },
      ),
    ).map(({ key }) => key);
    expect(rows.slice(0, 2)).toEqual(["buffer-missing", "backup-missing"]);
  });

  it("says what moved only where every site was counted before", () => {
    const earlier = [{ siteId: "N", key: "backup-missing", asOf: "2026-11-23", missing: 5 }];
    const one = rowOf("backup-missing", facts([gap("N", "backup-missing")], { earlier }));
    expect(one && trendWords(one)).toEqual({ kind: "better", text: "3 fewer" });
    const two = rowOf(
      "backup-missing",
      facts([gap("N", "backup-missing"), gap("S", "backup-missing")], { earlier }),
    );
    expect(two?.before).toBeNull();
    expect(two && trendWords(two)).toBeNull();
  });

  it("takes hours somebody set before common practice", () => {
    const norm = { gap: "backup-missing", hours: 6, changedOn: "2026-11-01", changedBy: "A", version: 1 };
    expect(rowOf("backup-missing", facts([], { norms: [norm] }))?.hoursEach).toBe(6);
    expect(rowOf("backup-missing", facts([]))).toMatchObject({ hoursEach: 2, norm: null });
  });

  it("says so when nothing is missing", () => {
    expect(footingLead(footingRows(facts([])))).toMatch(/^Nothing is missing/);
    expect(footingLead(footingRows(facts([gap("N", "price-old")])))).toMatch(
      /^1 kind of gap, 2 records to mend/,
    );
  });

  it("leads to the page a record is mended on, and nowhere where there is none", () => {
    const row = { id: "1", siteCode: "N", label: "", detail: "", sinceOn: null };
    expect(mendHref("line", "cost-missing", { ...row, target: "VEL 1" })).toBe("/lines/VEL%201#stop-cost");
    expect(mendHref("controller", "firmware-unknown", { ...row, target: null })).toBeNull();
  });
});

describe("the words of a fix", () => {
  it("names what to do, where, and how places may move", () => {
    const fix = {
      ...{ kind: "read" as const, lineId: "a", poolId: "unidentified:drive", pieces: 3, hours: 1.5 },
      ...{ crossings: 0, places: 4, unknownLoss: 7 },
      lines: [{ lineId: "a", placeAtLow: 9, placeAtHigh: 5, places: 4, crosses: false, unknownLoss: 7 }],
    };
    const [named] = nameFixes([fix], {
      ...{ lines: new Map([["a", "VEL-01"]]), parts: new Map(), shelves: new Map() },
    });
    expect(named).toMatchObject({ rank: 1, what: "Read 3 drive plates on VEL-01", href: "/lines/VEL-01" });
    expect(named?.moves.map(moveWords)).toEqual(["VEL-01: place 5 or 9"]);
  });
});
