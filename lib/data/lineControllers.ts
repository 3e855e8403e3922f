import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import type { ControllerFacts } from "@/lib/view/lineControllers";

interface ControllerRow extends ControllerFacts {
  readonly lineId: string;
}

/** Controllers of each line the actor may see, with the axes each drives there. */
export async function readLineControllers(actor: Actor): Promise<Map<string, ControllerFacts[]>> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<ControllerRow[]>`
    SELECT m."lineId"::text AS "lineId", c."designation", c."model", c."firmware",
      c."memoryPercent"::float8 AS "memoryPercent", count(a."id")::int AS "axes"
    FROM "Machine" m
    JOIN "Line" l ON l."id" = m."lineId"
    JOIN "Controller" c ON c."id" = m."controllerId"
    LEFT JOIN "Axis" a ON a."machineId" = m."id"
    WHERE (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
    GROUP BY m."lineId", c."id"
    ORDER BY m."lineId", c."designation"`;
  const byLine = new Map<string, ControllerFacts[]>();
  for (const { lineId, ...facts } of rows) byLine.set(lineId, [...(byLine.get(lineId) ?? []), facts]);
  return byLine;
}

/** Lowest firmware level new drives need, as the installation recorded it; null is not recorded. */
export async function readFirmwareFloor(_actor: Actor): Promise<number | null> {
  const setting = await database().setting.findUnique({
    where: { key: "minimumFirmware" },
    select: { value: true },
  });
  return typeof setting?.value === "number" ? setting.value : null;
}
