import { describe, expect, it } from "vitest";
import type { LinePoolResult } from "@/lib/risk/evaluation";
import { chooseDates, datesLead, dateWindow } from "@/lib/view/dateChoice";
import { type DatesInput, datesAhead, type ListedPart } from "@/lib/view/datesAhead";
import type { LineCost } from "@/lib/view/lineRanking";
import { isNear, type Obligation } from "@/lib/view/obligation";

const asOf = "2026-11-30";

const cost: LineCost = {
  ...{ perHour: 1000, fixed: null, steps: [], owner: "Plant controller", evidence: "documented" },
  ...{ approvedOn: "2026-03-02", validUntil: "2027-03-31" },
};

const undated = { lastOrderOn: null, orderByOn: null, lastShipOn: null, repairUntilOn: null };
const part = (id: string, given: Partial<ListedPart> = {}): ListedPart => ({
  ...{ ...undated, id, number: id, datesOf: "Heron R" },
  ...given,
});

const line = (code: string, units: Readonly<Record<string, number>>, depletionP80: string | null = null) => ({
  ...{ code, siteCode: code.slice(0, 3), cost },
  result: {
    depletionP80,
    depletionPoolId: depletionP80 === null ? null : "a",
    pools: Object.entries(units).map(([poolId, n]) => ({ poolId, units: n }) as LinePoolResult),
  },
});

const duty: Obligation = {
  ...{ id: "d1", siteId: "s1", siteCode: "VEL", line: { id: "l1", code: "VEL-01" }, kind: "safety" },
  ...{ title: "Relays reach their mission time", dueOn: "2027-09-30", source: "file", owner: null },
  ...{ evidence: "documented", recordedOn: "2026-05-12", doneOn: null, version: 1 },
};

const nothing: DatesInput = { asOf, lines: [], parts: [], obligations: [], projects: [], removals: [] };
const kinds = (input: Partial<DatesInput>) =>
  datesAhead({ ...nothing, ...input }).map(({ kind, on, overdue }) => [kind, on, overdue]);

describe("the dates ahead", () => {
  it("are none where nothing is dated", () => {
    expect(datesAhead(nothing)).toEqual([]);
  });

  it("join the parts of a family said to end on one day, with the sites that have them", () => {
    const ends = { lastOrderOn: "2027-04-30" };
    const lines = [line("VEL-01", { a: 5 }), line("VEL-02", { a: 2, b: 1 }), line("OST-01", { b: 4 })];
    const [first, ...rest] = datesAhead({
      ...nothing,
      lines: lines.map((one) => ({ ...one, cost: null })),
      parts: [part("a", ends), part("b", ends)],
    });
    expect(rest).toEqual([]);
    expect(first).toMatchObject({
      ...{ kind: "last-order", on: "2027-04-30", of: "Heron R", units: 12, sites: ["OST", "VEL"] },
      href: "/parts?parts.q=Heron%20R",
    });
  });

  it("lead from a lone part to that part", () => {
    const [only] = datesAhead({ ...nothing, parts: [part("a", { repairUntilOn: "2027-01-01" })] });
    expect(only).toMatchObject({ kind: "repair-end", href: "/parts/a" });
  });

  it("keep a missed order-by day while orders are taken, and drop days of supply that passed", () => {
    const missed = { orderByOn: "2026-10-01", lastOrderOn: "2026-12-31", lastShipOn: "2026-01-01" };
    expect(kinds({ parts: [part("a", missed)] })).toEqual([
      ["order-by", "2026-10-01", true],
      ["last-order", "2026-12-31", false],
    ]);
    expect(kinds({ parts: [part("a", { ...missed, lastOrderOn: "2026-11-29" })] })).toEqual([]);
  });

  it("hold open duties, however long overdue, and no duty that is done", () => {
    const overdue = { ...duty, id: "d2", dueOn: "2025-01-01", kind: "legal" as const, line: null };
    const done = { ...duty, id: "d3", doneOn: "2026-11-01" };
    const found = datesAhead({ ...nothing, obligations: [duty, overdue, done] });
    expect(found.map(({ key, overdue: late, of, href }) => [key, late, of, href])).toEqual([
      ["d2", true, "VEL, whole site", "/dates#binding"],
      ["d1", false, "VEL-01", "/lines/VEL-01#binding"],
    ]);
  });

  it("hold an approval on its last day, and call it overdue from the day after", () => {
    const until = (validUntil: string) => ({ ...line("VEL-01", {}), cost: { ...cost, validUntil } });
    expect(kinds({ lines: [until(asOf)] })).toEqual([["cost-approval", asOf, false]]);
    expect(kinds({ lines: [until("2026-11-29")] })).toEqual([["cost-approval", "2026-11-29", true]]);
    const unapproved = { ...line("VEL-01", {}), cost: { ...cost, approvedOn: null } };
    expect(kinds({ lines: [unapproved] })).toEqual([]);
  });

  it("ask an owner once for all costs of a site that end on one day", () => {
    const lines = ["VEL-01", "VEL-02", "OST-01"].map((code) => line(code, {}));
    const found = datesAhead({ ...nothing, lines });
    expect(found.map(({ of, href }) => [of, href])).toEqual([
      ["OST-01", "/lines/OST-01#stop-cost"],
      ["2 lines of VEL", "/lines?lines.q=VEL"],
    ]);
    expect(found[0]).not.toHaveProperty("lines");
  });

  it("hold the day a shelf is likely empty, already so when it is the day looked at", () => {
    const bare = { ...line("VEL-01", {}, asOf), cost: null };
    expect(kinds({ lines: [bare] })).toEqual([["shelf-empty", asOf, true]]);
    const named = datesAhead({ ...nothing, lines: [bare], parts: [part("a", { number: "BW-OK-020" })] });
    expect(named[0]?.what).toBe("Shelf of BW-OK-020 likely empty, chance 80 %");
  });

  it("hold the ends of projects that run, and what they take out of lines, part by part summed", () => {
    const project = { code: "VEL-01-R1", name: "Retrofit", siteCode: "VEL", lineCode: "VEL-01" };
    const removal = { projectCode: "VEL-01-R1", lineCode: "VEL-01", siteCode: "VEL" };
    const found = datesAhead({
      ...nothing,
      projects: [
        { ...project, status: "in_work", endsOn: "2026-11-01" },
        { ...project, code: "VEL-02-R1", status: "closed", endsOn: "2026-11-01" },
      ],
      removals: [
        { ...removal, leavesOn: "2027-08-01", units: 20 },
        { ...removal, leavesOn: "2027-08-01", units: 7 },
        { ...removal, leavesOn: "2026-01-01", units: 9 },
      ],
    });
    expect(found.map(({ kind, of, units, overdue }) => [kind, of, units, overdue])).toEqual([
      ["project-end", "VEL-01-R1", null, true],
      ["removal", "VEL-01-R1", 27, false],
    ]);
  });
});

