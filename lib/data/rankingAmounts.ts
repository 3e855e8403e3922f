import "server-only";
import type { Actor } from "@/lib/access/actor";
import { seesAmounts } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { sites } from "@/lib/data/scope";
import type { Ranking } from "@/lib/view/lineRanking";
import { UNKNOWN_COST } from "@/lib/view/lineWithoutAmounts";

/**
 * A ranking as it leaves for its reader: where amounts are not shown, a line stands as one whose stop nobody knows the
 * cost of, by its score, its stops and its dates.
 */
export async function withShownAmounts(actor: Actor, ranking: Ranking): Promise<Ranking> {
  if (seesAmounts(actor.grants)) return ranking;
  const told = await database().site.findMany({ where: sites(actor, "money:read"), select: { code: true } });
  const shown = new Set(told.map(({ code }) => code));
  const hidden = { stopLoss: null, baseLoss: null, shortageLoss: null, rankByLoss: null, place: null };
  return {
    ...ranking,
    totals: { group: null, sites: {} },
    lines: ranking.lines.map((line) =>
      shown.has(line.siteCode) ? line : { ...line, ...hidden, cost: UNKNOWN_COST },
    ),
  };
}
