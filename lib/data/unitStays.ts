import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { UnitStay } from "@/lib/view/machine";

/** A stay, and of which unit in which place. */
export interface StayOf extends UnitStay {
  readonly unitId: string;
  readonly positionId: string;
}

/** Where units were up to a day, at the sites the actor may read, oldest stay first. */
export function readUnitStays(
  actor: Actor,
  { unitIds, asOf }: { readonly unitIds: readonly string[]; readonly asOf: IsoDate },
): Promise<StayOf[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  return database().$queryRaw<StayOf[]>`
    SELECT pl."unitId"::text AS "unitId", pl."positionId"::text AS "positionId", m."id"::text AS "machineId",
      l."code" || ' / ' || m."code" || ' / ' || p."designation" AS "place", pl."fromOn"::text AS "fromOn",
      CASE WHEN pl."untilOn" <= ${asOf}::date THEN pl."untilOn"::text END AS "untilOn"
    FROM "Placement" pl
    JOIN "Position" p ON p."id" = pl."positionId"
    JOIN "Machine" m ON m."id" = p."machineId"
    JOIN "Line" l ON l."id" = m."lineId"
    WHERE pl."unitId" = ANY(${unitIds}::uuid[])
      AND (pl."fromOn" IS NULL OR pl."fromOn" <= ${asOf}::date)
      AND (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
    ORDER BY pl."fromOn" NULLS FIRST, "place"`;
}
