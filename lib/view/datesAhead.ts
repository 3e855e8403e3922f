import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LineResult } from "@/lib/risk/evaluation";
import type { LineCost } from "@/lib/view/lineRanking";
import { type Obligation, type ObligationKind, obligationWords } from "@/lib/view/obligation";
import { type DatedPart, type PartDateKind, partDates } from "@/lib/view/partDates";
import type { ProjectFile } from "@/lib/view/project";

export type DateKind =
  | ObligationKind
  | PartDateKind
  | "shelf-empty"
  | "cost-approval"
  | "removal"
  | "project-end"
  | "benefit-check";

/** A day that binds somebody, and where it is kept. */
export interface DateAhead {
  readonly key: string;
  readonly kind: DateKind;
  readonly on: IsoDate;
  readonly what: string;
  /** Line, part, family or project it is said of. */
  readonly of: string;
  readonly href: string;
  /** Sites of the reader that it concerns, by code. */
  readonly sites: readonly string[];
  /** Units at those sites; null where none are counted. */
  readonly units: number | null;
  readonly overdue: boolean;
}

export interface DatedLine {
  readonly code: string;
  readonly siteCode: string;
  readonly cost: LineCost | null;
  readonly result: Pick<LineResult, "depletionP80" | "depletionPoolId" | "pools">;
}

export interface ListedPart extends DatedPart {
  readonly id: string;
  readonly number: string;
  /** Family or part the days are said of. */
  readonly datesOf: string;
}

/** Units a project takes out of a line on a day. */
export interface RemovalAhead {
  readonly projectCode: string;
  readonly lineCode: string;
  readonly siteCode: string;
  readonly leavesOn: IsoDate;
  readonly units: number;
}

/** A project, and when its benefit is to be checked if it is closed and nobody did yet. */
export interface DatedProject
  extends Pick<ProjectFile, "code" | "name" | "siteCode" | "lineCode" | "status" | "endsOn"> {
  readonly checkOn?: IsoDate;
}

/** Everything with a day at the reader's sites, as known on a day. */
export interface DatesInput {
  readonly asOf: IsoDate;
  readonly lines: readonly DatedLine[];
  readonly parts: readonly ListedPart[];
  readonly obligations: readonly Obligation[];
  readonly projects: readonly DatedProject[];
  readonly removals: readonly RemovalAhead[];
}

