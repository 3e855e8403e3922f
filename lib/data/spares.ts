import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { lookBack, lookedBackTo } from "@/lib/data/lookBack";
import { readPastGround } from "@/lib/data/pastGround";
import { readZone } from "@/lib/data/readerZone";
import { siteIds } from "@/lib/data/scope";
import { readHoldings, readWeek } from "@/lib/data/sparesHoldings";
import { gathered } from "@/lib/kernel/gathered";
import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import type { PoolFigures } from "@/lib/risk/evaluation";
import { knownOn } from "@/lib/view/knownAt";
import type { PoolBefore, SiteHolding, SparesLook, SparesPool } from "@/lib/view/sparesLook";

const DAYS_BACK = 7;

/**
 * The pools of the group on a day, each beside what was computed for seven days earlier.
 *
 * The earlier picture is that of the records as they stood when that day ended by the clock of the reader's sites, its
 * own shelf with it. Where that is not known it holds the dates and events of then and the shelf of now.
 */
export async function readSpares(actor: Actor, asOf: IsoDate): Promise<SparesLook> {
  const before = addDays(asOf, -DAYS_BACK);
  const { ownShelf, earlier } = await readEarlier(actor, before);
  const { id: evaluationId, engine, dataVersion } = await currentEvaluation(asOf);
  const [pools, holdings, week] = await Promise.all([
    findPools(actor, evaluationId),
    readHoldings(actor, asOf),
    readWeek(actor, { asOf, before }),
  ]);
  const past = new Map(earlier.map((row) => [row.partId, row.result as unknown as PoolFigures]));
  const held = gathered(holdings, ({ partId }) => partId);
  const weeks = new Map(week.map((row) => [row.partId, row]));
  return {
    ...{ asOf, before, ownShelf, engine, dataVersion },
    seesAll: siteIds(actor, "read") === undefined,
    pools: pools.map((row) => {
      const result = row.result as unknown as PoolFigures;
      const { newRemovals, repairsOut, repairsOverdue } = weeks.get(row.partId) ?? quiet;
      return {
        asOf,
        ...poolOf(row, result),
        before: beforeOf(past.get(row.partId)),
        ...{ newRemovals, repairsOut, repairsOverdue },
        sites: (held.get(row.partId) ?? []).map((one): SiteHolding => {
          const usable = result.usableBySite[one.siteId]?.usable ?? 0;
          return { siteCode: one.siteCode, units: one.units, book: one.book, usable };
        }),
      };
    }),
  };
}

async function readEarlier(actor: Actor, before: IsoDate) {
  const results = async () => findResults(actor, (await currentEvaluation(before)).id);
  const then = knownOn(before, await readZone(actor));
  const looked = lookedBackTo();
  if (looked !== null && looked.at < then.at) return { ownShelf: false, earlier: await results() };
  const own = await lookBack(then, async () =>
    (await readPastGround(actor, before)) === "nothing" ? null : results(),
  );
  return own === null ? { ownShelf: false, earlier: await results() } : { ownShelf: true, earlier: own };
}

const quiet = { newRemovals: 0, repairsOut: 0, repairsOverdue: 0 };

function findPools(actor: Actor, evaluationId: string) {
  return database().evaluatedPool.findMany({
    where: readable(actor, evaluationId),
    select: {
      partId: true,
      result: true,
      part: {
        select: {
          ...{ maker: true, number: true, description: true, itemClass: true },
          family: { select: { id: true, name: true } },
        },
      },
    },
    orderBy: [{ part: { maker: "asc" } }, { part: { number: "asc" } }],
  });
}

function findResults(actor: Actor, evaluationId: string) {
  return database().evaluatedPool.findMany({
    where: readable(actor, evaluationId),
    select: { partId: true, result: true },
  });
}

/** A pool belongs to the whole group: whoever may read at some site reads its sums. */
function readable(actor: Actor, evaluationId: string) {
  return { evaluationId, ...(maySomewhere(actor.grants, "read") ? {} : { partId: { in: [] as string[] } }) };
}

type FoundPool = Awaited<ReturnType<typeof findPools>>[number];

function poolOf({ partId, part }: FoundPool, result: PoolFigures) {
  const { stage, installed, book, usable, removalsPerYear, noSpare, depletionP50, depletionP80 } = result;
  return {
    ...{ partId, ...part, stage, installed, book, usable, removalsPerYear },
    ...{ noSpare, depletionP50, depletionP80, removalRate: result.removal.mean },
  } satisfies Partial<SparesPool>;
}

function beforeOf(result: PoolFigures | undefined): PoolBefore | null {
  if (!result) return null;
  const { stage, noSpare, depletionP50, depletionP80 } = result;
  return { stage, noSpare: noSpare.mean, depletionP50, depletionP80 };
}
