import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ArrivalInput } from "@/lib/risk/evaluation";

interface ArrivalRow extends ArrivalInput {
  readonly partId: string;
}

/**
 * Units out for repair on a day, by part: each due on its day, else a turn-around after it was sent.
 *
 * Where neither is known the day it was sent stands, which has passed: the evaluation takes such a unit as overdue.
 * A unit found beyond repair does not come back.
 */
export async function loadArrivals(
  tx: Transaction,
  asOf: IsoDate,
): Promise<ReadonlyMap<string, ArrivalInput[]>> {
  const rows = await tx.$queryRaw<ArrivalRow[]>`
    SELECT r."partId"::text AS "partId",
      coalesce(r."dueOn", r."sentOn" + coalesce(p."repairTurnaroundDays", 0))::text AS "on",
      count(*)::int AS "pieces", p."repairYield"::float8 AS "works"
    FROM "RepairOrder" r
    JOIN "Part" p ON p."id" = r."partId"
    WHERE r."sentOn" <= ${asOf}::date
      AND ((r."returnedOn" IS NULL AND r."finding" IS DISTINCT FROM 'beyond repair') OR r."returnedOn" > ${asOf}::date)
    GROUP BY 1, 2, 4
    ORDER BY 1, 2`;
  const byPart = new Map<string, ArrivalInput[]>();
  for (const { partId, ...arrival } of rows) byPart.set(partId, [...(byPart.get(partId) ?? []), arrival]);
  return byPart;
}