/** All days ahead and all that were missed, soonest first: what is overdue stands on top. */
export function datesAhead(input: DatesInput): DateAhead[] {
  const found = [
    ...obligationDates(input),
    ...supplyDates(input),
    ...shelfDates(input),
    ...approvalDates(input),
    ...projectDates(input),
    ...benefitDates(input),
    ...removalDates(input),
  ];
  return found.sort((a, b) => (a.on === b.on ? compare(a.key, b.key) : compare(a.on, b.on)));
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

function obligationDates({ obligations, asOf }: DatesInput): DateAhead[] {
  return obligations
    .filter(({ doneOn }) => doneOn === null)
    .map(({ id, kind, dueOn: on, title: what, siteCode, line }) => ({
      ...{ key: id, kind, on, what, sites: [siteCode], units: null, overdue: on < asOf },
      of: line?.code ?? `${siteCode}, whole site`,
      href: line ? `/lines/${line.code}#binding` : "/dates#binding",
    }));
}

const PART_WORDS = {
  "order-by": "Last day to start the last order in the house",
  "last-order": "Last order at the maker",
  "last-ship": "Last shipment by the maker",
  "repair-end": "Last day a repair is offered",
} as const satisfies Record<PartDateKind, string>;

/** One row for all parts a day is said of together, with the sites that have them installed. */
function supplyDates({ parts, lines, asOf }: DatesInput): DateAhead[] {
  const found = new Map<string, DateAhead>();
  for (const part of parts) {
    const installed = unitsBySite(lines, part.id);
    for (const { kind, on } of partDates(part, asOf)) {
      const key = `${kind}/${on}/${part.datesOf}`;
      const before = found.get(key);
      found.set(key, {
        ...{ key, kind, on, what: PART_WORDS[kind], of: part.datesOf, overdue: on < asOf },
        href: before ? `/parts?parts.q=${encodeURIComponent(part.datesOf)}` : `/parts/${part.id}`,
        sites: [...new Set([...(before?.sites ?? []), ...installed.keys()])].sort(),
        units: (before?.units ?? 0) + [...installed.values()].reduce((sum, units) => sum + units, 0),
      });
    }
  }
  return [...found.values()];
}

function unitsBySite(lines: readonly DatedLine[], poolId: string): Map<string, number> {
  const units = new Map<string, number>();
  for (const { siteCode, result } of lines)
    for (const pool of result.pools)
      if (pool.poolId === poolId) units.set(siteCode, (units.get(siteCode) ?? 0) + pool.units);
  return units;
}

/** The day a shelf that a line depends on is likely empty; that it is today means it is already. */
function shelfDates({ lines, parts, asOf }: DatesInput): DateAhead[] {
  const numbers = new Map(parts.map(({ id, number }) => [id, number]));
  return lines.flatMap(({ code, siteCode, result: { depletionP80: on, depletionPoolId } }): DateAhead[] => {
    if (on === null) return [];
    const part = numbers.get(depletionPoolId ?? "") ?? "a part nobody has read";
    return [
      {
        ...{ key: `shelf-empty/${code}`, kind: "shelf-empty", on, of: code, href: `/lines/${code}` },
        ...{ what: `Shelf of ${part} likely empty, chance 80 %`, sites: [siteCode], units: null },
        overdue: on <= asOf,
      },
    ];
  });
}

/** One row for all costs of a site that one owner has to confirm by one day. */
function approvalDates({ lines, asOf }: DatesInput): DateAhead[] {
  const found = new Map<string, DateAhead & { readonly lines: number }>();
  for (const { code, siteCode, cost } of lines) {
    if (!cost?.approvedOn || cost.validUntil === null || cost.perHour === null) continue;
    const { validUntil: on, owner } = cost;
    const key = `cost-approval/${on}/${siteCode}/${owner}`;
    const before = found.get(key)?.lines ?? 0;
    found.set(key, {
      ...{ key, kind: "cost-approval", on, sites: [siteCode], units: null, lines: before + 1 },
      what: `Approval of what a stop costs ends; ${owner ?? "nobody"} answers for it`,
      of: before === 0 ? code : `${before + 1} lines of ${siteCode}`,
      href: before === 0 ? `/lines/${code}#stop-cost` : `/lines?lines.q=${siteCode}`,
      overdue: on < asOf,
    });
  }
  return [...found.values()].map(({ lines: _, ...date }) => date);
}

function projectDates({ projects, asOf }: DatesInput): DateAhead[] {
  return projects.flatMap(({ code, name, siteCode, status, endsOn: on }): DateAhead[] => {
    if (on === null || status === "closed" || status === "accepted" || status === "parked") return [];
    const plain = { key: `project-end/${code}`, kind: "project-end", on, of: code, units: null } as const;
    return [
      {
        ...plain,
        what: `End of the project ${name}`,
        href: `/projects/${code}`,
        sites: [siteCode],
        overdue: on < asOf,
      },
    ];
  });
}

function benefitDates({ projects, asOf }: DatesInput): DateAhead[] {
  return projects.flatMap(({ code, name, siteCode, checkOn: on }): DateAhead[] => {
    if (on === undefined) return [];
    const plain = { key: `benefit-check/${code}`, kind: "benefit-check", on, of: code, units: null } as const;
    const what = `Check what the project ${name} brought`;
    return [{ ...plain, what, href: `/projects/${code}/benefit`, sites: [siteCode], overdue: on < asOf }];
  });
}

/** Units of one project on one day, all parts together; what should have left already is with the project. */
function removalDates({ removals, asOf }: DatesInput): DateAhead[] {
  const found = new Map<string, DateAhead>();
  for (const { projectCode, lineCode, siteCode, leavesOn: on, units } of removals) {
    if (on < asOf) continue;
    const key = `removal/${on}/${projectCode}`;
    found.set(key, {
      ...{ key, kind: "removal", on, of: projectCode, href: `/projects/${projectCode}` },
      ...{ what: `Units leave ${lineCode}`, sites: [siteCode], overdue: false },
      units: (found.get(key)?.units ?? 0) + units,
    });
  }
  return [...found.values()];
}

const KIND_WORDS: Readonly<Record<DateKind, string>> = {
  safety: obligationWords("safety").name,
  legal: obligationWords("legal").name,
  "order-by": "Order by",
  "last-order": "Last order",
  "last-ship": "Last shipment",
  "repair-end": "Repair ends",
  "shelf-empty": "Shelf empty",
  "cost-approval": "Cost approval",
  removal: "Planned removal",
  "project-end": "Project end",
  "benefit-check": "Benefit check",
};

/** Name of a kind of date. */
export function dateKindName(kind: DateKind): string {
  return KIND_WORDS[kind];
}
