import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ExperienceInput, RestorationInput } from "@/lib/risk/evaluation";

/** Years of records that count as experience; older ones describe a younger machine. */
const WINDOW_YEARS = 5;

/**
 * Removals, failures and unit-years of each pool at each site in the years before the day.
 *
 * Events of one common cause count once. A removal whose cause is not recorded counts as a failure.
 */
export async function loadExperience(tx: Transaction, asOf: IsoDate): Promise<ExperienceInput[]> {
  return tx.$queryRaw<ExperienceInput[]>`
    WITH span AS (
      SELECT ${asOf}::date AS "until", (${asOf}::date - make_interval(years => ${WINDOW_YEARS}::int))::date AS "since"
    ), service AS (
      SELECT l."siteId",
        coalesce(u."partId"::text, p."partId"::text, 'unidentified:' || p."itemClass"::text) AS "poolId",
        greatest(0, least(coalesce(pl."untilOn", span."until"), span."until")
          - greatest(span."since", pl."fromOn", make_date(coalesce(a."inServiceYear", m."inServiceYear"), 1, 1))
        ) / 365.25 AS "years"
      FROM "Position" p
      CROSS JOIN span
      JOIN "Machine" m ON m."id" = p."machineId"
      JOIN "Line" l ON l."id" = m."lineId"
      LEFT JOIN "Axis" a ON a."id" = p."axisId"
      LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
      LEFT JOIN "Unit" u ON u."id" = pl."unitId"
    ), happened AS (
      SELECT e."siteId", e."kind", e."commonCause",
        coalesce(e."partId"::text, u."partId"::text, p."partId"::text,
          'unidentified:' || coalesce(p."itemClass", e."itemClass")::text) AS "poolId"
      FROM "Event" e
      CROSS JOIN span
      LEFT JOIN "Position" p ON p."id" = e."positionId"
      -- On the day of a change the event belongs to the unit that left.
      LEFT JOIN "Placement" pl ON e."partId" IS NULL AND pl."positionId" = e."positionId"
        AND daterange(pl."fromOn", pl."untilOn", '(]') @> e."happenedAt"::date
      LEFT JOIN "Unit" u ON u."id" = pl."unitId"
      WHERE e."setAside" IS NULL AND e."happenedAt" >= span."since" AND e."happenedAt" < span."until" + 1
    ), causes AS (
      SELECT "poolId", "siteId", "commonCause", count(*) AS "removals",
        count(*) FILTER (WHERE "kind" <> 'no_fault_found') AS "failures"
      FROM happened WHERE "poolId" IS NOT NULL GROUP BY 1, 2, 3
    ), counted AS (
      SELECT "poolId", "siteId",
        sum(CASE WHEN "commonCause" IS NULL THEN "removals" ELSE 1 END) AS "removals",
        sum(CASE WHEN "commonCause" IS NULL THEN "failures" ELSE least("failures", 1) END) AS "failures"
      FROM causes GROUP BY 1, 2
    ), exposed AS (
      SELECT "poolId", "siteId", sum("years") AS "years" FROM service GROUP BY 1, 2
    )
    SELECT "poolId", "siteId"::text AS "siteId",
      coalesce(counted."removals", 0)::int AS "removals",
      coalesce(counted."failures", 0)::int AS "failures",
      coalesce(exposed."years", 0)::float8 AS "unitYears"
    FROM exposed FULL JOIN counted USING ("poolId", "siteId")
    ORDER BY 1, 2`;
}

/** Stops of each class with and without a spare at hand, summed in logarithms. */
export async function loadRestorations(tx: Transaction, asOf: IsoDate): Promise<RestorationInput[]> {
  return tx.$queryRaw<RestorationInput[]>`
    SELECT coalesce(part."itemClass", p."itemClass", e."itemClass")::text AS "itemClass", e."spareAtHand",
      count(*)::int AS "stops",
      sum(ln(e."downtimeHours"))::float8 AS "sumLog",
      sum(ln(e."downtimeHours") ^ 2)::float8 AS "sumLogSquared"
    FROM "Event" e
    LEFT JOIN "Part" part ON part."id" = e."partId"
    LEFT JOIN "Position" p ON p."id" = e."positionId"
    WHERE e."setAside" IS NULL AND e."spareAtHand" IS NOT NULL AND e."downtimeHours" > 0
      AND e."happenedAt" < ${asOf}::date + 1
      AND e."happenedAt" >= ${asOf}::date - make_interval(years => ${WINDOW_YEARS}::int)
      AND coalesce(part."itemClass", p."itemClass", e."itemClass") IS NOT NULL
    GROUP BY 1, 2
    ORDER BY 1, 2`;
}
