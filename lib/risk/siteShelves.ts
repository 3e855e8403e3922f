import type { Span } from "@/lib/risk/evaluation";
import type { PoolSite, SeenPool } from "@/lib/risk/poolSites";
import { unreplenishedExposure } from "@/lib/spares/exposure";
import type { OwnShelf, ShelfMoment } from "@/lib/spares/ownShelf";

const MONTHS_PER_YEAR = 12;

/** EUR a year lost at the site were its own shelf always empty and another site's never. */
export function wayLoss({ lines }: PoolSite): number {
  return lines.reduce((sum, { stops, costs }) => sum + (costs ? stops * (costs.other - costs.own) : 0), 0);
}

/** Share of a span of months that each of its ends stands for, by the trapezoid rule. */
const endShare = (month: number, months: number): number =>
  (month === 0 || month === months ? 0.5 : 1) / months;

/**
 * The own shelf of a site over the first months, as the moving of pieces looks at it.
 *
 * The months are those of the yearly loss; the chance that no site has one is the evaluation's. A supply that may
 * stand in two ways is looked at in both, by their chance.
 *
 * @param noSpareByMonth The evaluation's chances of the pool, months 0, 1, …
 */
export function ownShelfOf(
  site: PoolSite,
  { removal }: SeenPool,
  { noSpareByMonth, months }: { readonly noSpareByMonth: readonly Span[]; readonly months: number },
): OwnShelf {
  const rate = { a: removal.a, b: removal.b };
  // Without units nothing is ever asked of the shelf, full or empty.
  if (site.units === 0) return { id: site.siteId, rate, moments: [] };
  const worth = (wayLoss(site) * months) / MONTHS_PER_YEAR;
  const moments = site.cases.flatMap(({ chance, supply }) =>
    Array.from({ length: months + 1 }, (_, month): ShelfMoment => {
      const weight = chance * endShare(month, months);
      return {
        exposure: unreplenishedExposure(supply, month / MONTHS_PER_YEAR),
        weight,
        worth: weight * worth,
        groupEmpty: noSpareByMonth[month]?.mean ?? 0,
      };
    }),
  );
  return { id: site.siteId, rate, moments };
}
