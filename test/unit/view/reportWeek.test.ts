import { describe, expect, test } from "vitest";
import { MOVED_STEPS } from "@/lib/risk/moved/snapshotInput";
import { cellsOf } from "@/lib/view/reportCell";
import type { ReportTable } from "@/lib/view/reportDocument";
import { slotName, slotsDue } from "@/lib/view/reportSlot";
import { weeklyReport } from "@/lib/view/reportWeek";
import type { ReviewFigures, WorsePart } from "@/lib/view/review";

const still = Object.fromEntries(MOVED_STEPS.map((step) => [step, 0])) as WorsePart["loss"]["steps"];
const worst: WorsePart = {
  ...{ poolId: "p", units: 4, number: "QF-LU-08", description: "Fan", stage: "own-stock", main: "events" },
  noSpare: { before: 27, after: 31, steps: { ...still, events: 4 }, change: 4 },
  loss: { before: 9_000, after: 9_800, steps: { ...still, events: 800 }, change: 800 },
  usable: { before: 19, after: null, steps: still, change: 0 },
  ...{ inputs: [], href: "/parts/p" },
};
const figures: ReviewFigures = {
  ...{ asOf: "2027-01-03", siteCode: "VEL", siteName: "Velmark", engine: "e", parts: 9, better: 2 },
  ...{ base: { kind: "review", asOf: "2026-12-28" }, worse: [worst], repairs: [], holds: [], transfers: [] },
  ...{ dates: [], uncounted: { lots: 1, of: 5, first: [] } },
};
const action = (state: "open" | "done", dueOn: string) => ({
  ...{
    id: dueOn,
    text: "Count it",
    part: null,
    line: null,
    owner: { id: "u", name: "Planner" },
    state,
    dueOn,
  },
  ...{ raisedOn: "2026-11-01", settledOn: null, reason: null, version: 1 },
});
const report = weeklyReport({
  figures,
  actions: [action("open", "2026-12-01"), action("open", "2027-02-01"), action("done", "2026-12-02")],
  buys: [],
  basis: { asOf: figures.asOf, dataVersion: 3, engine: "e", assumptions: "likely", seed: 1 },
});
function tableAt(place: number): ReportTable {
  const block = report.pages[0]?.blocks[place];
  if (block?.kind !== "table") throw new Error(`no table ${place}`);
  return block;
}
const rowsOf = (place: number) => {
  const table = tableAt(place);
  return table.rows.map((row) => cellsOf(table, row).map(({ text }) => text));
};

describe("the week as a document", () => {
  test("bears the week of its day, by ISO 8601, also over New Year", () => {
    expect(report).toMatchObject({ period: "2026-W53", title: "Weekly changes, 2026-W53", siteCode: "VEL" });
  });

  test("says what changed, with both figures as the review has them", () => {
    expect(report.headline?.sentences).toEqual([
      "1 part of 9 got worse and 2 better since 28 Dec 2026, the last review. 2 actions are open, 1 late.",
    ]);
    expect(rowsOf(0)).toEqual([
      [
        ...[
          "QF-LU-08",
          "F Own stock",
          "2.7\u00a0% / 3.1\u00a0%",
          "9\u202f000 / 9\u202f800",
          "1.9 / not known",
        ],
        "Events: through other parts and rates",
      ],
    ]);
    expect(tableAt(0).rows[0]?.cells[2]).toMatchObject({ values: [0.027, 0.031] });
  });

  test("names every action with its state, its owner and its day", () => {
    expect(rowsOf(2).map(([day, state, , , owner]) => [day, state, owner])).toEqual([
      ["1 Dec 2026", "▲ late", "Planner"],
      ["1 Feb 2027", "○ open", "Planner"],
      ["2 Dec 2026", "● done", "Planner"],
    ]);
  });
});

describe("when reports are due", () => {
  const names = (instant: string, zone: string, siteId: string | null = "s") =>
    slotsDue(instant, { siteId, zone }).map((slot) => `${slotName(slot)} ${slot.asOf}`);

  test("the week's on Monday from six by the clock of the place, of the week that ended", () => {
    expect(names("2026-11-30T04:59:00Z", "Europe/Warsaw")).toEqual([]);
    expect(names("2026-11-30T05:00:00Z", "Europe/Warsaw")).toEqual(["weekly:s:2026-W48 2026-11-29"]);
    expect(names("2026-11-30T05:00:00Z", "America/New_York")).toEqual([]);
    expect(names("2027-01-04T12:00:00Z", "UTC")).toEqual(["weekly:s:2026-W53 2027-01-03"]);
  });

  test("the month's on its first day, of the month that ended, and the group has no week", () => {
    expect(names("2027-01-01T06:00:00Z", "UTC")).toEqual(["monthly:s:2026-12 2026-12-31"]);
    expect(names("2027-01-01T05:59:00Z", "UTC")).toEqual([]);
    // A Monday that is the first of a month.
    expect(names("2027-02-01T09:00:00Z", "UTC")).toHaveLength(2);
    expect(names("2027-02-01T09:00:00Z", "UTC", null)).toEqual(["monthly:group:2027-01 2027-01-31"]);
  });
});
