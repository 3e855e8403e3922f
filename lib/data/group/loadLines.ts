import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LineInput } from "@/lib/risk/evaluation";
import { evidenceOn, type StatedCost } from "@/lib/risk/evidenceOn";

interface LineRow
  extends Omit<LineInput, "fixedCost" | "costSteps" | "costEvidence">,
    Omit<StatedCost, "evidence"> {
  readonly costEvidence: LineInput["costEvidence"];
  readonly fixedCost: number | null;
  readonly costSteps: NonNullable<LineInput["costSteps"]> | null;
}

/**
 * Every line with what a stop of it costs, in EUR at the budget rate.
 *
 * A cost whose approval ran out before the day is known one step worse than stated.
 */
export async function loadLines(tx: Transaction, asOf: IsoDate): Promise<LineInput[]> {
  const rows = await tx.$queryRaw<LineRow[]>`
    SELECT l."id"::text AS "id", l."code", l."siteId"::text AS "siteId",
      (l."costPerHour" / r."perEuro")::float8 AS "costPerHour",
      l."costEvidence"::text AS "costEvidence",
      l."costApprovedOn"::text AS "approvedOn", l."costValidUntil"::text AS "validUntil",
      (l."costFixed" / r."perEuro")::float8 AS "fixedCost",
      (
        SELECT jsonb_agg(jsonb_build_object(
          'afterHours', (step->>'afterHours')::float8, 'cost', ((step->>'cost')::numeric / r."perEuro")::float8
        ) ORDER BY (step->>'afterHours')::float8)
        FROM jsonb_array_elements(l."costSteps") step WHERE r."perEuro" IS NOT NULL
      ) AS "costSteps",
      l."bufferHours"::float8 AS "bufferHours",
      l."unrecoveredShare"::float8 AS "unrecoveredShare"
    FROM "Line" l
    JOIN "Site" s ON s."id" = l."siteId"
    LEFT JOIN "CurrencyRate" r ON r."currency" = s."currency"
    ORDER BY l."code"`;
  return rows.map(({ approvedOn, validUntil, fixedCost, costSteps, ...line }) => ({
    ...line,
    costEvidence: evidenceOn({ evidence: line.costEvidence, approvedOn, validUntil }, asOf),
    ...(fixedCost === null ? {} : { fixedCost }),
    ...(costSteps === null ? {} : { costSteps }),
  }));
}
