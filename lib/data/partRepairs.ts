import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import type { PartQuestion } from "@/lib/data/partFacts";
import { siteIds } from "@/lib/data/scope";
import type { PartRepair } from "@/lib/view/partDossier";

/** Units of a part out for repair on a day at the actor's sites, the longest overdue first. */
export function readPartRepairs(actor: Actor, { partId, asOf }: PartQuestion): Promise<PartRepair[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  return database().$queryRaw<PartRepair[]>`
    SELECT r."id"::text AS "id", s."code" AS "siteCode", r."reference", r."serial",
      r."sentOn"::text AS "sentOn", r."dueOn"::text AS "dueOn",
      greatest(0, ${asOf}::date - r."dueOn") AS "daysOverdue"
    FROM "RepairOrder" r
    JOIN "Site" s ON s."id" = r."siteId"
    WHERE r."partId" = ${partId}::uuid AND r."sentOn" <= ${asOf}::date
      AND (r."returnedOn" IS NULL OR r."returnedOn" > ${asOf}::date)
      AND (${ids}::uuid[] IS NULL OR r."siteId" = ANY(${ids}::uuid[]))
    ORDER BY (CASE WHEN r."dueOn" IS NULL THEN 0 ELSE ${asOf}::date - r."dueOn" END) DESC, r."sentOn", r."reference"`;
}

/** Units out for repair at all sites the actor may not see, as one sum. */
export async function countRepairsElsewhere(
  actor: Actor,
  { partId, asOf }: PartQuestion,
): Promise<{ repairsOut: number; repairsOverdue: number }> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const [row] = await database().$queryRaw<{ repairsOut: number; repairsOverdue: number }[]>`
    SELECT count(*)::int AS "repairsOut",
      (count(*) FILTER (WHERE r."dueOn" < ${asOf}::date))::int AS "repairsOverdue"
    FROM "RepairOrder" r
    WHERE r."partId" = ${partId}::uuid AND r."sentOn" <= ${asOf}::date
      AND (r."returnedOn" IS NULL OR r."returnedOn" > ${asOf}::date)
      AND ${ids}::uuid[] IS NOT NULL AND NOT r."siteId" = ANY(${ids}::uuid[])`;
  return row ?? { repairsOut: 0, repairsOverdue: 0 };
}
