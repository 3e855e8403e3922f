import "server-only";
import type { Transaction } from "@/lib/data/change";

export interface FoundPart {
  readonly id: string;
  readonly number: string;
}

/**
 * The part a plate or a storeroom's number names, whatever its spaces, dashes and case; null when none or several do.
 */
export async function partByPlate(tx: Transaction, plate: string, siteId: string): Promise<FoundPart | null> {
  const found = await tx.$queryRaw<FoundPart[]>`
    SELECT DISTINCT p."id"::text AS "id", p."number"
    FROM "Part" p
    LEFT JOIN "PartAlias" a ON a."partId" = p."id" AND (a."siteId" IS NULL OR a."siteId" = ${siteId}::uuid)
    WHERE "searchKey"(${plate}) <> '' AND p."mergedIntoId" IS NULL AND
      ("searchKey"(p."number") = "searchKey"(${plate}) OR "searchKey"(a."alias") = "searchKey"(${plate}))`;
  return found.length === 1 ? (found[0] ?? null) : null;
}
