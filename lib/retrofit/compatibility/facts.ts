import type { IsoDate } from "@/lib/kernel/isoDate";
import type { FirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import type { Evidence } from "@/lib/risk/evaluation";
import type { RuleKind, RuleTerms } from "@/lib/schema/compatibilityRule";

/** A rule in force. */
export type Rule = {
  readonly [K in RuleKind]: {
    readonly code: string;
    readonly version: number;
    readonly kind: K;
    readonly terms: RuleTerms[K];
    readonly evidence: Evidence;
  };
}[RuleKind];

export type RuleOf<K extends RuleKind> = Extract<Rule, { kind: K }>;

/** Axes of a controller that are alike in everything a rule asks for; null is not known. */
export interface AxisGroup {
  readonly axes: number;
  /** Family of the drive in place. */
  readonly drive: string | null;
  /** Families that may replace the drive. */
  readonly targets: readonly string[];
  readonly motor: string | null;
  readonly powerKw: number | null;
  readonly feedback: string | null;
  /** The weakest grade among the records the group rests on. */
  readonly evidence: Evidence;
}

/** A controller and what hangs on it, as far as rules ask. */
export interface ControllerFacts {
  readonly designation: string;
  readonly model: string;
  readonly level: FirmwareLevel;
  /** Hardware letter and level, e.g. C2; null is not known. */
  readonly hardware: string | null;
  /** Axes it can drive at most, as recorded of it; null is not known. */
  readonly axisLimit: number | null;
  /** Axes it drives on all its machines, of other lines too; null while one of them has no axis on record. */
  readonly axesInAll: number | null;
  /** Memory used, percent; null is not known. */
  readonly memoryPercent: number | null;
  readonly evidence: Evidence;
  readonly readOn: IsoDate | null;
  /** Whether it is recorded as the line's leading controller. */
  readonly leads: boolean;
  readonly groups: readonly AxisGroup[];
  /** Bus cards by family and hardware revision. */
  readonly cards: readonly {
    readonly family: string;
    readonly revision: string | null;
    readonly evidence: Evidence;
  }[];
  /** Racks of inputs and outputs by family. */
  readonly racks: readonly { readonly family: string; readonly pieces: number }[];
  /** Rings with axes of this controller; `elsewhere` are axes of the same ring on other controllers. */
  readonly rings: readonly { readonly name: string; readonly axes: number; readonly elsewhere: number }[];
}

/** Axes the controller drives. */
export function axesOf({ groups }: Pick<ControllerFacts, "groups">): number {
  return groups.reduce((sum, { axes }) => sum + axes, 0);
}