describe("the choice of dates", () => {
  const dates = datesAhead({
    ...nothing,
    lines: [line("OST-01", { a: 1 })].map((one) => ({ ...one, cost: null })),
    parts: [part("a", { lastOrderOn: "2026-12-30", lastShipOn: "2026-12-31" })],
    obligations: [
      { ...duty, dueOn: "2020-01-01" },
      { ...duty, id: "d2" },
    ],
  });
  const days = (within: ReturnType<typeof dateWindow>, site: string | null = null) =>
    chooseDates(dates, { asOf, within, site }).map(({ on }) => on);

  it("takes the thirtieth day and not the one after, and always what is overdue", () => {
    expect(days(30)).toEqual(["2020-01-01", "2026-12-30"]);
    expect(days(90)).toEqual(["2020-01-01", "2026-12-30", "2026-12-31"]);
    expect(days(null)).toHaveLength(4);
  });

  it("takes those of a site", () => {
    expect(days(null, "OST")).toEqual(["2026-12-30", "2026-12-31"]);
  });

  it("reads the window from the address, a year unless it says one that is offered", () => {
    expect(["30", "90", "365", "all", "7", undefined].map(dateWindow)).toEqual([30, 90, 365, null, 365, 365]);
  });

  it("is told in a sentence that keeps one and many apart", () => {
    expect(datesLead(dates, { asOf, within: 365, site: null })).toBe(
      "1 date is overdue and 3 more lie within the next 365 days; safety and legal dates among them: 2.",
    );
    expect(datesLead(dates.slice(0, 2), { asOf, within: null, site: "OST" })).toContain(
      "1 more lies ahead at OST",
    );
  });
});

describe("a duty near enough to stand beside money", () => {
  it("is open and at most 24 months ahead", () => {
    expect(isNear({ dueOn: "2028-11-30", doneOn: null }, asOf)).toBe(true);
    expect(isNear({ dueOn: "2028-12-01", doneOn: null }, asOf)).toBe(false);
    expect(isNear({ dueOn: "2020-01-01", doneOn: null }, asOf)).toBe(true);
    expect(isNear({ dueOn: "2027-01-01", doneOn: "2026-11-01" }, asOf)).toBe(false);
  });
});
