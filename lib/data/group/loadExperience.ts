import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ExperienceInput, RestorationInput } from "@/lib/risk/evaluation";

/** Years of records that count as experience; older ones describe a younger machine. */
export const WINDOW_YEARS = 5;

/**
 * Removals, failures and unit-years of each pool at each site in the years before the day.
 *
 * A place counts until it or its machine was retired. Events of one common cause count once. A removal whose cause is not recorded counts as a failure.
 */
export function loadExperience(tx: Transaction, asOf: IsoDate): Promise<ExperienceInput[]> {
  return tx.$queryRaw<ExperienceInput[]>`
    WITH span AS NOT MATERIALIZED (
      SELECT ${asOf}::date AS "until", (${asOf}::date - make_interval(years => ${WINDOW_YEARS}::int))::date AS "since"
    ), service AS (
      SELECT l."siteId", coalesce(u."partId", p."partId") AS "partId",
        CASE WHEN coalesce(u."partId", p."partId") IS NULL THEN p."itemClass" END AS "unread",
        greatest(0, least(pl."untilOn", span."until", p."retiredOn", m."retiredOn")
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
      SELECT e."siteId", e."kind", e."commonCause", coalesce(e."partId", u."partId", p."partId") AS "partId",
        CASE WHEN coalesce(e."partId", u."partId", p."partId") IS NULL
          THEN coalesce(p."itemClass", e."itemClass") END AS "unread"
      FROM "Event" e
      CROSS JOIN span
      LEFT JOIN "Position" p ON p."id" = e."positionId"
      -- On the day of a change the event belongs to the unit that left.
      LEFT JOIN "Placement" pl ON e."partId" IS NULL AND pl."positionId" = e."positionId"
        AND daterange(pl."fromOn", pl."untilOn", '(]') @> e."happenedAt"::date
      LEFT JOIN "Unit" u ON u."id" = pl."unitId"
      WHERE e."setAside" IS NULL AND e."happenedAt" >= span."since" AND e."happenedAt" < span."until" + 1
    ), causes AS (
      SELECT "partId", "unread", "siteId", "commonCause", count(*) AS "removals",
        count(*) FILTER (WHERE "kind" <> 'no_fault_found') AS "failures"
      FROM happened WHERE "partId" IS NOT NULL OR "unread" IS NOT NULL GROUP BY 1, 2, 3, 4
    ), counted AS (
      SELECT coalesce("partId"::text, 'unidentified:' || "unread"::text) AS "poolId", "siteId",
        sum(CASE WHEN "commonCause" IS NULL THEN "removals" ELSE 1 END) AS "removals",
        sum(CASE WHEN "commonCause" IS NULL THEN "failures" ELSE least("failures", 1) END) AS "failures"
      FROM causes GROUP BY "partId", "unread", "siteId"
    ), exposed AS (
      SELECT coalesce("partId"::text, 'unidentified:' || "unread"::text) AS "poolId", "siteId", sum("years") AS "years"
      FROM service GROUP BY "partId", "unread", "siteId"
    )
    SELECT "poolId", "siteId"::text AS "siteId",
      coalesce(counted."removals", 0)::int AS "removals",
      coalesce(counted."failures", 0)::int AS "failures",
      coalesce(exposed."years", 0)::float8 AS "unitYears"
    FROM exposed FULL JOIN counted USING ("poolId", "siteId")
    ORDER BY 1, 2`;
}

/**
 * Stops of each class with and without a spare at hand: how many, their hours, and the logarithms, summed.
 *
 * Many stops last alike: each length is weighed by how often it occurs, and its logarithm taken once.
 */
export async function loadRestorations(tx: Transaction, asOf: IsoDate): Promise<RestorationInput[]> {
  return tx.$queryRaw<RestorationInput[]>`
    WITH lengths AS (
      SELECT coalesce(part."itemClass", p."itemClass", e."itemClass") AS "itemClass", e."spareAtHand",
        e."downtimeHours" AS "hours", count(*) AS "stops"
      FROM "Event" e
      LEFT JOIN "Part" part ON part."id" = e."partId"
      LEFT JOIN "Position" p ON p."id" = e."positionId"
      WHERE e."setAside" IS NULL AND e."spareAtHand" IS NOT NULL AND e."downtimeHours" > 0
        AND e."happenedAt" < ${asOf}::date + 1
        AND e."happenedAt" >= ${asOf}::date - make_interval(years => ${WINDOW_YEARS}::int)
        AND coalesce(part."itemClass", p."itemClass", e."itemClass") IS NOT NULL
      GROUP BY 1, 2, 3
    )
    SELECT "itemClass"::text AS "itemClass", "spareAtHand", sum("stops")::int AS "stops",
      sum("stops" * ln("hours"))::float8 AS "sumLog",
      sum("stops" * ln("hours") ^ 2)::float8 AS "sumLogSquared",
      sum("stops" * "hours")::float8 AS "sumHours"
    FROM lengths GROUP BY "itemClass", "spareAtHand"
    ORDER BY 1, 2`;
}
