import "server-only";
import type { Transaction } from "@/lib/data/change";
import { inService, machineInService } from "@/lib/data/quality/inService";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { InstalledInput } from "@/lib/risk/evaluation";
import { Prisma } from "@/prisma/generated/client";

interface InstalledRow extends Omit<InstalledInput, "standby"> {
  readonly machineId: string | null;
  readonly group: string | null;
  readonly needed: number | null;
}

/**
 * Units installed on each line by part, those on machines others can stand in for by machine too.
 *
 * What is retired by the day, itself or with its machine, is not there.
 *
 * Machines of a group that hang on one motion network or share a controller fall together: they stand in for nobody and
 * are in series with the rest of the line, and the line needs as many as before of those that are left.
 *
 * @param lineIds Lines that are asked about; all of the group when left out.
 */
export async function loadInstalled(
  tx: Transaction,
  asOf: IsoDate,
  lineIds?: readonly string[],
): Promise<InstalledInput[]> {
  const here = lineIds ? Prisma.sql`AND m."lineId" = ANY(${lineIds}::uuid[])` : Prisma.empty;
  const rows = await tx.$queryRaw<InstalledRow[]>`
    WITH marked AS (
      SELECT m."id", m."lineId", m."code", m."standbyGroup" AS "group", m."standbyNeeded" AS "needed", m."controllerId",
        array(SELECT DISTINCT a."networkId" FROM "Axis" a WHERE a."machineId" = m."id" AND a."networkId" IS NOT NULL)
          AS "networks"
      FROM "Machine" m
      WHERE m."standbyGroup" IS NOT NULL AND ${machineInService(asOf)} ${here}
    ), apart AS (
      SELECT one.* FROM marked one WHERE NOT EXISTS (
        SELECT 1 FROM marked other
        WHERE other."lineId" = one."lineId" AND other."group" = one."group" AND other."id" <> one."id"
          AND (other."networks" && one."networks" OR other."controllerId" = one."controllerId")
      )
    ), placed AS (
      SELECT m."lineId", coalesce(u."partId", p."partId") AS "partId",
        CASE WHEN coalesce(u."partId", p."partId") IS NULL THEN p."itemClass" END AS "unread",
        apart."code" AS "machineId", apart."group", apart."needed", count(*)::int AS "units"
      FROM "Position" p
      JOIN "Machine" m ON m."id" = p."machineId"
      LEFT JOIN apart ON apart."id" = m."id"
      LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
        AND daterange(pl."fromOn", pl."untilOn") @> ${asOf}::date
      LEFT JOIN "Unit" u ON u."id" = pl."unitId"
      WHERE ${inService(asOf)} ${here}
      GROUP BY 1, 2, 3, 4, 5, 6
    )
    SELECT "lineId"::text AS "lineId", coalesce("partId"::text, 'unidentified:' || "unread"::text) AS "poolId",
      "machineId", "group", "needed", "units"
    FROM placed ORDER BY 1, 2, 3 NULLS FIRST`;
  return rows.map(({ machineId, group, needed, ...row }) =>
    machineId === null || group === null || needed === null
      ? row
      : { ...row, standby: { machineId, group, needed } },
  );
}
