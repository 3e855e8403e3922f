import "server-only";
import type { Transaction } from "@/lib/data/change";
import { loadExperience, loadRestorations } from "@/lib/data/group/loadExperience";
import { loadPools } from "@/lib/data/group/loadPools";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { GroupInput, InstalledInput, LineInput } from "@/lib/risk/evaluation";

/**
 * Everything the evaluation of the group reads, as known on a day.
 *
 * Dates and events after the day are left out. Stock has no past: it is what is on the shelf now.
 */
export async function loadGroupInput(tx: Transaction, asOf: IsoDate): Promise<GroupInput> {
  const lines = await loadLines(tx);
  const installed = await loadInstalled(tx, asOf);
  const pools = await loadPools(tx, asOf, installed);
  const experience = await loadExperience(tx, asOf);
  const restorations = await loadRestorations(tx, asOf);
  return { asOf, lines, pools, installed, experience, restorations };
}

function loadLines(tx: Transaction): Promise<LineInput[]> {
  return tx.$queryRaw<LineInput[]>`
    SELECT l."id"::text AS "id", l."code", l."siteId"::text AS "siteId",
      (l."costPerHour" / r."perEuro")::float8 AS "costPerHour",
      l."costEvidence"::text AS "costEvidence",
      l."bufferHours"::float8 AS "bufferHours",
      l."unrecoveredShare"::float8 AS "unrecoveredShare"
    FROM "Line" l
    JOIN "Site" s ON s."id" = l."siteId"
    LEFT JOIN "CurrencyRate" r ON r."currency" = s."currency"
    ORDER BY l."code"`;
}

function loadInstalled(tx: Transaction, asOf: IsoDate): Promise<InstalledInput[]> {
  return tx.$queryRaw<InstalledInput[]>`
    SELECT m."lineId"::text AS "lineId",
      coalesce(u."partId"::text, p."partId"::text, 'unidentified:' || p."itemClass"::text) AS "poolId",
      count(*)::int AS "units"
    FROM "Position" p
    JOIN "Machine" m ON m."id" = p."machineId"
    LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
      AND daterange(pl."fromOn", pl."untilOn") @> ${asOf}::date
    LEFT JOIN "Unit" u ON u."id" = pl."unitId"
    GROUP BY 1, 2
    ORDER BY 1, 2`;
}
