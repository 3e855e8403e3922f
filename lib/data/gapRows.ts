import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { joinsOn } from "@/lib/data/quality/countGaps";
import { GAP_SQL, SUBJECTS } from "@/lib/data/quality/gapSubjects";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Gap } from "@/lib/view/gap";
import type { GapRow } from "@/lib/view/gapRow";
import { Prisma } from "@/prisma/generated/client";

/** More rows than this are mended in a file, not one by one. */
export const MOST_GAP_ROWS = 500;

/** The very records that have a gap, at one of the person's sites or (null) all, by site and name. */
export async function readGapRows(
  actor: Actor,
  { gap, siteCode, asOf }: { readonly gap: Gap; readonly siteCode: string | null; readonly asOf: IsoDate },
): Promise<{ readonly rows: readonly GapRow[]; readonly total: number }> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const { from, id, label, detail, target } = SUBJECTS[gap.subject];
  const { when, since } = GAP_SQL[gap.key];
  const chosen = Prisma.sql`FROM ${from(asOf)} ${joinsOn(gap.subject)}
    (${ids}::uuid[] IS NULL OR s."id" = ANY(${ids}::uuid[]))
    AND (${siteCode}::text IS NULL OR s."code" = ${siteCode}) AND ${when(asOf)}`;
  const [rows, [sum]] = await Promise.all([
    database().$queryRaw<GapRow[]>`
      SELECT ${id} || ' ' || s."code" AS "id", s."code" AS "siteCode", ${label} AS "label", ${detail} AS "detail",
        ${target} AS "target", (${since})::text AS "sinceOn"
      ${chosen} ORDER BY s."code", 3, 1 LIMIT ${MOST_GAP_ROWS}`,
    database().$queryRaw<{ total: number }[]>`SELECT count(*)::int AS "total" ${chosen}`,
  ]);
  return { rows, total: sum?.total ?? 0 };
}
