import type { Evidence } from "@/lib/risk/evaluation";
import type { AxisFacts } from "@/lib/schema/axisFacts";
import { type NetworkKind, networkKinds, type PartLabel } from "@/lib/view/machine";

/** One axis of the list. */
export interface ListedAxis extends AxisFacts {
  readonly id: string;
  readonly machineId: string;
  readonly siteCode: string;
  readonly lineCode: string;
  readonly machineCode: string;
  readonly axisCode: string;
  readonly axisName: string | null;
  readonly drive: PartLabel | null;
  readonly family: string | null;
  readonly motor: PartLabel | null;
  readonly network: string | null;
  readonly networkKind: NetworkKind | null;
  readonly nodeAddress: number | null;
  readonly ringOrder: number | null;
  /** Number of the network's communication profile family. */
  readonly profileFamily: number | null;
  /** Designation of the panel its drive stands in; null is not known. */
  readonly panel: string | null;
  readonly feedback: string | null;
  readonly countsPerUnit: number | null;
  readonly inServiceYear: number | null;
  readonly evidence: Evidence;
}

/** A page of the list, and what to ask for the next one with; null is the last page. */
export interface AxisPage {
  readonly axes: readonly ListedAxis[];
  readonly next: string | null;
}

export const AXIS_SORTS = ["place", "year", "network", "feedback", "evidence"] as const;
export type AxisSort = (typeof AXIS_SORTS)[number];

/** What is asked of the list; null chooses nothing. */
export interface AxisFilter {
  readonly site: string | null;
  readonly line: string | null;
  readonly family: string | null;
  /** `none` is no network recorded. */
  readonly network: NetworkKind | "none" | null;
  readonly evidence: Evidence | null;
  /** Designation of a panel; `NO_PANEL` is none recorded. */
  readonly panel: string | null;
  /** Every word of it must stand somewhere in the axis's names, network or feedback. */
  readonly text: string;
  readonly sort: AxisSort;
  readonly descending: boolean;
}

const EVIDENCES: readonly Evidence[] = ["measured", "documented", "inferred", "assumed"];
/** What the list is asked for axes whose panel nobody recorded; no designation has a space. */
export const NO_PANEL = "not recorded";

const LONGEST_TEXT = 100;

/** Reads the list's address; what cannot be read chooses nothing. */
export function readAxisFilter(params: { get(name: string): string | null }): AxisFilter {
  const [, key, direction] = /^(\w+)\.(asc|desc)$/.exec(params.get("axes.sort") ?? "") ?? [];
  const of = <Word extends string>(name: string, words: readonly Word[]): Word | null =>
    words.find((word) => word === params.get(name)) ?? null;
  return {
    site: params.get("site") || null,
    line: params.get("line") || null,
    family: params.get("family") || null,
    network: of("network", [...networkKinds, "none"]),
    evidence: of("evidence", EVIDENCES),
    panel: params.get("panel") || null,
    text: (params.get("q") ?? "").slice(0, LONGEST_TEXT),
    sort: AXIS_SORTS.find((sort) => sort === key) ?? "place",
    descending: direction === "desc",
  };
}
