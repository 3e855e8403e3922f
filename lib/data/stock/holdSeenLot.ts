import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { holdLot, sideOf } from "@/lib/data/stock/moveLots";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { SeenLot } from "@/lib/schema/storageCare";
import type { StockLot } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such stock where you may change it." };

/** A lot the actor may change, held; refused when it no longer stands as the person saw it. */
export async function holdSeenLot(
  tx: Transaction,
  actor: Actor,
  { lotId, seen }: SeenLot,
): Promise<Result<StockLot & { readonly quantity: number }, Refusal>> {
  const allowed = await tx.stockLot.count({ where: { id: lotId, ...atSites(actor, "stock:write") } });
  const lot = allowed > 0 ? await holdLot(tx, lotId) : null;
  if (!lot) return err(missing);
  const now = sideOf(lot);
  const { quantity } = lot;
  if (now.state !== seen.state || quantity !== seen.quantity || now.lastPoweredOn !== seen.lastPoweredOn)
    return err(changedTo(lot));
  if (quantity === null || quantity === 0)
    return err({ code: "impossible", reason: "The lot is empty or not counted. Count it first." });
  return ok({ ...lot, quantity });
}

function changedTo({ bin, quantity }: StockLot): Refusal {
  const pieces = quantity === null ? "is not counted" : `holds ${quantity}`;
  return {
    code: "conflict",
    reason: `Somebody else changed bin ${bin} meanwhile; it ${pieces} now. What you typed is still here; close and open the form to see theirs.`,
  };
}
