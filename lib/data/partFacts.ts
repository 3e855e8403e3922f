import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LifecycleDates } from "@/lib/lifecycle/supplyStage";
import type { SupplyFact } from "@/lib/view/partDossier";

/** Which part, of which family, on which day. */
export interface PartQuestion {
  readonly partId: string;
  readonly familyId: string | null;
  readonly asOf: IsoDate;
}

/** What was known of the supply of a part on a day. */
export interface SupplyHistory {
  readonly facts: SupplyFact[];
  readonly factInForce: string | null;
  readonly dates: LifecycleDates;
}

const undated: LifecycleDates = {
  noticeOn: null,
  lastOrderOn: null,
  lastShipOn: null,
  repairUntilOn: null,
  orderByOn: null,
  checkedOn: null,
};

/** The statements about a part and its family known on a day, newest first, and the one in force. */
export async function readPartFacts(
  actor: Actor,
  { partId, familyId, asOf }: PartQuestion,
): Promise<SupplyHistory> {
  const facts = await database().$queryRaw<SupplyFact[]>`
    SELECT f."id"::text AS "id", CASE WHEN f."partId" IS NULL THEN 'family' ELSE 'part' END AS "about",
      f."noticeOn"::text AS "noticeOn", f."lastOrderOn"::text AS "lastOrderOn",
      f."lastShipOn"::text AS "lastShipOn", f."repairUntilOn"::text AS "repairUntilOn",
      f."orderByOn"::text AS "orderByOn", f."source", f."checkedOn"::text AS "checkedOn",
      f."recordedOn"::text AS "recordedOn", f."evidence"::text AS "evidence"
    FROM "LifecycleFact" f
    WHERE ${maySomewhere(actor.grants, "read")} AND f."recordedOn" <= ${asOf}::date
      AND (f."partId" = ${partId}::uuid OR f."familyId" = ${familyId}::uuid)
    ORDER BY f."recordedOn" DESC, f."checkedOn" DESC, f."id" DESC`;
  // A statement about the part itself outweighs one about its family, however old.
  const inForce = facts.find((fact) => fact.about === "part") ?? facts[0];
  return { facts, factInForce: inForce?.id ?? null, dates: inForce ? datesOf(inForce) : undated };
}

function datesOf(fact: SupplyFact): LifecycleDates {
  const { noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn, checkedOn } = fact;
  return { noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn, checkedOn };
}
