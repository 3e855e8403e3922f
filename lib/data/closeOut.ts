import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { loadCloseFile } from "@/lib/data/closing/loadCloseFile";
import { atSites } from "@/lib/data/scope";
import { closingSteps } from "@/lib/schema/closing";
import type { ClosingRow, ProjectClose } from "@/lib/view/closeOut";
import type { ProjectClosing } from "@/prisma/generated/client";

/** What closing a project rests on; null when there is none or the actor may not see it. */
export async function readProjectClose(actor: Actor, code: string): Promise<ProjectClose | null> {
  const found = await database().project.findFirst({
    where: { code, ...atSites(actor, "read") },
    include: { closing: true, site: true },
  });
  if (!found) return null;
  const { closing, site, ...project } = found;
  const { id, name, siteId, status, currency, version } = project;
  return {
    ...{ id, code, name, siteId, status, currency, version, timeZone: site.timeZone },
    ...(await loadCloseFile(database(), project)),
    closing: closing && closingRow(closing),
  };
}

/** What a stored closing did, in numbers. */
function closingRow({ steps, ...closing }: ProjectClosing): ClosingRow {
  const { shelf, base } = closingSteps.parse(steps);
  const { closedBy, checkedBy, conclusion, checkedOn } = closing;
  return {
    ...{ closedBy, checkedBy, conclusion, places: base.places.length },
    closedOn: closing.closedOn.toISOString().slice(0, 10),
    checkOn: closing.checkOn.toISOString().slice(0, 10),
    checkedOn: checkedOn?.toISOString().slice(0, 10) ?? null,
    pieces: shelf.lots.reduce(
      (sum, { before, after }) => sum + (after.quantity ?? 0) - (before?.quantity ?? 0),
      0,
    ),
  };
}
