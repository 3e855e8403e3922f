import type { PlanFigureKind } from "@/lib/schema/planInputs";
import type {
  ApprovalFreezeRow,
  CrewRegionRow,
  CrewRegionSiteRow,
  PlanFigureRow,
  PlanPrecedenceRow,
  RiskAcceptanceRow,
} from "@/seed/planTables";
import { lineId, type SiteCode, siteId } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";

const REGIONS: Readonly<Record<string, { readonly crews: number; readonly sites: readonly SiteCode[] }>> = {
  Europe: { crews: 2, sites: ["VEL", "OST", "KAR", "THO"] },
  "North America": { crews: 1, sites: ["PIN", "TAD"] },
};

/** Site; controls engineers. */
const ENGINEERS: readonly (readonly [SiteCode, number])[] = [
  ["VEL", 2.5],
  ["OST", 2],
  ["KAR", 1.5],
  ["PIN", 2],
  ["TAD", 0.8],
  ["THO", 1],
];

const YEARS = [2027, 2028, 2029];
/** Share of an engineer's time for projects, and working weeks of a year. */
const PROJECT_SHARE = 0.3;
const WEEKS_A_YEAR = 44;

const regionId = (name: string) => seedId("CrewRegion", name);

interface Stated extends Partial<Omit<PlanFigureRow, "id" | "kind" | "value">> {
  readonly value: number;
}

function figure(kind: PlanFigureKind, key: string, stated: Stated): PlanFigureRow {
  return {
    ...{ siteId: null, regionId: null, obligationId: null, year: null, currency: null },
    ...{ source: "Invented budget letter 2027, section 2", owner: "Group engineering manager" },
    ...{ evidence: "documented", statedOn: "2026-11-16" },
    ...stated,
    ...{ id: seedId("PlanFigure", `${kind}/${key}`), kind },
  };
}

const finance = { source: "Invented budget letter 2027, section 1", owner: "Group finance controller" };

function budgets(): PlanFigureRow[] {
  const group = [1_900_000, 2_100_000, 1_600_000].map((value, i) =>
    figure("budget", `group/${YEARS[i]}`, { ...finance, value, currency: "EUR", year: YEARS[i] ?? null }),
  );
  const local = { siteId: siteId("KAR"), year: 2027, currency: "SEK", value: 6_000_000 };
  return [
    ...group,
    figure("budget", "KAR/2027", {
      ...local,
      ...{ source: "Invented site budget KAR 2027", owner: "Plant controller KAR", statedOn: "2026-11-05" },
    }),
  ];
}

function rules(): PlanFigureRow[] {
  const guess = { evidence: "assumed", source: "Common practice, no source" } as const;
  return [
    figure("site_cap", "group", { ...finance, value: 0.45 }),
    figure("reserve", "group", { ...guess, value: 0.1 }),
    figure("discount", "group", { ...finance, ...guess, value: 0.08 }),
    figure("horizon", "group", { ...guess, value: 5 }),
    figure("sign_off_above", "group", { ...finance, value: 250_000, currency: "EUR" }),
    figure("sign_off_weeks", "group", { ...finance, value: 4 }),
    figure("worth_per_euro", "group", { ...finance, value: 1 }),
  ];
}

function hands(): PlanFigureRow[] {
  const weeks = ENGINEERS.flatMap(([site, engineers]) =>
    YEARS.map((year) =>
      figure("engineer_weeks", `${site}/${year}`, {
        ...{
          siteId: siteId(site),
          year,
          value: Math.round(engineers * PROJECT_SHARE * WEEKS_A_YEAR * 10) / 10,
        },
        ...{ source: `${engineers} engineers, 30 % on projects, 44 weeks`, evidence: "inferred" as const },
        owner: `Maintenance manager ${site}`,
      }),
    ),
  );
  const crews = Object.entries(REGIONS).map(([name, { crews: value }]) =>
    figure("crews", name, { regionId: regionId(name), value, source: "Invented frame contract 2026" }),
  );
  const weekends = ENGINEERS.map(([site]) =>
    figure("weekend_hours", site, {
      ...{ siteId: siteId(site), value: 40, source: "Production calendar, Friday late to Sunday late" },
      ...{ owner: `Production planner ${site}`, evidence: "documented" as const },
    }),
  );
  return [...weeks, ...crews, ...weekends];
}

/** What the guards ordered by the inspectorate take; the duty of THO-01 has a project of its own. */
function duties(): PlanFigureRow[] {
  const guards = {
    obligationId: seedId("Obligation", "OST-06/guards"),
    ...{ source: "Invented offer of a guard builder, 26 Oct 2026", owner: "Plant manager OST" },
  };
  return [
    figure("duty_cost", "OST-06/guards", { ...guards, value: 163_400, currency: "PLN" }),
    figure("duty_hours", "OST-06/guards", { ...guards, value: 16 }),
    figure("duty_weeks", "OST-06/guards", { ...guards, value: 8 }),
  ];
}

/** What the invented company plans its retrofits with. */
export const planFigureRows = (): PlanFigureRow[] => [...budgets(), ...rules(), ...hands(), ...duties()];

export const crewRegionRows = (): CrewRegionRow[] =>
  Object.keys(REGIONS).map((name) => ({ id: regionId(name), name }));

export const crewRegionSiteRows = (): CrewRegionSiteRow[] =>
  Object.entries(REGIONS).flatMap(([name, { sites }]) =>
    sites.map((site) => ({ siteId: siteId(site), regionId: regionId(name) })),
  );

export function approvalFreezeRows(): ApprovalFreezeRow[] {
  const half = { coversFrom: "2027-01-01", coversTo: "2027-06-30" };
  return [
    {
      ...{
        id: seedId("ApprovalFreeze", "2027/1"),
        name: "First half of 2027",
        freezesOn: "2026-12-18",
        ...half,
      },
      ...finance,
    },
  ];
}

export function planPrecedenceRows(): PlanPrecedenceRow[] {
  const terms = {
    reason: "The panels of Carton B are built from the proven drawings of Carton A",
    source: "Invented minutes of the engineering round, 9 Nov 2026",
    owner: "Controls engineer VEL",
  };
  return [
    {
      ...{
        id: seedId("PlanPrecedence", "VEL-01/VEL-02"),
        firstId: lineId("VEL-01"),
        thenId: lineId("VEL-02"),
      },
      ...terms,
    },
  ];
}

/** The loss is as the sheet of the day told it, not as it would be worked out now. */
export function riskAcceptanceRows(): RiskAcceptanceRow[] {
  return [
    {
      ...{ id: seedId("RiskAcceptance", "PIN-06/2026"), lineId: lineId("PIN-06") },
      ...{ acceptedBy: "Plant manager PIN", acceptedOn: "2026-10-12", until: "2027-06-30" },
      reason:
        "The sleeve product is to be dropped or moved by mid-2027; a retrofit before that would be lost money",
      ...{ loss: 96_000, lossLow: 38_000, lossHigh: 190_000, recordedBy: "Plant office PIN" },
    },
  ];
}

/** Money, hands, freezes and decisions plans rest on. */
export const planInputTables = () => ({
  CrewRegion: crewRegionRows(),
  CrewRegionSite: crewRegionSiteRows(),
  PlanFigure: planFigureRows(),
  ApprovalFreeze: approvalFreezeRows(),
  PlanPrecedence: planPrecedenceRows(),
  RiskAcceptance: riskAcceptanceRows(),
});
