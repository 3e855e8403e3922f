import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { RepairFinding } from "@/lib/spares/repairRecord";
import { stockStateName } from "@/lib/view/partShelf";
import type { RepairOrder, SendableLot } from "@/lib/view/repair";

const dayOf = (date: Date | null): IsoDate | null => date?.toISOString().slice(0, 10) ?? null;

/** Every repair order of the actor's sites, the latest sent first; what it cost where amounts are shown. */
export async function readRepairs(actor: Actor): Promise<RepairOrder[]> {
  const rows = await database().repairOrder.findMany({
    where: atSites(actor, "read"),
    include: {
      site: { select: { code: true } },
      part: { select: { number: true, description: true, repairTurnaroundDays: true } },
    },
    orderBy: [{ sentOn: "desc" }, { reference: "desc" }],
  });
  return rows.map((row) => {
    const { id, partId, reference, serial, repairer, fault, costCurrency, note, version, part } = row;
    return {
      ...{ id, partId, reference, serial, repairer, fault, costCurrency, note, version },
      ...{ siteCode: row.site.code, part: part.number, description: part.description },
      usualDays: part.repairTurnaroundDays,
      sentOn: row.sentOn.toISOString().slice(0, 10),
      dueOn: dayOf(row.dueOn),
      returnedOn: dayOf(row.returnedOn),
      finding: row.finding as RepairFinding | null,
      cost: mayAt(actor.grants, "money:read", row.siteId) ? (row.cost?.toFixed(2) ?? null) : null,
      warrantyUntilOn: dayOf(row.warrantyUntilOn),
      mayChange: mayAt(actor.grants, "stock:write", row.siteId),
      mayUndo: row.steps !== null,
    };
  });
}

/** Lots with pieces that may need a repairer, at sites where the actor changes the stock. */
export async function readSendableLots(actor: Actor): Promise<SendableLot[]> {
  const lots = await database().stockLot.findMany({
    where: {
      ...{ quantity: { gt: 0 }, ...atSites(actor, "stock:write") },
      state: { in: ["removed_untested", "on_hold", "unproven", "beyond_repair"] },
    },
    include: { site: { select: { code: true } }, part: { select: { number: true } } },
    orderBy: [{ site: { code: "asc" } }, { part: { number: "asc" } }, { bin: "asc" }],
  });
  return lots.map(({ id, site, bin, part, revision, state, quantity }) => ({
    ...{ id, siteCode: site.code, bin, part: part.number },
    words: `${site.code} ${part.number}${revision === "" ? "" : ` ${revision}`}, bin ${bin}: ${quantity} ${stockStateName(state).toLowerCase()}`,
  }));
}
