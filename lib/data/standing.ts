import "server-only";
import { database } from "@/lib/data/client";
import type { Standing } from "@/lib/metrics/meters";

interface Row {
  readonly name: string;
  readonly value: string;
  readonly count: number;
}

const SAID: Readonly<Record<string, { readonly help: string; readonly label: string }>> = {
  ebbline_jobs: { help: "Jobs of the queue: waiting, or failed for good.", label: "state" },
  ebbline_imports: { help: "Files handed in, by what became of them.", label: "state" },
  ebbline_webhook_messages: { help: "Messages to other systems, by state.", label: "state" },
  ebbline_webhooks: { help: "Webhooks in use, and taken out of use.", label: "state" },
  ebbline_database_connections: { help: "Connections to the database, by state.", label: "state" },
  ebbline_data_version: { help: "Changes of the records the figures are made from.", label: "of" },
};

/** What waits, what failed and what is open in the database now; asked by machines, so without an actor. */
export async function readStandings(): Promise<Standing[]> {
  const rows = await database().$queryRaw<Row[]>`
    SELECT 'ebbline_imports' AS "name", "state"::text AS "value", count(*)::int AS "count"
    FROM "ImportBatch" GROUP BY 2
    UNION ALL SELECT 'ebbline_webhook_messages', "state"::text, count(*)::int FROM "WebhookDelivery" GROUP BY 2
    UNION ALL SELECT 'ebbline_webhooks', CASE WHEN "disabledAt" IS NULL THEN 'used' ELSE 'resting' END, count(*)::int
      FROM "Webhook" GROUP BY 2
    UNION ALL SELECT 'ebbline_jobs', CASE WHEN "attempts" >= "max_attempts" THEN 'failed' ELSE 'waiting' END,
      count(*)::int FROM graphile_worker.jobs GROUP BY 2
    UNION ALL SELECT 'ebbline_database_connections', coalesce("state", 'background'), count(*)::int
      FROM pg_stat_activity WHERE "datname" = current_database() GROUP BY 2
    UNION ALL SELECT 'ebbline_data_version', 'records', "version"::int FROM "DataVersion"`;
  return Object.entries(SAID).map(([name, { help, label }]) => {
    const mine = rows.filter((row) => row.name === name).map(({ value, count }) => [value, count] as const);
    return { name, help, label, values: Object.fromEntries(mine) };
  });
}
