import { Client } from "pg";

/** What of a batch of events is stored. */
export interface BatchOnDisk {
  readonly state: string;
  readonly written: number;
  readonly kept: number;
  readonly audited: number;
}

const PATIENCE_MS = 60_000;

async function asked<T>(url: string, run: (client: Client) => Promise<T>): Promise<T> {
  const client = new Client({ connectionString: url });
  client.on("error", () => undefined);
  await client.connect();
  try {
    return await run(client);
  } finally {
    await client.end();
  }
}

/** The batch's state, its events by their reference, its steps kept for taking it back, its audit entries. */
export function batchOnDisk(url: string, batchId: string, references: string): Promise<BatchOnDisk> {
  return asked(url, async (client) => {
    const { rows } = await client.query<BatchOnDisk>(
      `SELECT b."state"::text AS "state",
        (SELECT count(*)::int FROM "Event" WHERE "reference" LIKE $2) AS "written",
        (SELECT count(*)::int FROM "ImportChange" c WHERE c."batchId" = b."id") AS "kept",
        (SELECT count(*)::int FROM "AuditEntry" a WHERE a."entityId" = b."id"::text) AS "audited"
       FROM "ImportBatch" b WHERE b."id" = $1`,
      [batchId, references],
    );
    const [row] = rows;
    if (!row) throw new Error(`The batch ${batchId} is gone`);
    return row;
  });
}

/** Waits until the question is answered with yes, asking without a pause. */
async function until(url: string, question: string, values: readonly string[] = []): Promise<void> {
  await asked(url, async (client) => {
    const end = performance.now() + PATIENCE_MS;
    for (;;) {
      const { rows } = await client.query<{ yes: boolean }>(question, [...values]);
      if (rows[0]?.yes) return;
      if (performance.now() > end) throw new Error(`Waited in vain for: ${question}`);
    }
  });
}

/** Until a transaction that is not yet committed has begun to write events. */
export function beganToWrite(url: string): Promise<void> {
  return until(
    url,
    `SELECT EXISTS (SELECT FROM pg_locks l JOIN pg_class c ON c."oid" = l."relation"
      WHERE c."relname" = 'Event' AND l."mode" = 'RowExclusiveLock' AND l."pid" <> pg_backend_pid()) AS "yes"`,
  );
}

/** Until others see the batch as loaded. */
export function committed(url: string, batchId: string): Promise<void> {
  return until(
    url,
    `SELECT EXISTS (SELECT FROM "ImportBatch" WHERE "id" = $1 AND "state" = 'committed') AS "yes"`,
    [batchId],
  );
}

/** Until the database has noticed that the application is gone, and ended what it had begun. */
export function quiet(url: string): Promise<void> {
  return until(
    url,
    `SELECT NOT EXISTS (SELECT FROM pg_stat_activity WHERE "datname" = current_database()
      AND "pid" <> pg_backend_pid() AND "backend_type" = 'client backend') AS "yes"`,
  );
}
