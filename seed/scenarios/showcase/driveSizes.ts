import type { RandomStream } from "@/lib/kernel/random";
import { apportion } from "@/seed/scenarios/showcase/apportion";
import type { PlannedAxis } from "@/seed/scenarios/showcase/axes";
import { DRIVE_FAMILIES } from "@/seed/scenarios/showcase/lineTable";

export const SIZES = ["010", "020", "040", "080"] as const;
const SHARES = [25, 40, 25, 10];
/** KAR-02's remaining ring drives are large, so that eleven of its motors can be. */
const KAR_02 = [3, 5, 7, 5];

function spread(counts: readonly number[]): string[] {
  return SIZES.flatMap((size, i) => Array<string>(counts[i] ?? 0).fill(size));
}

/** The size of every drive: 25, 40, 25 and 10 % of each family, exactly. */
export function planSizes(axes: readonly PlannedAxis[], chance: RandomStream): Map<PlannedAxis, string> {
  const sizes = new Map<PlannedAxis, string>();
  for (const family of DRIVE_FAMILIES) {
    const all = axes.filter((axis) => axis.family === family);
    const counts = apportion(all.length, SHARES);
    const fixed = family === "HR" ? all.filter((axis) => axis.machine.line.code === "KAR-02") : [];
    chance.shuffle(spread(KAR_02)).forEach((size, i) => {
      const axis = fixed[i];
      if (axis) sizes.set(axis, size);
    });
    const rest = counts.map((count, i) => count - (fixed.length > 0 ? (KAR_02[i] ?? 0) : 0));
    const shuffled = chance.shuffle(spread(rest));
    for (const axis of all) if (!sizes.has(axis)) sizes.set(axis, shuffled.pop() ?? "020");
  }
  return sizes;
}
