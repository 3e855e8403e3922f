import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import { holds, MOST_HITS, onLine, type RankedHit, rankOf, type Wanted } from "@/lib/data/search/matching";
import { Prisma } from "@/prisma/generated/client";

const CONTROLLER = [Prisma.sql`c."designation"`, Prisma.sql`c."model"`];

interface ControllerRow {
  readonly designation: string;
  readonly model: string;
  readonly firmware: number | null;
  readonly siteCode: string;
  readonly lineCode: string | null;
  readonly rank: number;
}

/** Controllers by designation or model, each at the first machine it drives. */
export async function searchControllers(actor: Actor, { key }: Wanted): Promise<RankedHit[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<ControllerRow[]>`
    SELECT c."designation", c."model", c."firmware", s."code" AS "siteCode", first."lineCode",
      ${rankOf(key, ...CONTROLLER)} AS "rank"
    FROM "Controller" c
    JOIN "Site" s ON s."id" = c."siteId"
    LEFT JOIN LATERAL (
      SELECT l."code" AS "lineCode"
      FROM "Machine" m JOIN "Line" l ON l."id" = m."lineId"
      WHERE m."controllerId" = c."id" ORDER BY l."code", m."code" LIMIT 1
    ) first ON true
    WHERE ${holds(key, ...CONTROLLER)} AND (${ids}::uuid[] IS NULL OR c."siteId" = ANY(${ids}::uuid[]))
    ORDER BY "rank", s."code", c."designation" LIMIT ${MOST_HITS}`;
  return rows.map(({ designation, model, firmware, siteCode, lineCode, rank }) => ({
    kind: "controller",
    title: designation,
    detail: [model, firmware === null ? "firmware not known" : `firmware ${firmware}`, siteCode].join(" · "),
    href:
      lineCode === null
        ? `/lines?site=${encodeURIComponent(siteCode)}#controller-${encodeURIComponent(designation)}`
        : onLine(lineCode, "controller", designation),
    rank,
  }));
}
