import type { Norm } from "@/lib/retrofit/costNorm";
import type { AxisScope } from "@/lib/retrofit/scope/axisScope";
import type { PartFact } from "@/lib/retrofit/scope/scopeFacts";
import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { times } from "@/lib/retrofit/scope/spread";

/** Drives a conversion sets free; `part` null is not identified. */
export interface ReleasedPart {
  readonly part: PartFact | null;
  readonly units: number;
  /** Of these, enough to pass a test: an expectation, not a count. */
  readonly usable: Norm;
}

/** The drives that come out, by part. */
export function releasedParts(axes: readonly AxisScope[], { spans }: ScopeNorms): ReleasedPart[] {
  const byId = new Map<string, { part: PartFact | null; units: number }>();
  for (const { axis } of axes) {
    const key = axis.drive?.id ?? "";
    byId.set(key, { part: axis.drive, units: (byId.get(key)?.units ?? 0) + 1 });
  }
  return [...byId.values()]
    .map(({ part, units }) => ({ part, units, usable: times(spans.releasedUsable, units) }))
    .sort((a, b) => ((a.part?.number ?? "~") < (b.part?.number ?? "~") ? -1 : 1));
}
