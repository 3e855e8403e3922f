import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import { holds, MOST_HITS, type RankedHit, rankOf, type Wanted } from "@/lib/data/search/matching";
import { Prisma } from "@/prisma/generated/client";

const BIN = [Prisma.sql`lot."bin"`];

interface BinRow {
  readonly bin: string;
  readonly siteCode: string;
  readonly partId: string;
  readonly number: string;
  readonly rank: number;
}

/** What lies in a bin of the storeroom. */
export async function searchBins(actor: Actor, { key }: Wanted): Promise<RankedHit[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<BinRow[]>`
    SELECT DISTINCT lot."bin", s."code" AS "siteCode", p."id"::text AS "partId", p."number",
      ${rankOf(key, ...BIN)} AS "rank"
    FROM "StockLot" lot
    JOIN "Site" s ON s."id" = lot."siteId"
    JOIN "Part" p ON p."id" = lot."partId"
    WHERE ${holds(key, ...BIN)} AND (${ids}::uuid[] IS NULL OR lot."siteId" = ANY(${ids}::uuid[]))
    ORDER BY "rank", "bin", "siteCode", p."number" LIMIT ${MOST_HITS}`;
  return rows.map(({ bin, siteCode, partId, number, rank }) => ({
    kind: "bin",
    title: bin,
    detail: `${number} at ${siteCode}`,
    href: `/parts/${partId}#bin-${encodeURIComponent(siteCode)}-${encodeURIComponent(bin)}`,
    rank,
  }));
}
