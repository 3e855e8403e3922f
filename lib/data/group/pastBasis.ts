import "server-only";
import { database } from "@/lib/data/client";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { ENGINE } from "@/lib/risk/evaluate";

/** What an evaluation of earlier knowledge is computed from; the same key is the same content. */
export type PastBasis =
  | { readonly kind: "records"; readonly key: string }
  | { readonly kind: "snapshot"; readonly key: string; readonly id: string };

/**
 * The rows as they stood, named by the last thing recorded until then; where the look goes back before former rows
 * are kept, the snapshot of that day if there is one.
 */
export async function pastBasis(asOf: IsoDate): Promise<PastBasis> {
  const [row] = await database().$queryRaw<
    { last: string | null; before: boolean; snapshotId: string | null }[]
  >`
    SELECT to_char(greatest(
        (SELECT max("at") FROM "RowPast" WHERE "at" <= known_at()),
        (SELECT max("at") FROM "RowBirth" WHERE "at" <= known_at())
      ) AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US') AS "last",
      coalesce(known_at() < k."at", false) AS "before", s."id"::text AS "snapshotId"
    FROM (SELECT 1) one
    LEFT JOIN "KeptSince" k ON true
    LEFT JOIN "Snapshot" s ON s."asOf" = ${asOf}::date AND s."engine" = ${ENGINE}`;
  const { last = null, before = false, snapshotId = null } = row ?? {};
  if (before && snapshotId !== null)
    return { kind: "snapshot", key: `snapshot ${snapshotId}`, id: snapshotId };
  return { kind: "records", key: `records ${last ?? "none"}` };
}
