import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import type { SeenTotals } from "@/lib/view/drawnTotals";

/** Drawn spans of the summed losses of an evaluation: of the person's sites, and of the group only if all are his. */
export async function readDrawnTotals(actor: Actor, evaluationId: string): Promise<SeenTotals> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const [row] = await database().$queryRaw<
    { group: SeenTotals["group"]; sites: SeenTotals["sites"] | null }[]
  >`
    SELECT CASE WHEN ${ids}::uuid[] IS NULL THEN nullif(e."totals"->'group', 'null') END AS "group",
      (
        SELECT jsonb_object_agg(s."code", e."totals"->'sites'->(s."id"::text)) FROM "Site" s
        WHERE (${ids}::uuid[] IS NULL OR s."id" = ANY(${ids}::uuid[]))
          AND e."totals"->'sites'->(s."id"::text) IS NOT NULL
      ) AS "sites"
    FROM "Evaluation" e WHERE e."id" = ${evaluationId}::uuid`;
  return { group: row?.group ?? null, sites: row?.sites ?? {} };
}
