import "server-only";
import type { SetInUse } from "@/lib/data/group/assumptionsInUse";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Assumptions } from "@/lib/risk/assumptions";
import { ENGINE } from "@/lib/risk/evaluate";
import type { AssumptionChoice } from "@/lib/schema/assumptions";

/** Which rows a page reads, and on what they were computed. */
export interface EvaluationMark {
  readonly id: string;
  readonly asOf: IsoDate;
  readonly dataVersion: number;
  readonly engine: string;
  /** Set of assumptions in use, and its values. */
  readonly assumptionSet: AssumptionChoice;
  readonly assumptions: Assumptions;
}

/** How an evaluation made by this version of the computation came about. */
export function ways({ kind, version, values }: SetInUse) {
  return { engine: ENGINE, assumptionSet: { kind, version }, assumptions: values };
}
