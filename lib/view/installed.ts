import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Evidence } from "@/lib/risk/evaluation";
import { count, plainNumber } from "@/lib/view/number";

/** How many places are known how well. */
export type EvidenceCounts = Readonly<Record<Evidence, number>>;

/** A site, line or machine of the installed map, counted on a day. */
export interface InstalledRow {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly lines: number;
  readonly machines: number;
  readonly axes: number;
  /** Cabinets on record. */
  readonly panels: number;
  readonly places: number;
  /** Places in no panel known. */
  readonly unplaced: number;
  /** Places whose part nobody has read. */
  readonly unidentified: number;
  /** Places with a unit on record, by serial number. */
  readonly units: number;
  readonly evidence: EvidenceCounts;
  /** The last change of a unit on record; null is none. */
  readonly lastChangeOn: IsoDate | null;
  /** The oldest reading among the controllers; null is none read. */
  readonly readSince: IsoDate | null;
  readonly controllersUnread: number;
}

/** What the map shows: the sites, the lines of one, or the machines of a line. */
export type InstalledLevel =
  | { readonly of: "group" }
  | { readonly of: "site"; readonly code: string }
  | { readonly of: "line"; readonly code: string };

/** The whole the rows are parts of; null codes are the group's. */
export interface InstalledMap {
  readonly level: InstalledLevel["of"];
  /** Steps from the group down to what is shown. */
  readonly site: { readonly code: string; readonly name: string } | null;
  readonly line: { readonly code: string; readonly name: string } | null;
  readonly rows: readonly InstalledRow[];
}

/** Reads the map's address: a line before a site. */
export function readInstalledLevel(params: {
  readonly site?: string;
  readonly line?: string;
}): InstalledLevel {
  if (params.line) return { of: "line", code: params.line };
  return params.site ? { of: "site", code: params.site } : { of: "group" };
}

const NOUNS = { group: "sites", site: "lines", line: "machines" } as const;

/** What the rows of a level are. */
export function installedNoun(level: InstalledLevel["of"]): (typeof NOUNS)[keyof typeof NOUNS] {
  return NOUNS[level];
}

/** Where a row leads: a site to its lines, a line to its machines, a machine to its page. */
export function installedHref(level: InstalledLevel["of"], { id, code }: InstalledRow): string {
  if (level === "line") return `/machines/${id}`;
  return `/installed?${level === "group" ? "site" : "line"}=${encodeURIComponent(code)}`;
}

/** Share of the places whose part is measured or documented, 0 to 1; null without a place. */
export function knownShare({ evidence, places }: Pick<InstalledRow, "evidence" | "places">): number | null {
  return places === 0 ? null : (evidence.measured + evidence.documented) / places;
}

/** Sums of a map's rows. */
export function installedTotals(rows: readonly InstalledRow[]): {
  readonly machines: number;
  readonly axes: number;
  readonly places: number;
  readonly unidentified: number;
} {
  const sum = (of: (row: InstalledRow) => number) => rows.reduce((total, row) => total + of(row), 0);
  return {
    machines: sum(({ machines }) => machines),
    axes: sum(({ axes }) => axes),
    places: sum(({ places }) => places),
    unidentified: sum(({ unidentified }) => unidentified),
  };
}

/** The map's title: whose installed base it is. */
export function installedTitle({ site, line }: InstalledMap): string {
  if (line) return `Installed on ${line.code} ${line.name}`;
  return site ? `Installed at ${site.code} ${site.name}` : "Installed";
}

/** The map in one sentence. */
export function installedLead({ rows }: InstalledMap): string {
  const { machines, axes, places, unidentified } = installedTotals(rows);
  const read = unidentified === 0 ? "each identified" : `${plainNumber(unidentified)} not identified`;
  return `${count(machines, "machine")} with ${count(axes, "axis", "axes")} and ${count(places, "place")} for an item, ${read}.`;
}
