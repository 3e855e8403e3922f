import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readRulesInForce } from "@/lib/data/rules";
import { siteIds } from "@/lib/data/scope";
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
 * Each is held against every floor rule in force; which of them its own drives ask for is told on the line's page.
 */
export async function readLineControllers(actor: Actor): Promise<Map<string, ControllerFacts[]>> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const [rules, rows] = await Promise.all([
    readRulesInForce(actor),
    database().$queryRaw<ControllerRow[]>`
      SELECT m."lineId"::text AS "lineId", c."designation", c."model", c."firmware", c."firmwareRaw",
        c."memoryPercent"::float8 AS "memoryPercent", count(a."id")::int AS "axes"
      FROM "Machine" m
      JOIN "Line" l ON l."id" = m."lineId"
      JOIN "Controller" c ON c."id" = m."controllerId"
      LEFT JOIN "Axis" a ON a."machineId" = m."id"
      WHERE (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
      GROUP BY m."lineId", c."id"
      ORDER BY m."lineId", c."designation"`,
  ]);
  const byLine = new Map<string, ControllerFacts[]>();
  for (const { lineId, firmwareRaw, ...facts } of rows) {
    const level = parseFirmwareLevel(firmwareRaw ?? facts.firmware?.toString() ?? null);
    const step = stepOf(rules, { model: facts.model, level, groups: [] }).kind;
    byLine.set(lineId, [...(byLine.get(lineId) ?? []), { ...facts, step }]);
  }
  return byLine;
}
