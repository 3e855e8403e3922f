import "server-only";
import type { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { inOrder, type SliceAsked } from "@/lib/data/interface/slice";
import { dayOf, dayOrNull, decimalOrNull, moneyOrNull } from "@/lib/data/interface/written";
import type { part, supplyDate } from "@/lib/interface/shapes/items";
import type { PoolFigures } from "@/lib/risk/evaluation";

/** The catalogue belongs to everybody who may read at some site. */
const seen = (actor: Actor) => (maySomewhere(actor.grants, "read") ? {} : { id: { in: [] } });

/** Parts of the group, with what the evaluation of the installation's day says of them. */
export async function sliceParts(actor: Actor, asked: SliceAsked): Promise<z.output<typeof part>[]> {
  const { id: evaluationId } = await currentEvaluation(await readAsOf(actor, undefined));
  const { where, ...order } = inOrder(asked);
  const rows = await database().part.findMany({
    where: { AND: [where, seen(actor)] },
    ...order,
    include: { evaluations: { where: { evaluationId }, select: { result: true } } },
  });
  return rows.map(({ evaluations: [evaluated], ...row }) => {
    const { id, maker, number, description, itemClass, familyId } = row;
    const result = (evaluated?.result ?? null) as unknown as PoolFigures | null;
    return {
      ...{ id, maker, number, description, itemClass, familyId },
      price: moneyOrNull(row.price, row.priceCurrency),
      pricedOn: dayOrNull(row.pricedOn),
      leadWeeks: decimalOrNull(row.leadWeeks),
      figures: result && figuresOf(result),
    };
  });
}

function figuresOf({ stage, installed, book, usable, noSpare, depletionP80 }: PoolFigures) {
  return { stage, installed, book, usable, noSpare, usedUpOn: depletionP80 };
}

/** Sourced statements about supply, of parts and families. */
export async function sliceSupplyDates(
  actor: Actor,
  asked: SliceAsked,
): Promise<z.output<typeof supplyDate>[]> {
  const { where, ...order } = inOrder(asked);
  const rows = await database().lifecycleFact.findMany({ where: { AND: [where, seen(actor)] }, ...order });
  return rows.map((row) => {
    const { id, partId, familyId, source, evidence } = row;
    return {
      ...{ id, partId, familyId, source, evidence },
      noticeOn: dayOrNull(row.noticeOn),
      lastOrderOn: dayOrNull(row.lastOrderOn),
      lastShipOn: dayOrNull(row.lastShipOn),
      repairUntilOn: dayOrNull(row.repairUntilOn),
      orderByOn: dayOrNull(row.orderByOn),
      checkedOn: dayOf(row.checkedOn),
      recordedOn: dayOf(row.recordedOn),
    };
  });
}
