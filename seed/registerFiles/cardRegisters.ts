import type { RegisterRow } from "@/seed/registerFiles/registerRow";
import type { SiteView } from "@/seed/registerFiles/siteView";

/** One row a copy of a controller. */
export function backupRegister({ site, tables, controller }: SiteView): RegisterRow[] {
  return tables.Backup.flatMap(({ controllerId, kind, takenOn, keptAt, verifiedOn, sourceAvailable }) => {
    const of = controller.get(controllerId);
    if (of?.siteId !== site.id) return [];
    return [
      {
        ...{ siteCode: site.code, controllerDesignation: of.designation, kind },
        ...{ takenOn, keptAt, verifiedOn, sourceAvailable },
      },
    ];
  });
}

/** One row a function to call. */
export function contactRegister({ site, lines, tables }: SiteView): RegisterRow[] {
  return tables.Contact.filter(({ siteId }) => siteId === site.id).map(
    ({ lineId, role, phone, hours, note }) => ({
      ...{ siteCode: site.code, lineCode: lines.get(lineId ?? "")?.code ?? null },
      ...{ role, phone, hours, note },
    }),
  );
}

/** One row a stretch of days on which the site stands still. */
export function windowRegister({ site, lines, tables }: SiteView): RegisterRow[] {
  return tables.ShutdownWindow.filter(({ siteId }) => siteId === site.id).map(
    ({ lineId, name, startsOn, endsOn, usableHours, note }) => ({
      ...{ siteCode: site.code, lineCode: lines.get(lineId ?? "")?.code ?? null },
      ...{ name, startsOn, endsOn, usableHours, note },
    }),
  );
}
