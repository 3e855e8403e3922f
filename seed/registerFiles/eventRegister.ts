import type { RegisterRow } from "@/seed/registerFiles/registerRow";
import { placeOf, type SiteView } from "@/seed/registerFiles/siteView";
import { wallClock } from "@/seed/zonedInstant";

/** A fitter names the axis; only what is not on an axis goes by its own designation. */
const shortPlace = (designation: string): string => designation.split("-")[0] ?? designation;

/** One row a work order or stop, on the site's own clock. */
export function eventRegister(view: SiteView): RegisterRow[] {
  const { site, tables, part, position } = view;
  return tables.Event.filter(({ siteId }) => siteId === site.id).map((event) => {
    const there = position.get(event.positionId ?? "");
    const named = part.get(event.partId ?? "");
    return {
      siteCode: site.code,
      ...placeOf(view, event.machineId),
      position: there ? shortPlace(there.designation) : null,
      maker: named?.maker ?? null,
      partNumber: named?.number ?? null,
      itemClass: event.itemClass,
      kind: event.kind,
      happenedAt: wallClock(event.happenedAt, site.timeZone),
      downtimeHours: event.downtimeHours,
      waitingHours: event.logisticHours,
      spareAtHand: event.spareAtHand,
      source: event.source,
      reference: event.reference,
      text: event.text,
      commonCause: event.commonCause,
      setAside: event.setAside,
    };
  });
}
