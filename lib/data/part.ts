import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere, seesAmounts } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readPartFacts } from "@/lib/data/partFacts";
import { readPartPlaces } from "@/lib/data/partPlaces";
import { countRepairsElsewhere, readPartRepairs } from "@/lib/data/partRepairs";
import { readPartStock } from "@/lib/data/partStock";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { supplyStage } from "@/lib/lifecycle/supplyStage";
import type { PoolFigures } from "@/lib/risk/evaluation";
import { monthsStored } from "@/lib/risk/evaluationRows";
import type { Elsewhere, PartDossier, PartName, PartPool } from "@/lib/view/partDossier";
import type { Prisma } from "@/prisma/generated/client";

/** Everything known of a part on a day; null when there is none or the actor may read nowhere. */
export async function readPart(
  actor: Actor,
  { id, asOf }: { readonly id: string; readonly asOf: IsoDate },
): Promise<PartDossier | null> {
  if (!z.uuid().safeParse(id).success) return null;
  const evaluation = await currentEvaluation(asOf);
  const part = await findPart(actor, id, evaluation.id);
  if (!part) return null;
  const question = { partId: id, familyId: part.familyId, itemClass: part.itemClass, asOf };
  const [history, places, { lots, stock }, repairs, out] = await Promise.all([
    readPartFacts(actor, question),
    readPartPlaces(actor, question),
    readPartStock(actor, question),
    readPartRepairs(actor, question),
    countRepairsElsewhere(actor, question),
  ]);
  const [evaluated] = part.evaluations;
  const result = (evaluated?.result ?? null) as unknown as PoolFigures | null;
  const seen = siteIds(actor, "read")?.in ?? null;
  const elsewhere = seen === null ? null : { ...stockElsewhere(result, seen), ...out };
  return {
    asOf,
    engine: evaluation.engine,
    dataVersion: evaluation.dataVersion,
    assumptionSet: evaluation.assumptionSet,
    ...masterOf(part),
    // A price is the group's, so it is told to whom every amount is.
    price: seesAmounts(actor.grants) ? priceOf(part) : null,
    stage: supplyStage(history.dates, asOf),
    ...history,
    ...{ places, lots, stock, repairs },
    elsewhere: elsewhere && { ...elsewhere, installed: (result?.installed ?? 0) - places.length },
    pool: result && poolOf(result, evaluated?.noSpareByMonth ?? []),
  };
}

const successor = {
  select: { condition: true, successor: { select: { id: true, maker: true, number: true } } },
} satisfies Prisma.Part$successorsArgs;
const predecessor = {
  select: { condition: true, part: { select: { id: true, maker: true, number: true } } },
} satisfies Prisma.Part$successorOfArgs;

function findPart(actor: Actor, id: string, evaluationId: string) {
  const seen = siteIds(actor, "read");
  return database().part.findFirst({
    // The catalogue belongs to everybody who may read at some site.
    where: maySomewhere(actor.grants, "read") ? { id } : { AND: [{ id }, { id: { in: [] } }] },
    include: {
      family: { select: { id: true, name: true, description: true } },
      aliases: {
        where: seen ? { OR: [{ siteId: null }, { siteId: seen }] } : {},
        select: { alias: true, site: { select: { code: true } } },
        orderBy: { alias: "asc" },
      },
      successors: successor,
      successorOf: predecessor,
      evaluations: { where: { evaluationId }, select: { result: true, noSpareByMonth: true } },
    },
  });
}

type FoundPart = NonNullable<Awaited<ReturnType<typeof findPart>>>;

function masterOf(part: FoundPart) {
  const { id, maker, number, description, itemClass, family, repairTurnaroundDays } = part;
  return {
    ...{ id, maker, number, description, itemClass, family, repairTurnaroundDays },
    aliases: part.aliases.map(({ alias, site }) => ({ alias, siteCode: site?.code ?? null })),
    successors: part.successors.map(({ condition, successor: to }) => ({ ...to, condition })).sort(byNumber),
    successorOf: part.successorOf.map(({ condition, part: from }) => ({ ...from, condition })).sort(byNumber),
    leadWeeks: part.leadWeeks?.toNumber() ?? null,
    leadWeeksP80: part.leadWeeksP80?.toNumber() ?? null,
    repairYield: part.repairYield?.toNumber() ?? null,
    powerKw: part.powerKw?.toNumber() ?? null,
    profileFamily: part.profileFamily,
  };
}

function priceOf({ price, priceCurrency, pricedOn }: FoundPart): PartDossier["price"] {
  if (price === null || priceCurrency === null) return null;
  return {
    amount: price.toFixed(2),
    currency: priceCurrency,
    pricedOn: pricedOn?.toISOString().slice(0, 10) ?? null,
  };
}

function byNumber(a: PartName, b: PartName): number {
  return a.number < b.number ? -1 : 1;
}

function stockElsewhere(
  result: PoolFigures | null,
  seen: readonly string[],
): Pick<Elsewhere, "book" | "usable"> {
  const sum = { book: 0, usable: 0 };
  for (const [siteId, stock] of Object.entries(result?.usableBySite ?? {})) {
    if (seen.includes(siteId)) continue;
    sum.book += stock.book;
    sum.usable += stock.usable;
  }
  return sum;
}

function poolOf(result: PoolFigures, months: readonly number[]): PartPool {
  const { poolId: _, usableBySite: __, deductions: ___, ...pool } = result;
  return { ...pool, noSpareByMonth: monthsStored(months) };
}
