import type { Client } from "pg";

/** Since when the demonstration company keeps former states. */
const KEPT_SINCE = "2026-01-05T06:00:00.000Z";

/** Tables whose rows say themselves when they were recorded, and the SQL of that instant. */
const RECORDED: Readonly<Record<string, string>> = {
  LifecycleFact: `"recordedOn" + time '09:00'`,
  Obligation: `"recordedOn" + time '09:00'`,
  RepairOrder: `"sentOn" + time '15:00'`,
  // Events are written down on the next working morning, here on the next day.
  Event: `("happenedAt" AT TIME ZONE 'UTC')::date + 1 + time '06:00'`,
};

/**
 * Gives the demonstration a past to look back on: rows that say when they were recorded are not known before, and a
 * bin that was counted stands until then as it did before the count. All else has been there since the beginning.
 */
export async function keepPast(client: Client): Promise<void> {
  await client.query(`DELETE FROM "RowBirth"`);
  await client.query(`INSERT INTO "KeptSince" ("at") VALUES ($1)`, [KEPT_SINCE]);
  for (const [table, instant] of Object.entries(RECORDED))
    await client.query(
      `INSERT INTO "RowBirth" ("id", "table", "keys", "at", "wroteAt")
       SELECT md5($1 || ' ' || r."at")::uuid, $1, array_agg(r."id"::text ORDER BY r."id"), r."at", r."at"
       FROM (SELECT "id", (${instant}) AT TIME ZONE 'UTC' AS "at" FROM "${table}") r
       WHERE r."at" > $2::timestamptz GROUP BY r."at"`,
      [table, KEPT_SINCE],
    );
  await client.query(
    `INSERT INTO "RowPast" ("id", "table", "key", "row", "at", "wroteAt")
     SELECT md5('StockLot ' || l."id" || c."id")::uuid, 'StockLot', l."id"::text, to_jsonb(l) || (step->'before'),
       p."at", p."at"
     FROM "StockCount" c
     CROSS JOIN LATERAL jsonb_array_elements(c."steps"->'lots') step
     CROSS JOIN LATERAL (SELECT (c."postedOn" + time '16:00') AT TIME ZONE 'UTC' AS "at") p
     JOIN "StockLot" l ON l."id" = (step->>'lotId')::uuid
     WHERE jsonb_typeof(step->'before') = 'object' AND p."at" > $1::timestamptz`,
    [KEPT_SINCE],
  );
}
