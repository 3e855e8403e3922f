import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { ChangeStockLot } from "@/lib/schema/stockLot";
import { reasonGiven } from "@/lib/schema/why";

const missing: Refusal = { code: "missing", reason: "There is no such stock where you may change it." };
const conflict: Refusal = {
  code: "conflict",
  reason: "Somebody else changed this stock since you opened it. Nothing was changed; load the page again.",
};
const taken: Refusal = {
  code: "impossible",
  reason: "The bin already holds pieces of this revision in that state. Nothing was changed.",
  fields: { state: "Change the pieces already there instead." },
};

const untested: Refusal = {
  code: "impossible",
  reason:
    "Nobody knows where these pieces come from. Test them first, and record the test under storage care. Nothing was changed.",
  fields: { state: "Of unknown origin and not tested." },
};

/**
 * Writes a stock lot's state, pieces, last power-up and count day.
 *
 * Only when the lot still stands as the person saw it; else nothing is written.
 */
export async function changeStock(
  actor: Actor,
  { lotId, seen, wanted, why }: ChangeStockLot,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const allowed = { id: lotId, ...atSites(actor, "stock:write") };
    const lot = await tx.stockLot.findFirst({ where: allowed });
    if (!lot) return err(missing);
    if (seen.state !== wanted.state && (await isTaken(tx, lot, wanted.state))) return err(taken);
    if (wanted.state === "usable" && lot.originUnknown && lot.testedOn === null) return err(untested);
    const { count } = await tx.stockLot.updateMany({
      where: { ...allowed, ...columns(seen) },
      data: columns(wanted),
    });
    if (count === 0) return err(conflict);
    if (JSON.stringify(seen) === JSON.stringify(wanted)) return ok(null);
    record({
      deed: "stock:lot",
      entity: "StockLot",
      entityId: lotId,
      siteId: lot.siteId,
      before: seen,
      after: wanted,
      why: reasonGiven(why),
      stockOf: [lot.partId],
    });
    return ok(null);
  });
}

interface Bin {
  readonly siteId: string;
  readonly partId: string;
  readonly bin: string;
  readonly revision: string;
}

async function isTaken(
  tx: Transaction,
  { siteId, partId, bin, revision }: Bin,
  state: ChangeStockLot["wanted"]["state"],
): Promise<boolean> {
  return (await tx.stockLot.count({ where: { siteId, partId, bin, revision, state } })) > 0;
}

function columns(lot: ChangeStockLot["seen"]) {
  const dateOf = (day: string | null) => (day === null ? null : new Date(`${day}T00:00:00Z`));
  return { ...lot, lastPoweredOn: dateOf(lot.lastPoweredOn), countedOn: dateOf(lot.countedOn) };
}
