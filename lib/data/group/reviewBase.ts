import "server-only";
import type { Transaction } from "@/lib/data/change";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { thaw } from "@/lib/data/group/snapshotBytes";
import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import type { Assumptions } from "@/lib/risk/assumptions";
import { ENGINE } from "@/lib/risk/evaluate";
import type { SnapshotInput } from "@/lib/risk/moved/snapshotInput";
import type { ReviewBase } from "@/lib/view/review";

const DAYS_BACK = 7;

export interface FoundBase {
  readonly base: ReviewBase;
  /** The same key is the same stored bytes. */
  readonly key: string;
  readonly open: (tx: Transaction, assumptions: Assumptions) => Promise<SnapshotInput>;
}

interface Question {
  readonly siteId: string;
  readonly asOf: IsoDate;
}

/**
 * What the figures of a site are compared with: its last closed review, else the last snapshot of an earlier day, else
 * the records as known a week earlier.
 */
export async function reviewBase(tx: Transaction, { siteId, asOf }: Question): Promise<FoundBase> {
  const day = new Date(`${asOf}T00:00:00Z`);
  const review = await tx.review.findFirst({
    where: { siteId, closedAt: { not: null }, heldOn: { lte: day }, engine: ENGINE },
    orderBy: [{ heldOn: "desc" }, { closedAt: "desc" }],
    select: { id: true, heldOn: true },
  });
  if (review) return ofReview(review);
  const snapshot = await tx.snapshot.findFirst({
    where: { asOf: { lt: day }, engine: ENGINE },
    orderBy: { asOf: "desc" },
    select: { id: true, asOf: true },
  });
  if (snapshot) return ofSnapshot(snapshot);
  const before = addDays(asOf, -DAYS_BACK);
  return {
    base: { kind: "records", asOf: before },
    key: `records ${before}`,
    open: async (inside, assumptions) => ({ input: await loadGroupInput(inside, before), assumptions }),
  };
}

function ofReview({ id, heldOn }: { readonly id: string; readonly heldOn: Date }): FoundBase {
  return {
    base: { kind: "review", asOf: dayOf(heldOn) },
    key: `review ${id}`,
    open: async (tx) => {
      const { input, assumptions } = await tx.review.findUniqueOrThrow({
        where: { id },
        select: { input: true, assumptions: true },
      });
      if (input === null) throw new RangeError(`review ${id} must be closed to be compared with`);
      return thaw({ input, assumptions });
    },
  };
}

function ofSnapshot({ id, asOf }: { readonly id: string; readonly asOf: Date }): FoundBase {
  return {
    base: { kind: "snapshot", asOf: dayOf(asOf) },
    key: `snapshot ${id}`,
    open: async (tx) => thaw(await tx.snapshot.findUniqueOrThrow({ where: { id } })),
  };
}

const dayOf = (date: Date) => date.toISOString().slice(0, 10);
