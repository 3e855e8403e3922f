import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import type { ReportGaps } from "@/lib/view/report";

/** Counts what nobody has recorded at those of the sites the person may see. */
export async function readReportGaps(actor: Actor, siteIds: readonly string[]): Promise<ReportGaps> {
  const where = { AND: [atSites(actor, "read"), { siteId: { in: [...siteIds] } }] };
  const [controllers, unknownFirmware, stockLots, uncounted] = await Promise.all([
    database().controller.count({ where }),
    database().controller.count({ where: { ...where, firmware: null } }),
    database().stockLot.count({ where }),
    database().stockLot.count({ where: { ...where, quantity: null } }),
  ]);
  return { controllers, unknownFirmware, stockLots, uncounted };
}
