import type { JudgedController } from "@/lib/retrofit/compatibility";
import type { Norm } from "@/lib/retrofit/costNorm";
import type { AxisScope, MotorFit } from "@/lib/retrofit/scope/axisScope";
import { controllerCounts, strandedRacks } from "@/lib/retrofit/scope/controllerScope";
import type { ScopeFacts, ScopeItem } from "@/lib/retrofit/scope/scopeFacts";
import { sum } from "@/lib/retrofit/scope/spread";

/** How much of everything is touched; what nobody knows lies between the low and the high end. */
export interface ScopeCounts {
  readonly axes: number;
  readonly machines: number;
  readonly swapped: Norm;
  readonly raised: Norm;
  /** Motors that stay with an adapter; one not known is taken so in the typical case. */
  readonly adapters: Norm;
  /** Motors to be sized anew; one not known counts in the high end only. */
  readonly motors: Norm;
  readonly racks: Norm;
  readonly panels: number;
}

const ENDED: readonly string[] = ["orders-shut", "repair-fed", "own-stock"];

/** Units in the machines of converted axes that cannot be ordered any more. */
export function endedItems(
  facts: ScopeFacts,
  axes: readonly AxisScope[],
  itemClass: ScopeItem["itemClass"],
): ScopeItem[] {
  const machines = new Set(axes.map(({ axis }) => axis.machine));
  return facts.items.filter(
    (item) =>
      item.itemClass === itemClass && machines.has(item.machine) && ENDED.includes(item.part?.stage ?? ""),
  );
}

/** Counts what the converted axes and their controllers bring with them. */
export function countScope(
  facts: ScopeFacts,
  axes: readonly AxisScope[],
  controllers: readonly JudgedController[],
): ScopeCounts {
  const motors = (fit: MotorFit) => axes.filter(({ motor }) => motor.fit === fit).length;
  const [adapter, sizing, unknown] = [motors("adapter"), motors("sizing"), motors("unknown")];
  const { swapped, raised } = controllerCounts(controllers);
  const bare = new Set(axes.flatMap(({ axis }) => (axis.controller === null ? [axis.machine] : []))).size;
  return {
    axes: axes.length,
    machines: new Set(axes.map(({ axis }) => axis.machine)).size,
    // A machine whose controller nobody recorded has one all the same.
    swapped: sum([swapped, [0, bare, bare]]),
    raised,
    // The high end carries both for a motor not known, so that no end lies above the next.
    adapters: [adapter, adapter + unknown, adapter + unknown],
    motors: [sizing, sizing, sizing + unknown],
    racks: strandedRacks(facts, controllers),
    panels: endedItems(facts, axes, "hmi").length,
  };
}
