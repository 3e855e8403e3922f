import type { Evidence } from "@/lib/risk/evaluation";
import type { RuleKind } from "@/lib/schema/compatibilityRule";

export interface CompatibilityRuleRow {
  readonly id: string;
  readonly code: string;
  readonly version: number;
  readonly kind: RuleKind;
  /** JSON text. */
  readonly terms: string;
  readonly note: string;
  readonly source: string;
  readonly evidence: Evidence;
  /** RFC 3339 instant in UTC. */
  readonly changedAt: string;
  readonly changedBy: string;
}
