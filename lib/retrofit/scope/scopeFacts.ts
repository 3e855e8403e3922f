import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { ControllerFacts, Rule } from "@/lib/retrofit/compatibility/facts";
import type { Evidence, ItemClass } from "@/lib/risk/evaluation";

/** A part with what an order asks; null is not known. */
export interface PartFact {
  readonly id: string;
  readonly number: string;
  readonly itemClass: ItemClass;
  readonly family: string | null;
  /** EUR. */
  readonly price: number | null;
  readonly pricedOn: IsoDate | null;
  readonly leadWeeks: number | null;
  readonly leadWeeksP80: number | null;
  readonly stage: SupplyStage | null;
}

export interface SuccessorFact {
  readonly partId: string;
  readonly successorId: string;
  readonly condition: string | null;
}

/** An axis as installed; null is not known. */
export interface ScopeAxis {
  readonly id: string;
  readonly lineCode: string;
  readonly machine: string;
  readonly code: string;
  readonly drive: PartFact | null;
  readonly motor: {
    readonly number: string;
    readonly family: string | null;
    readonly powerKw: number | null;
  } | null;
  readonly feedback: string | null;
  /** The fibre ring it is a node of. */
  readonly ring: string | null;
  readonly network: string | null;
  readonly controller: string | null;
  /** The weakest grade among the records. */
  readonly evidence: Evidence;
}

/** Another unit in a machine. */
export interface ScopeItem {
  readonly machine: string;
  readonly itemClass: ItemClass;
  readonly part: PartFact | null;
  readonly controller: string | null;
}

/** Days on which the line stands still; hours null are not known. */
export interface WindowFact {
  readonly id: string;
  readonly name: string;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  readonly usableHours: number | null;
  readonly note: string | null;
}

/** What is known of a line, as far as its retrofit asks. */
export interface ScopeFacts {
  readonly lineCode: string;
  readonly asOf: IsoDate;
  /** Axes of the line, and those of other lines on the same rings. */
  readonly axes: readonly ScopeAxis[];
  readonly items: readonly ScopeItem[];
  readonly controllers: readonly ControllerFacts[];
  readonly rules: readonly Rule[];
  /** Parts that follow others, those they follow, and drives a line may be converted to. */
  readonly parts: readonly PartFact[];
  readonly successors: readonly SuccessorFact[];
}

/** How people say which axis. */
export function axisName({ machine, code }: Pick<ScopeAxis, "machine" | "code">): string {
  return `${machine} / ${code}`;
}
