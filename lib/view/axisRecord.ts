import type { IsoDate } from "@/lib/kernel/isoDate";
import { type JudgedAxis, judgeAxis } from "@/lib/retrofit/judgeAxis";
import type { CheckEntry, CheckVerdict } from "@/lib/retrofit/judgeCheck";
import type { Evidence } from "@/lib/risk/evaluation";
import type { AxisFacts } from "@/lib/schema/axisFacts";
import type { TypedEntry } from "@/lib/schema/axisRecord";

export interface StoredEntry extends CheckEntry {
  readonly version: number;
}

/** An axis of the line a project retrofits, with what its record holds. */
export interface AxisInProject {
  readonly id: string;
  readonly code: string;
  readonly name: string | null;
  readonly machineCode: string;
  readonly machineName: string;
  readonly network: string | null;
  readonly nodeAddress: number | null;
  readonly feedback: string | null;
  readonly travelUnit: string | null;
  readonly evidence: Evidence;
  /** As recorded in the register; null is not known. */
  readonly scaling: {
    readonly countsPerRev: number | null;
    readonly motorRevs: number | null;
    readonly loadRevs: number | null;
    readonly unitsPerLoadRev: number | null;
  };
  readonly countsPerUnit: number | null;
  /** Cables, travel and homing, as recorded in the register. */
  readonly facts: AxisFacts;
  /** By check. */
  readonly entries: Readonly<Record<string, StoredEntry>>;
  readonly acceptedOn: IsoDate | null;
  readonly acceptedBy: string | null;
}

export interface AxisFile extends AxisInProject {
  readonly projectId: string;
  readonly projectCode: string;
  readonly projectName: string;
  readonly siteId: string;
  readonly lineCode: string;
  readonly lineName: string;
}

export interface AxisState extends JudgedAxis {
  readonly words: string;
  readonly failed: number;
}

/** How far the record of an axis is. */
export function axisState(axis: Pick<AxisInProject, "entries" | "acceptedOn">): AxisState {
  const judged = judgeAxis(axis.entries);
  const failed = judged.checks.filter(({ verdict }) => verdict.state === "failed").length;
  return { ...judged, failed, words: wordsOf(axis, { ...judged, failed }) };
}

function wordsOf(
  { entries, acceptedOn }: Pick<AxisInProject, "entries" | "acceptedOn">,
  { failed, hindrances }: { failed: number; hindrances: readonly string[] },
): string {
  if (acceptedOn !== null) return "● accepted";
  if (Object.keys(entries).length === 0) return "◌ not begun";
  if (failed > 0) return `▲ ${failed} not passed`;
  return hindrances.length === 0 ? "◐ ready to accept" : `○ ${hindrances.length} open`;
}

const MARKS = { passed: "●", failed: "▲", missing: "○", "not-applicable": "–" } as const;
const WORDS = {
  passed: "passed",
  failed: "not passed",
  missing: "open",
  "not-applicable": "not for this axis",
} as const;

/** The verdict in a mark and a word. */
export function verdictWords({ state }: Pick<CheckVerdict, "state">): string {
  return `${MARKS[state]} ${WORDS[state]}`;
}

const typed = (value: number | null) => (value === null ? "" : String(value));

/** A stored check as a form holds it; one never written starts with the record's own value. */
export function typedEntry(entry: CheckEntry, recorded: number | null): TypedEntry {
  const { confirmed, notApplicable, instrument, by, witness } = entry;
  return {
    ...{ notApplicable, instrument, by, witness },
    asFound: typed(entry.asFound ?? recorded),
    limit: typed(entry.limit),
    asLeft: entry.asLeft.map(String).join(" "),
    confirmed: confirmed === null ? "" : confirmed ? "yes" : "no",
    on: entry.on ?? "",
  };
}

/** What the register knows of a check's value before removal; null is nothing. */
export function recordedValue(checkId: string, axis: AxisInProject): number | null {
  if (checkId === "counts") return axis.scaling.countsPerRev;
  return checkId === "scaling" ? axis.countsPerUnit : null;
}
