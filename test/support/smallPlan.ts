import type { PlanLineInput, PlanOption, PlanProblem, PlanWindow } from "@/lib/portfolio/planProblem";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import type { GroupInput } from "@/lib/risk/evaluation";
import { plainOption, quartersOf } from "./planOfGroup";
import { line, lot, noDates, oldDates, pool } from "./smallGroup";

/** Three lines at two sites share an old drive with few spares; one of them has a second kind as well. */
export const planGroup: GroupInput = {
  asOf: "2026-11-30",
  lines: [
    line("A", "VEL", { costPerHour: 3400 }),
    line("B", "VEL", { costPerHour: 900 }),
    line("C", "TAD", { costPerHour: 1600 }),
  ],
  pools: [
    pool("oak", { dates: oldDates, stock: [lot("VEL", 2)] }),
    pool("birch", { dates: oldDates, stock: [lot("TAD", 1)], repair: { turnaroundYears: 0.1, yield: 0.5 } }),
    pool("heron", { dates: noDates, stock: [lot("VEL", 4)] }),
  ],
  installed: [
    { lineId: "A", poolId: "oak", units: 24 },
    { lineId: "B", poolId: "oak", units: 10 },
    { lineId: "B", poolId: "birch", units: 8 },
    { lineId: "C", poolId: "oak", units: 16 },
    { lineId: "C", poolId: "heron", units: 6 },
  ],
  experience: [{ poolId: "oak", siteId: "VEL", removals: 9, failures: 6, unitYears: 150 }],
  restorations: [],
};

/** A shutdown of a site, named after site and year. */
export const shutdown = (id: string, [startsOn, endsOn]: readonly [string, string]): PlanWindow => ({
  ...{ id, name: id, siteId: id.slice(0, 3), lineId: null, startsOn, endsOn, usableHours: 200 },
});

export const option = (id: string, more: Partial<PlanOption> = {}): PlanOption => ({
  ...plainOption(id),
  ...more,
});

/** All old drives of a line out, kept, in a shutdown. */
export const fullOf = (lineId: string, drives: Record<string, number>, more: Partial<PlanOption> = {}) =>
  option(`${lineId}/full`, {
    cost: { low: 80_000, typical: 100_000, high: 130_000 },
    windowHours: 120,
    residualShare: 0.3,
    removes: Object.entries(drives).map(([poolId, units]) => ({ poolId, units, fate: "kept", works: null })),
    ...more,
  });

export const planLine = (lineId: string, siteId: string, options: readonly PlanOption[]): PlanLineInput => ({
  ...{ lineId, code: lineId, siteId, options, mustDo: null },
});

/** Two years, one shutdown a site and year, money for one full retrofit a year. */
export const smallPlan: PlanProblem = {
  asOf: "2026-11-30",
  lines: [
    planLine("A", "VEL", [fullOf("A", { oak: 24 })]),
    planLine("B", "VEL", [
      fullOf("B", { oak: 10, birch: 8 }),
      option("B/spares", {
        ...{ kind: "stock", cost: { low: 9_000, typical: 10_000, high: 12_000 } },
        buys: [{ poolId: "birch", pieces: 3, works: 0.9 }],
      }),
    ]),
    planLine("C", "TAD", [fullOf("C", { oak: 16 })]),
  ],
  quarters: quartersOf(2027, 2),
  windows: [
    shutdown("VEL 2027", ["2027-08-02", "2027-08-15"]),
    shutdown("VEL 2028", ["2028-08-02", "2028-08-15"]),
    shutdown("TAD 2027", ["2027-04-05", "2027-04-16"]),
    shutdown("TAD 2028", ["2028-04-05", "2028-04-16"]),
  ],
  windowFill: 0.8,
  budgets: [
    { year: 2027, siteId: null, amount: 120_000 },
    { year: 2028, siteId: null, amount: 120_000 },
  ],
  ...{ reserveShare: 0, engineers: [], crews: [], pins: [], bans: [], discountRate: 0.08 },
  ...{ horizonMonths: 48, worthPerEuro: 0 },
};

export const planOf = (problem: Partial<PlanProblem> = {}, input: GroupInput = planGroup) => ({
  problem: { ...smallPlan, ...problem },
  ...{ input, assumptions: likelyAssumptions },
});

/** A clock that stands still: nothing is stopped by time. */
export const noClock = { seconds: () => 0, report: () => undefined };
