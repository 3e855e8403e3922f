/** What is wrong with a record: it is not there, it has aged, it speaks against another, or it was guessed. */
export type GapKind = "missing" | "old" | "contradictory" | "guessed";

/** What a gap is counted in. */
export type GapSubject = "line" | "controller" | "axis" | "place" | "lot" | "event" | "part" | "name";

/** How a gap bears on the loss. */
export type GapBearing =
  /** The loss of the lines concerned rests on it. */
  | "line"
  /** The loss of the parts concerned rests on it. */
  | "part"
  /** As `part`, and the evaluation says what of the loss would go were it found at its best. */
  | "unknown"
  /** No figure of the loss reads it, or the loss cannot be told because of it. */
  | "none";

/** Every gap the product looks for, by what it is found in. */
export const GAP_KEYS = [
  "cost-missing",
  "cost-unowned",
  "cost-expired",
  "buffer-missing",
  "line-bare",
  "contact-missing",
  "firmware-unknown",
  "controller-old",
  "backup-missing",
  "backup-untried",
  "axis-driveless",
  "axis-motorless",
  "axis-unnumbered",
  "place-unread",
  "place-assumed",
  "unit-unread",
  "serial-twice",
  "place-other",
  "lot-uncounted",
  "count-old",
  "power-unknown",
  "lot-unproven",
  "origin-unknown",
  "event-partless",
  "event-hourless",
  "event-aside",
  "supply-undated",
  "price-missing",
  "price-old",
  "lead-missing",
  "name-unmatched",
] as const;
export type GapKey = (typeof GAP_KEYS)[number];
