import type { IsoDate } from "@/lib/kernel/isoDate";
import type {
  CloseFacts,
  CloseItem,
  CloseStatementKind,
  CloseTopic,
  ReleaseResult,
} from "@/lib/projects/closeOut";

import type { ProjectHead } from "@/lib/view/projectHead";

/** A unit the project took out. */
export interface RemovedRow {
  readonly id: string;
  readonly version: number;
  readonly partId: string;
  readonly part: string;
  readonly serial: string;
  readonly revision: string;
  readonly positionId: string | null;
  readonly place: string | null;
  readonly removedOn: IsoDate;
  readonly result: ReleaseResult | null;
  readonly testedBy: string;
  readonly how: string;
  readonly testedOn: IsoDate | null;
  readonly bin: string;
}

/** A unit the project put in. */
export interface FittedRow {
  readonly id: string;
  readonly version: number;
  readonly partId: string;
  readonly part: string;
  readonly serial: string;
  readonly revision: string;
  readonly firmware: string;
  readonly positionId: string;
  readonly place: string;
  readonly added: boolean;
  readonly fittedOn: IsoDate;
  /** Whether it stands there in the installed base already. */
  readonly inBase: boolean;
}

export interface DrivePlace {
  readonly id: string;
  readonly name: string;
  readonly part: string | null;
}

export interface StatementRow {
  readonly kind: CloseStatementKind;
  readonly statedBy: string;
  readonly statedOn: IsoDate;
  readonly note: string;
}

/** What a closing rests on, with the rows behind it. */
export interface CloseFile {
  readonly facts: CloseFacts;
  readonly removed: readonly RemovedRow[];
  readonly fitted: readonly FittedRow[];
  /** Drive places of the project's axes. */
  readonly places: readonly DrivePlace[];
  readonly statements: readonly StatementRow[];
  /** Versions of the removed and fitted units added up. */
  readonly seen: number;
}

/** A project with everything its closing rests on. */
export interface ProjectClose extends ProjectHead, CloseFile {
  readonly closing: ClosingRow | null;
}

/** When and by whom a project was closed, and how far the check of its benefit is. */
export interface ClosingRow {
  readonly closedOn: IsoDate;
  readonly closedBy: string;
  readonly checkOn: IsoDate;
  readonly checkedOn: IsoDate | null;
  readonly checkedBy: string | null;
  readonly conclusion: string | null;
  /** Pieces booked onto the shelf and places that got a new unit. */
  readonly pieces: number;
  readonly places: number;
}

interface TopicWords {
  readonly title: string;
  /** What is looked at, in words that follow a number. */
  readonly of: string;
}

const TOPICS: Readonly<Record<CloseTopic, TopicWords>> = {
  axes: { title: "Every axis is accepted", of: "axes of the project" },
  safety: { title: "Safety checks carry two different names", of: "axes of the project" },
  standing: { title: "What was to leave has left", of: "parts planned to leave" },
  fitted: { title: "New units are recorded with serial and firmware", of: "drive places" },
  accounted: { title: "Of each place it is known what became of the old unit", of: "drive places" },
  removed: { title: "Removed units are tested and have a place to go", of: "removed units" },
  backups: { title: "A copy from after the tuning is kept", of: "controllers" },
  register: { title: "The register is up to date", of: "statement" },
  drawings: { title: "The drawings show what was built", of: "statement" },
  levels: { title: "Minimum and maximum of old and new parts are set", of: "statement" },
  points: { title: "No open point is in the way", of: "open points on record" },
  money: { title: "No order is left open without a word", of: "orders not invoiced" },
  gates: { title: "Every gate is passed", of: "gates" },
};

/** What a topic is called, and what it looks at. */
export const closeTopicWords = (topic: CloseTopic): TopicWords => TOPICS[topic];

interface Place {
  readonly code: string;
  readonly topic: CloseTopic;
  /** Record that is lacking; null is none. */
  readonly id: string | null;
}

/** Where a lack is mended: a page, or a part of the page of the close-out. */
export function mendAt({ code, topic, id }: Place): string {
  const project = `/projects/${encodeURIComponent(code)}`;
  switch (topic) {
    case "axes":
    case "safety":
      return id === null ? `${project}/axes` : `${project}/axes/${id}`;
    case "backups":
      return id === null ? "/installed" : `/machines/${id}`;
    case "points":
      return `${project}/points`;
    case "money":
      return `${project}/money`;
    case "gates":
      return `${project}/schedule`;
    case "levels":
      return "/levels";
    case "standing":
    case "fitted":
      return "#fitted";
    case "accounted":
    case "removed":
      return "#removed";
    case "register":
    case "drawings":
      return "#statements";
    default:
      return topic satisfies never;
  }
}

/** Why a project cannot be closed, topic by topic, in one text; empty when nothing is missing. */
export function refusalWords(items: readonly CloseItem[]): string {
  return items
    .flatMap(({ topic, missing }) => {
      const [first] = missing;
      if (!first) return [];
      const more = missing.length > 1 ? ` And ${missing.length - 1} more.` : "";
      return [`${TOPICS[topic].title}: ${first.text}${more}`];
    })
    .join(" ");
}

/** What people call a result. */
export const RESULT_WORDS: Readonly<Record<ReleaseResult, string>> = {
  usable: "usable",
  unproven: "unproven",
  needs_repair: "needs repair",
  scrapped: "scrapped",
};

/** What people answer for by name. */
export const STATEMENT_WORDS: Readonly<Record<CloseStatementKind, string>> = {
  register: "The register of machines, axes and units is up to date",
  drawings: "Drawings and parts lists show what was built",
  levels: "Minimum and maximum of the old and the new parts are set",
  commitments: "Orders not invoiced may stay open, for the reason given",
  no_axes: "No axis belongs to this project",
  none_removed: "Nothing was taken out",
};

export interface ReleaseCount {
  readonly part: string;
  readonly usable: number;
  readonly unproven: number;
  readonly needsRepair: number;
  readonly scrapped: number;
  readonly untested: number;
}

/** Removed units by part and by what their test said. */
export function releaseCounts(removed: readonly RemovedRow[]): ReleaseCount[] {
  const found = new Map<string, RemovedRow[]>();
  for (const row of removed) found.set(row.part, [...(found.get(row.part) ?? []), row]);
  const count = (rows: readonly RemovedRow[], result: ReleaseResult | null) =>
    rows.filter((row) => row.result === result).length;
  return [...found].map(([part, rows]) => ({
    ...{ part, usable: count(rows, "usable"), unproven: count(rows, "unproven") },
    ...{ needsRepair: count(rows, "needs_repair"), scrapped: count(rows, "scrapped") },
    untested: count(rows, null),
  }));
}

/** The sentence the page begins with. */
export function closeLead(items: readonly CloseItem[], closing: ClosingRow | null): string {
  if (closing !== null) return "The project is closed; below is what its closing rested on.";
  const open = items.filter(({ missing }) => missing.length > 0).length;
  if (open === 0) return `All ${items.length} conditions are in order: the project may be closed.`;
  const are = open === 1 ? "1 condition is" : `${open} conditions are`;
  return `${are} not met, of ${items.length}: the project cannot be closed yet.`;
}
