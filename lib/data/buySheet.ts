import "server-only";
import type { Actor } from "@/lib/access/actor";
import { readLastBatch } from "@/lib/data/lastBatch";
import { readLastBuy } from "@/lib/data/lastBuy";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LastBatchRow } from "@/lib/view/buyDocument";
import { type BuyBasis, buyBasis } from "@/lib/view/lastBuyBasis";

/** What a family's sheet is worked out from, at the actor's sites; null when there is none to read. */
export async function readBuySheet(
  actor: Actor,
  question: { readonly familyId: string; readonly asOf: IsoDate },
): Promise<{ basis: BuyBasis; lastBatch: LastBatchRow[] } | null> {
  const input = await readLastBuy(actor, question);
  if (!input) return null;
  const lastBatch = await readLastBatch(actor, { family: input.family.name, asOf: question.asOf });
  return { basis: buyBasis(input), lastBatch };
}
