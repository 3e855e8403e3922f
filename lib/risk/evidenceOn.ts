import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Evidence } from "@/lib/risk/evaluation";

/** How well a cost is said to be known, and the approval it rests on; null is none. */
export interface StatedCost {
  readonly evidence: Evidence;
  readonly approvedOn: IsoDate | null;
  /** Last day of the approval; null has no end. */
  readonly validUntil: IsoDate | null;
}

const WORSE: Readonly<Record<Evidence, Evidence>> = {
  measured: "documented",
  documented: "inferred",
  inferred: "assumed",
  assumed: "assumed",
};

/** How well a cost is known on a day: one step worse than stated once its approval has run out. Own rule, no source. */
export function evidenceOn({ evidence, approvedOn, validUntil }: StatedCost, asOf: IsoDate): Evidence {
  return approvedOn !== null && validUntil !== null && validUntil < asOf ? WORSE[evidence] : evidence;
}
