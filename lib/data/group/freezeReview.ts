import "server-only";
import type { Transaction } from "@/lib/data/change";
import { readingOf } from "@/lib/data/group/movedAtSite";
import { freezeInput } from "@/lib/data/group/snapshotBytes";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ReviewRecord } from "@/lib/view/reviewRecord";
import type { Prisma } from "@/prisma/generated/client";

interface Closing {
  readonly reviewId: string;
  readonly asOf: IsoDate;
  readonly by: string;
  readonly at: Date;
}

/** Closes a review with all that was shown, and with what the evaluation read on its day. */
export async function freezeReview(tx: Transaction, closing: Closing, record: ReviewRecord): Promise<void> {
  const { reviewId, asOf, by, at } = closing;
  const { input, assumptions } = await readingOf(tx, asOf);
  await tx.review.update({
    where: { id: reviewId },
    data: {
      ...{ heldOn: new Date(`${asOf}T00:00:00Z`), closedAt: at, closedBy: by },
      figures: record as unknown as Prisma.InputJsonValue,
      input: freezeInput(input),
      assumptions: assumptions as unknown as Prisma.InputJsonValue,
      engine: record.figures.engine,
    },
  });
}
