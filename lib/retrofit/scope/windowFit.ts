import type { Norm } from "@/lib/retrofit/costNorm";
import type { ScopeCounts } from "@/lib/retrofit/scope/scopeCounts";
import type { WindowFact } from "@/lib/retrofit/scope/scopeFacts";
import { personsAtWork, type ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { enoughInFourOfFive, sum, times } from "@/lib/retrofit/scope/spread";

/** Work that can only be done while the line stands still. */
export interface WindowWork {
  /** Person-hours of taking out and fitting, of commissioning and of validation. */
  readonly install: Norm;
  readonly commissioning: Norm;
  readonly validation: Norm;
  /** Clock hours with the crews at work. */
  readonly clock: Norm;
  /** Clock hours that are enough four times in five. */
  readonly planned: number;
  /** The same in working days. */
  readonly days: number;
}

export interface WindowFit {
  readonly state: "fits" | "short" | "unknown";
  /** Hours of the window, and the share of them that may be planned; null is not known. */
  readonly usable: number | null;
  readonly plannable: number | null;
  readonly usableDays: number | null;
  /** Hours left over, negative when short. */
  readonly left: number | null;
}

/**
 * Clock hours a conversion takes from a window: person-hours on site over the persons at work.
 *
 * All low, typical or high together, so the span is wide; planned with what is enough four times in five.
 */
export function windowWork({ axes, machines }: ScopeCounts, norms: ScopeNorms): WindowWork {
  const { spans, plain } = norms;
  const install = times(spans.installPerAxis, axes);
  const commissioning = times(spans.commissioningPerAxis, axes);
  const validation = times(spans.validationPerMachine, machines);
  const clock = times(sum([install, commissioning, validation]), 1 / personsAtWork(norms));
  const planned = enoughInFourOfFive(clock);
  return { install, commissioning, validation, clock, planned, days: planned / plain.hoursPerDay };
}

/** Holds the work against a window: planned hours ≤ share × usable hours. */
export function fitWindow(work: WindowWork, { usableHours }: WindowFact, { plain }: ScopeNorms): WindowFit {
  if (usableHours === null)
    return { state: "unknown", usable: null, plannable: null, usableDays: null, left: null };
  const plannable = plain.windowShare * usableHours;
  return {
    state: work.planned <= plannable ? "fits" : "short",
    ...{ usable: usableHours, plannable, usableDays: usableHours / plain.hoursPerDay },
    left: plannable - work.planned,
  };
}
