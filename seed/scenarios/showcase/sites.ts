import type { IsoDate } from "@/lib/kernel/isoDate";
import type { CostMethod } from "@/lib/schema/costMethod";
import { LINE_NOTES, LINES, type LineSpec } from "@/seed/scenarios/showcase/lineTable";
import { seedId } from "@/seed/seedId";
import type { CurrencyRateRow, LineRow, SiteRow } from "@/seed/siteTables";

export type SiteCode = "VEL" | "OST" | "KAR" | "PIN" | "TAD" | "THO";

export interface SiteSpec {
  readonly code: SiteCode;
  readonly name: string;
  readonly country: string;
  readonly currency: string;
  /** Units of the currency for one EUR. */
  readonly rate: number;
  readonly timeZone: string;
  /** Removals at this site against the group's mean. */
  readonly factor: number;
}

/** The six invented sites. */
export const SITES: readonly SiteSpec[] = [
  {
    code: "VEL",
    name: "Velmark",
    country: "DE",
    currency: "EUR",
    rate: 1,
    timeZone: "Europe/Berlin",
    factor: 1,
  },
  {
    code: "OST",
    name: "Ostrowka Mała",
    country: "PL",
    currency: "PLN",
    rate: 4.3,
    timeZone: "Europe/Warsaw",
    factor: 1,
  },
  {
    code: "KAR",
    name: "Karlsvik",
    country: "SE",
    currency: "SEK",
    rate: 11.3,
    timeZone: "Europe/Stockholm",
    factor: 1,
  },
  {
    code: "PIN",
    name: "Pinehollow",
    country: "US",
    currency: "USD",
    rate: 1.1,
    timeZone: "America/New_York",
    factor: 1,
  },
  {
    code: "TAD",
    name: "San Tadeo",
    country: "MX",
    currency: "MXN",
    rate: 20,
    timeZone: "America/Mexico_City",
    factor: 1.25,
  },
  {
    code: "THO",
    name: "Thornby Vale",
    country: "GB",
    currency: "GBP",
    rate: 0.86,
    timeZone: "Europe/London",
    factor: 0.85,
  },
];

const BY_CODE = new Map(SITES.map((site) => [site.code, site]));

export function siteSpec(code: SiteCode): SiteSpec {
  const site = BY_CODE.get(code);
  if (!site) throw new RangeError(`code must be a site of the scenario, got ${code}`);
  return site;
}

export const siteId = (code: string): string => seedId("Site", code);
export const lineId = (code: string): string => seedId("Line", code);

export function siteRows(): SiteRow[] {
  return SITES.map(({ code, name, country, currency, timeZone }) => ({
    id: siteId(code),
    code,
    name,
    country,
    timeZone,
    currency,
  }));
}

export function rateRows(): CurrencyRateRow[] {
  return SITES.map(({ currency, rate }) => ({
    ...{ currency, perEuro: rate, validFrom: "2026-01-01" },
    source: "Group treasury, budget rates 2026",
  }));
}

/** What a stop costs on a line besides its hours, EUR at the budget rate; customers' and people's terms. */
const COST_TERMS: Readonly<Record<string, CostTerms>> = {
  "PIN-01": { method: "contract", fixed: 600, steps: [{ afterHours: 48, cost: 90_000 }] },
  "VEL-04": {
    method: "margin",
    fixed: 450,
    steps: [
      { afterHours: 24, cost: 8_000 },
      { afterHours: 72, cost: 40_000 },
    ],
  },
  "OST-03": { method: "estimate", fixed: null, steps: [{ afterHours: 36, cost: 12_000 }] },
};

interface CostTerms {
  readonly method: CostMethod;
  readonly fixed: number | null;
  readonly steps: readonly { readonly afterHours: number; readonly cost: number }[];
}

/** The line whose controller has not confirmed the cost again. */
const ENDED_APPROVALS: Readonly<Record<string, IsoDate>> = { "OST-03": "2026-09-30" };

function termsOf(line: LineSpec) {
  const { method, fixed, steps } = COST_TERMS[line.code] ?? { method: null, fixed: null, steps: [] };
  const { rate } = siteSpec(line.site);
  return {
    costFixed: fixed === null ? null : toTens(fixed * rate),
    costSteps: JSON.stringify(
      steps.map(({ afterHours, cost }) => ({ afterHours, cost: toTens(cost * rate) })),
    ),
    costMethod: method,
  };
}

/** San Tadeo's finance has not answered for its figures yet. */
function approvalOf(line: LineSpec) {
  if (line.site === "TAD")
    return { costOwner: null, costApprovedOn: null, costValidUntil: null, costEvidence: "assumed" as const };
  return {
    costOwner: `Plant controller ${line.site}`,
    costApprovedOn: line.site === "THO" ? "2026-04-14" : "2026-03-02",
    costValidUntil: ENDED_APPROVALS[line.code] ?? "2027-03-31",
    costEvidence: "documented" as const,
  };
}

/** Local amounts are kept to ten units of the currency, as finance gave them. */
const toTens = (amount: number) => Math.round(amount / 10) * 10;

export function lineRows(): LineRow[] {
  return LINES.map((line) => ({
    id: lineId(line.code),
    siteId: siteId(line.site),
    code: line.code,
    name: line.name,
    shiftsPerWeek: line.shifts,
    inServiceYear: line.year,
    costPerHour: toTens(line.costPerHour * siteSpec(line.site).rate),
    ...termsOf(line),
    ...approvalOf(line),
    bufferHours: line.bufferHours,
    note: LINE_NOTES[line.code] ?? null,
  }));
}
