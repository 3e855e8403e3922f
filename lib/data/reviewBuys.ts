import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readReportParts } from "@/lib/data/reportParts";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ReviewBuy } from "@/lib/view/reviewRecord";

/** The purchase list of a review of a site the actor may read, with what is known of supply and price on a day. */
export async function readReviewBuys(
  actor: Actor,
  { reviewId, asOf }: { readonly reviewId: string; readonly asOf: IsoDate },
): Promise<ReviewBuy[]> {
  const rows = await database().reviewBuy.findMany({
    where: { reviewId, review: atSites(actor, "read") },
    select: {
      ...{ id: true, partId: true, quantity: true, reason: true, version: true },
      part: {
        select: { number: true, description: true, price: true, priceCurrency: true, pricedOn: true },
      },
    },
    orderBy: [{ part: { number: "asc" } }, { id: "asc" }],
  });
  if (rows.length === 0) return [];
  const { id: evaluationId } = await currentEvaluation(asOf);
  const supplied = await readReportParts(actor, {
    ...{ asOf, evaluationId },
    poolIds: rows.map(({ partId }) => partId),
  });
  const byPart = new Map(supplied.map((part) => [part.id, part]));
  return rows.map(({ part, ...row }): ReviewBuy => {
    const supply = byPart.get(row.partId);
    const { number, description, price, priceCurrency: currency, pricedOn } = part;
    return {
      ...{ ...row, number, description },
      orderByOn: supply?.orderByOn ?? null,
      stage: supply?.pool.stage ?? null,
      price:
        price === null || currency === null
          ? null
          : { amount: price.toFixed(2), currency, pricedOn: pricedOn?.toISOString().slice(0, 10) ?? null },
    };
  });
}
