import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LeavingPlace } from "@/lib/risk/withLeaves";

/**
 * Units that projects still under way take out of lines from a day on.
 *
 * A removal planned before the day is left out: units still installed then did not leave on it, and no other day is
 * planned for them.
 */
export function loadLeaving(tx: Transaction, asOf: IsoDate): Promise<LeavingPlace[]> {
  return tx.$queryRaw<LeavingPlace[]>`
    SELECT r."lineId"::text AS "lineId", r."partId"::text AS "poolId", r."leavesOn"::text AS "on", r."units", r."kept"
    FROM "PlannedRemoval" r
    JOIN "Project" p ON p."id" = r."projectId"
    WHERE p."status" NOT IN ('closed', 'parked') AND r."leavesOn" >= ${asOf}::date
    ORDER BY r."leavesOn", p."code", r."partId"`;
}
