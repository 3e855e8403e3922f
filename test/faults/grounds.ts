import type { Client } from "pg";
import { on } from "@/test/support/archives";

/** Rows of the demonstration that the load writes to. */
export interface Grounds {
  readonly siteIds: readonly string[];
  readonly positionIds: readonly string[];
  /** As a file of events names them: site, line and machine. */
  readonly machines: readonly string[];
  readonly lots: readonly Lot[];
}

interface Lot {
  readonly id: string;
  readonly state: string;
  readonly quantity: number;
  readonly lastPoweredOn: string | null;
  readonly countedOn: string | null;
}

export function readGrounds(url: string): Promise<Grounds> {
  return on(url, async (client) => ({
    siteIds: await column(client, `SELECT "id"::text AS value FROM "Site" ORDER BY "code"`),
    positionIds: await column(
      client,
      `SELECT "id"::text AS value FROM "Position" WHERE "retiredOn" IS NULL ORDER BY "id"`,
    ),
    machines: await column(
      client,
      `SELECT concat_ws(';', s."code", l."code", m."code") AS value FROM "Machine" m
       JOIN "Line" l ON l."id" = m."lineId" JOIN "Site" s ON s."id" = l."siteId" ORDER BY 1`,
    ),
    lots: (
      await client.query<Lot>(
        `SELECT "id"::text, "state"::text, "quantity", "lastPoweredOn"::text, "countedOn"::text FROM "StockLot"
         WHERE "quantity" > 0 AND "state" = 'usable' AND NOT "originUnknown" ORDER BY "id" LIMIT 20`,
      )
    ).rows,
  }));
}

async function column(client: Client, sql: string): Promise<string[]> {
  return (await client.query<{ value: string }>(sql)).rows.map(({ value }) => value);
}
