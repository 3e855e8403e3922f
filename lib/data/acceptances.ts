import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Acceptance } from "@/lib/view/acceptance";

/**
 * Acceptances of risk at the sites the actor may read, of all lines or of one, newest first, as known on a day; without
 * the loss accepted where amounts are not shown to the actor.
 */
export async function readAcceptances(
  actor: Actor,
  { asOf, lineId }: { readonly asOf: IsoDate; readonly lineId?: string },
): Promise<Acceptance[]> {
  const about = lineId === undefined ? {} : { lineId };
  const rows = await database().riskAcceptance.findMany({
    where: { ...about, acceptedOn: { lte: new Date(`${asOf}T00:00:00Z`) }, line: atSites(actor, "read") },
    include: { line: { select: { code: true, siteId: true } } },
    orderBy: [{ acceptedOn: "desc" }, { id: "desc" }],
  });
  return rows.map((row) => {
    const { id, acceptedBy, reason, recordedBy, version, loss, lossLow, lossHigh } = row;
    return {
      ...{ id, lineId: row.lineId, lineCode: row.line.code, acceptedBy, reason, recordedBy, version },
      ...{ acceptedOn: dayOf(row.acceptedOn), until: dayOf(row.until) },
      endedOn: row.endedOn === null ? null : dayOf(row.endedOn),
      loss:
        loss === null || !mayAt(actor.grants, "money:read", row.line.siteId)
          ? null
          : { mean: loss.toNumber(), low: (lossLow ?? loss).toNumber(), high: (lossHigh ?? loss).toNumber() },
    };
  });
}

const dayOf = (date: Date): IsoDate => date.toISOString().slice(0, 10);
