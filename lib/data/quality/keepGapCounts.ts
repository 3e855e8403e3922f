import "server-only";
import type { Transaction } from "@/lib/data/change";
import { countGaps } from "@/lib/data/quality/countGaps";
import { SUBJECTS } from "@/lib/data/quality/gapSubjects";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { GapSubject } from "@/lib/view/gap";

/** Keeps how many records have each gap at each site with a snapshot, so that a later look can say what moved. */
export async function keepGapCounts(tx: Transaction, asOf: IsoDate): Promise<void> {
  const found = await countGaps(tx, {
    ...{ asOf, ids: null },
    subjects: Object.keys(SUBJECTS) as GapSubject[],
  });
  await tx.gapCount.createMany({
    data: found.map(({ siteId, key, missing, of }) => ({
      ...{ siteId, gap: key, missing, of },
      asOf: new Date(`${asOf}T00:00:00Z`),
    })),
    skipDuplicates: true,
  });
}
