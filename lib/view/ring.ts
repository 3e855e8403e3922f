import type { IsoDate } from "@/lib/kernel/isoDate";
import { CONTROLLER_END, type RingFinding, type RingRow } from "@/lib/retrofit/ring";
import type { Evidence } from "@/lib/risk/evaluation";
import type { PartLabel } from "@/lib/view/machine";
import { NOT_KNOWN } from "@/lib/view/number";

/** A node of a ring with what the sheet shows of its axis. */
export interface RingSheetRow extends RingRow {
  readonly machineId: string;
  readonly machineCode: string;
  readonly lineCode: string;
  readonly axisCode: string;
  readonly axisName: string | null;
  readonly drive: PartLabel | null;
  /** Number of the communication profile family its drive speaks. */
  readonly driveFamily: number | null;
  readonly controller: string | null;
  readonly evidence: Evidence;
}

/** The record of one ring on a day. */
export interface RingSheet {
  readonly asOf: IsoDate;
  readonly id: string;
  readonly name: string;
  /** Number of its communication profile family; null is not known. */
  readonly profileFamily: number | null;
  readonly site: { readonly id: string; readonly code: string; readonly name: string };
  /** Nodes of machines in service. */
  readonly rows: readonly RingSheetRow[];
  /** Nodes left out, since their machines were retired. */
  readonly outOfService: number;
}

/** A finding in words: what is wrong and what to look at. */
export function findingWords(finding: RingFinding): string {
  switch (finding.kind) {
    case "gap":
      return finding.from === finding.to
        ? `Place ${finding.from}: no node is recorded.`
        : `Places ${finding.from} to ${finding.to}: no node is recorded.`;
    case "place-doubled":
      return `Place ${finding.place} is recorded for ${finding.labels.join(" and ")}; only one of them can be there.`;
    case "address-doubled":
      return `Address ${finding.address} is recorded for ${finding.labels.join(" and ")}; no two nodes of a ring share one.`;
    case "order":
      return `${finding.label} stands after ${finding.after} but has the lower address: neighbours may be recorded the wrong way round. Trace the fibre.`;
    case "not-placed":
      return `${finding.label}: place in the light path not known.`;
    case "address-unknown":
      return `${finding.label}: address not known.`;
  }
}

/** A neighbour in words. */
export function neighbourWords(neighbour: string | null): string {
  if (neighbour === null) return NOT_KNOWN;
  return neighbour === CONTROLLER_END ? "the controller" : neighbour;
}

/** The machines and controllers a ring ties together, each once. */
export function tiedTogether(rows: readonly RingSheetRow[]): {
  readonly machines: readonly string[];
  readonly controllers: readonly string[];
} {
  const once = (names: readonly string[]) => [...new Set(names)].sort();
  return {
    machines: once(rows.map(({ lineCode, machineCode }) => `${lineCode} / ${machineCode}`)),
    controllers: once(rows.flatMap(({ controller }) => (controller === null ? [] : [controller]))),
  };
}

/** The lines a ring passes through. */
export function linesOfRing(rows: readonly RingSheetRow[]): string[] {
  return [...new Set(rows.map(({ lineCode }) => lineCode))].sort();
}
