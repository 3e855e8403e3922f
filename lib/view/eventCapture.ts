import type { ItemClass } from "@/lib/risk/evaluation";
import type { StockState } from "@/lib/spares/usableCount";

export interface EventPlace {
  readonly id: string;
  /** Axis and designation, e.g. "A03 -T1". */
  readonly label: string;
  readonly itemClass: ItemClass;
  /** Part of the unit there, else the one that belongs there; null is not identified. */
  readonly part: string | null;
  readonly serial: string | null;
}

export interface SpareLot {
  readonly id: string;
  readonly bin: string;
  readonly revision: string;
  readonly state: StockState;
  /** Null is not counted. */
  readonly quantity: number | null;
}

export interface EventPlaces {
  readonly lines: readonly { readonly code: string; readonly name: string }[];
  readonly machines: readonly { readonly code: string; readonly name: string }[];
  readonly places: readonly EventPlace[];
  readonly spares: readonly SpareLot[];
}

const KINDS = {
  failure: "It failed",
  no_fault_found: "Taken out, no fault found in it",
  removal: "Taken out, cause not known yet",
} as const;

export const eventKinds = Object.entries(KINDS).map(([value, label]) => ({ value, label }));

export const unitFates = [
  { value: "repair", label: "Goes to repair" },
  { value: "shelf", label: "Goes to the shelf, not tested" },
  { value: "scrap", label: "Beyond repair" },
] as const;

/** A place in one line: what it is, which part and which serial. */
export function placeWords({ label, part, serial }: EventPlace): string {
  return `${label} – ${part ?? "part not identified"}${serial === null ? "" : `, serial ${serial}`}`;
}

/** A lot in one line. */
export function spareWords({ bin, revision, state, quantity }: SpareLot): string {
  const pieces = quantity === null ? "not counted" : `${quantity} there`;
  return `${bin}${revision === "" ? "" : ` ${revision}`}, ${state.replaceAll("_", " ")}, ${pieces}`;
}
