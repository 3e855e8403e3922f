import type { LineResult } from "@/lib/risk/evaluation";
import type { ProjectFile } from "@/lib/view/project";
import type { ReportInput, ReportLine } from "@/lib/view/report";

const SITES = [
  { id: "k", code: "KAR", name: "Karlsvik" },
  { id: "v", code: "VEL", name: "Velmark" },
] as const;

const span = (mean: number) => ({ low: mean * 0.6, mean, high: mean * 1.7 });

/** A line with a loss, driven by nothing that is known. */
export function lineOf(code: string, loss: number | null): ReportLine {
  const result = {
    ...{ lineId: code, score: 50, stopLoss: loss === null ? null : span(loss), baseLoss: loss },
    ...{ shortageLoss: loss === null ? null : loss / 4, unknownLoss: null, horizonLoss: null },
    ...{ stopsPerYear: 2, depletionP80: "2027-09-27", depletionPoolId: null, worstStage: "own-stock" },
    ...{ scoreParts: { stage: 1, spares: 1, repair: 1 }, pools: [], assumed: [] },
  } satisfies LineResult;
  const cost: ReportLine["cost"] = {
    ...{ perHour: 900, fixed: null, steps: [], owner: "Finance", approvedOn: "2026-01-01" },
    ...{ validUntil: null, evidence: "documented" as const },
  };
  return { code, name: `Line ${code}`, siteId: code.startsWith("KAR") ? "k" : "v", cost, result };
}

/**
 * A project of 4.9 M that should have earned 70 % and earned 55 % for 3.6 M: cost index 0.75, schedule index 0.79, and
 * 5.8, 6.5 or 7.3 M at the end.
 */
export const overrunning: ProjectFile = {
  ...{ id: "p", code: "KAR-02-R1", name: "Retrofit", status: "in_work", siteId: "k", siteCode: "KAR" },
  ...{ siteName: "Karlsvik", lineCode: "KAR-02", lineName: "Line KAR-02", planId: null, currency: "SEK" },
  ...{ budget: "4900000.00", budgetRate: null, items: [], changes: [], toOrder: [], forecast: null },
  ...{ startsOn: "2026-03-01", endsOn: "2027-03-31", cause: "=motors unmatched", version: 1 },
  milestones: [
    { id: "a", sequence: 1, name: "First half", weight: 55, dueOn: "2026-09-01", doneOn: "2026-09-20" },
    { id: "b", sequence: 2, name: "Motors", weight: 15, dueOn: "2026-10-30", doneOn: null },
    { id: "c", sequence: 3, name: "Rest", weight: 30, dueOn: "2027-03-31", doneOn: null },
  ].map((milestone) => ({ ...milestone, axisStep: null, axes: null })),
  costs: [
    {
      ...{ id: "x", kind: "actual", amount: "3600000.00", spentOn: "2026-11-01", text: "Panels" },
      ...{ reference: "L-1", costClass: null, orderReference: null, own: null },
    },
  ],
};

/** What a report is made of, of two sites or of one. */
export function reportInput(lines: readonly ReportLine[], sites: ReportInput["sites"] = SITES): ReportInput {
  const ids = new Set(sites.map(({ id }) => id));
  const total = lines.reduce((sum, { result }) => sum + (result.stopLoss?.mean ?? 0), 0);
  return {
    ...{ asOf: "2026-11-30", engine: "ebbline-3", dataVersion: 7, seed: 20261130 },
    assumptionSet: { kind: "likely", version: 1 },
    ...{ sites, choices: SITES, wholeGroup: sites.length === 2, parts: [], obligations: [], acceptances: [] },
    drawnTotal: { ...span(total), mid: total, error: 1 },
    drawnSites: {},
    lines: lines.filter(({ siteId }) => ids.has(siteId)),
    gaps: { controllers: 4, unknownFirmware: 1, stockLots: 10, uncounted: 0 },
    projects: [overrunning].filter(({ siteId }) => ids.has(siteId)),
    plans: [],
    lateActions: [
      { text: "Count it", siteCode: "VEL", owner: "Planner", dueOn: "2026-11-20", href: "/review?site=VEL" },
    ],
  };
}
