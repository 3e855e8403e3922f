import type { Assumptions } from "@/lib/risk/assumptions";
import type { ItemClass } from "@/lib/risk/evaluation";
import { type DowntimeRow, downtimeTable } from "@/lib/view/downtimeTable";
import type { LineEvent } from "@/lib/view/lineDossier";
import { itemClassName } from "@/lib/view/linePart";

/** Stops of one class of items on a line. */
export interface ClassDowntime {
  readonly label: string;
  readonly rows: readonly DowntimeRow[];
}

/**
 * The recorded stops of a line by class, that with most stops first.
 *
 * The belief without a spare hangs on each part's own supply; it stands on the part's page, not here.
 */
export function lineDowntime(events: readonly LineEvent[], assumptions: Assumptions): ClassDowntime[] {
  const classes = [...new Set(events.map(({ itemClass }) => itemClass))];
  return classes
    .map((itemClass) => ({
      label: itemClass === null ? "class not recorded" : itemClassName(itemClass),
      rows: downtimeTable(
        events.filter((event) => event.itemClass === itemClass),
        { withSpare: beliefOf(itemClass, assumptions), withoutSpare: null },
      ).filter(({ stops }) => stops > 0),
    }))
    .filter(({ rows }) => rows.length > 0)
    .sort((a, b) => stopsOf(b) - stopsOf(a) || (a.label < b.label ? -1 : 1));
}

function beliefOf(itemClass: ItemClass | null, { classes }: Assumptions) {
  return itemClass === null ? null : classes[itemClass].withSpare;
}

const stopsOf = ({ rows }: ClassDowntime) => rows.reduce((sum, { stops }) => sum + stops, 0);
