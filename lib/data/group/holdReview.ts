import "server-only";
import type { Transaction } from "@/lib/data/change";

/** Holds a review until the transaction ends, so that nothing is written into it while it is closed. */
export async function holdReview(tx: Transaction, reviewId: string): Promise<void> {
  await tx.$queryRaw`SELECT FROM "Review" WHERE "id" = ${reviewId}::uuid FOR UPDATE`;
}
