import type { LossSpan } from "@/lib/risk/draws/linePlace";
import { isWholeGroup, type RankedLine, type RankingOf } from "@/lib/view/lineRanking";

/** Drawn spans of summed losses a person may see; null where the lines are not a whole the draws were summed over. */
export interface SeenTotals {
  readonly group: LossSpan | null;
  /** By site code. */
  readonly sites: Readonly<Record<string, LossSpan>>;
}

type Costed = Pick<RankedLine, "siteCode" | "stopLoss">;

const costedOf = (lines: readonly Costed[]) => lines.filter(({ stopLoss }) => stopLoss !== null);

/**
 * The drawn span of the sum over the lines shown: of the group when all are shown, of a site when all of one are.
 *
 * Null for any other choice: its draws were not added up.
 */
export function drawnTotalOf(shown: readonly Costed[], ranking: RankingOf<Costed>): LossSpan | null {
  const costed = costedOf(shown);
  const [first] = costed;
  if (!first) return null;
  if (isWholeGroup(ranking) && costed.length === costedOf(ranking.lines).length) return ranking.totals.group;
  const ofSite = ({ siteCode }: Costed) => siteCode === first.siteCode;
  if (!costed.every(ofSite) || costed.length !== costedOf(ranking.lines.filter(ofSite)).length) return null;
  return ranking.totals.sites[first.siteCode] ?? null;
}
