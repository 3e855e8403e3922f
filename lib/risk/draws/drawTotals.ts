import { type Vector, valueAt } from "@/lib/risk/draws/drawing";
import type { LossSpan } from "@/lib/risk/draws/linePlace";
import { spanOf } from "@/lib/risk/draws/spanOf";
import type { LineInput } from "@/lib/risk/evaluation";

/** Stop loss summed draw by draw, EUR a year, over the lines with a cost per hour. */
export interface DrawnTotals {
  /** Null when no line has a cost per hour. */
  readonly group: LossSpan | null;
  /** By site id; a site without such a line is left out. */
  readonly sites: Readonly<Record<string, LossSpan>>;
}

function addTo(sum: Vector | undefined, loss: Vector): Vector {
  if (!sum) return loss.slice();
  for (let draw = 0; draw < sum.length; draw += 1) sum[draw] = valueAt(sum, draw) + valueAt(loss, draw);
  return sum;
}

/**
 * Spans of the summed losses of the group and of each site.
 *
 * The lines of a draw are added before the points are taken, so what the lines share moves them together and what is
 * each one's own evens out: narrower than all lines at one end at once, wider than lines apart from each other.
 */
export function drawTotals(
  lines: readonly Pick<LineInput, "id" | "siteId">[],
  losses: ReadonlyMap<string, Vector>,
): DrawnTotals {
  let group: Vector | undefined;
  const sites = new Map<string, Vector>();
  for (const { id, siteId } of lines) {
    const loss = losses.get(id);
    if (!loss) continue;
    group = addTo(group, loss);
    sites.set(siteId, addTo(sites.get(siteId), loss));
  }
  return {
    group: group ? spanOf(group) : null,
    sites: Object.fromEntries([...sites].map(([siteId, loss]) => [siteId, spanOf(loss)])),
  };
}
