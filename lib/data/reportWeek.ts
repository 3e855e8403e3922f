import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readReviewActions } from "@/lib/data/reviewActions";
import { readReviewBuys } from "@/lib/data/reviewBuys";
import { readReviewFigures } from "@/lib/data/reviewFigures";
import { atOneSite, atSites } from "@/lib/data/scope";
import type { SiteName } from "@/lib/data/siteNames";
import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { seedOf } from "@/lib/risk/evaluateGroup";
import { assumptionSetName } from "@/lib/view/assumptionSet";
import type { WeekInput } from "@/lib/view/reportWeek";

const DAYS_BACK = 7;

/** What the week's report of a site is made of, as anybody who reads that site may see it. */
export async function readWeek(
  actor: Actor,
  { site, asOf }: { readonly site: SiteName; readonly asOf: IsoDate },
): Promise<WeekInput> {
  const reader = atOneSite(actor, site.id);
  const open = await database().review.findFirst({
    where: { AND: [{ siteId: site.id, closedAt: null }, atSites(reader, "read")] },
    select: { id: true },
  });
  const [{ figures, dataVersion }, { assumptionSet }, actions, buys] = await Promise.all([
    readReviewFigures(reader, { site, asOf }),
    currentEvaluation(asOf),
    readReviewActions(reader, { siteId: site.id, since: addDays(asOf, -DAYS_BACK) }),
    open ? readReviewBuys(reader, { reviewId: open.id, asOf }) : [],
  ]);
  return {
    ...{ figures, actions, buys },
    basis: {
      ...{ asOf, dataVersion, engine: figures.engine, seed: seedOf(asOf) },
      assumptions: assumptionSetName(assumptionSet),
    },
  };
}
