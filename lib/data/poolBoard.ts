import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere, seesAmounts } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { siteIds } from "@/lib/data/scope";
import { readHoldings } from "@/lib/data/sparesHoldings";
import { priceInEuro, toldPrice } from "@/lib/data/stock/partPrice";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { PoolFigures } from "@/lib/risk/evaluation";
import type { BoardPool } from "@/lib/view/poolBoard";

/** Every pool of the group with who holds what of it, at the actor's sites. */
export interface PoolBoard {
  readonly asOf: IsoDate;
  readonly seesAll: boolean;
  readonly pools: readonly BoardPool[];
}

/** The board on a day: the group's figures of each pool, and the units and pieces of each site the actor may read. */
export async function readPoolBoard(actor: Actor, asOf: IsoDate): Promise<PoolBoard> {
  const seesAll = siteIds(actor, "read") === undefined;
  if (!maySomewhere(actor.grants, "read")) return { asOf, seesAll, pools: [] };
  const { id: evaluationId } = await currentEvaluation(asOf);
  const [rows, holdings, rates] = await Promise.all([
    findPools(evaluationId),
    readHoldings(actor, asOf),
    database().currencyRate.findMany({ select: { currency: true, perEuro: true } }),
  ]);
  const perEuro = new Map(rates.map(({ currency, perEuro: rate }) => [currency, rate.toNumber()]));
  const tellsPrices = seesAmounts(actor.grants);
  const own = new Map<string, typeof holdings>();
  for (const one of holdings) own.set(one.partId, [...(own.get(one.partId) ?? []), one]);
  return {
    ...{ asOf, seesAll },
    pools: rows.map(({ partId, part, result }) => {
      const figures = result as unknown as PoolFigures;
      const { stage, installed, book, usable, removal, usableBySite } = figures;
      return {
        ...{ partId, number: part.number, maker: part.maker, itemClass: part.itemClass, family: part.family },
        ...{ stage, installed, book, usable, removalRate: removal.mean },
        price: tellsPrices ? toldPrice(part) : null,
        priceEuro: tellsPrices ? priceInEuro(part, perEuro) : null,
        sites: (own.get(partId) ?? []).map(({ siteId, siteCode, units, book: onBooks }) => ({
          ...{ siteCode, units, book: onBooks, usable: usableBySite[siteId]?.usable ?? 0 },
        })),
      };
    }),
  };
}

function findPools(evaluationId: string) {
  return database().evaluatedPool.findMany({
    where: { evaluationId },
    select: {
      partId: true,
      result: true,
      part: {
        select: {
          ...{ maker: true, number: true, itemClass: true, price: true, priceCurrency: true, pricedOn: true },
          family: { select: { id: true, name: true } },
        },
      },
    },
    orderBy: [{ part: { maker: "asc" } }, { part: { number: "asc" } }],
  });
}
