import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import type { Rule } from "@/lib/retrofit/compatibility/facts";
import { stepOf } from "@/lib/retrofit/compatibility/step";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import type { ControllerFacts } from "@/lib/view/lineControllers";

interface ControllerRow extends Omit<ControllerFacts, "step"> {
  readonly lineId: string;
  readonly firmwareRaw: string | null;
}

/**
 * Controllers of each line the actor may see, with the axes each drives there.
 *
 * Each is held against every floor rule of those given; which of them its own drives ask for is told on the line's page.
 */
export async function readLineControllers(
  actor: Actor,
  rules: readonly Rule[],
): Promise<Map<string, ControllerFacts[]>> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<ControllerRow[]>`
    WITH counted AS (
      SELECT "machineId", count(*) AS "axes" FROM "Axis" GROUP BY 1
    ), driven AS (
      SELECT m."lineId", m."controllerId", coalesce(sum(counted."axes"), 0)::int AS "axes"
      FROM "Machine" m
      JOIN "Line" l ON l."id" = m."lineId"
      LEFT JOIN counted ON counted."machineId" = m."id"
      WHERE m."controllerId" IS NOT NULL AND (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
      GROUP BY 1, 2
    )
    SELECT driven."lineId"::text AS "lineId", c."designation", c."model", c."firmware", c."firmwareRaw",
      c."memoryPercent"::float8 AS "memoryPercent", driven."axes"
    FROM driven JOIN "Controller" c ON c."id" = driven."controllerId"
    ORDER BY driven."lineId", c."designation"`;
  const byLine = new Map<string, ControllerFacts[]>();
  for (const { lineId, firmwareRaw, ...facts } of rows) {
    const level = parseFirmwareLevel(firmwareRaw ?? facts.firmware?.toString() ?? null);
    const step = stepOf(rules, { model: facts.model, level, groups: [] }).kind;
    const own = byLine.get(lineId);
    if (own) own.push({ ...facts, step });
    else byLine.set(lineId, [{ ...facts, step }]);
  }
  return byLine;
}
