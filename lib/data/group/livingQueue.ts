import "server-only";
import { Client } from "pg";
import { databaseUrl } from "@/lib/env";

/** First half of the key of the locks by which each process tells the others that it lives. */
const LIVING = 72_707_372;
const LOOK_MS = 5_000;
const TRY_AGAIN_MS = 500;
/** Longer than a process needs to hold its lock again after the database was away. */
const GRACE_SECONDS = 10;

/**
 * Holds a lock while this process works the queue, and frees what processes took that were killed before they ended
 * it; the queue alone would keep that for four hours. A lock ends with the process that holds it, however it ends.
 *
 * @param poolId What the queue calls this process.
 * @returns Lets go of the lock.
 */
export function keepQueueAlive(poolId: string): () => Promise<void> {
  const stopping = new AbortController();
  const ended = keep(poolId, stopping.signal);
  return async () => {
    stopping.abort();
    await ended;
  };
}

async function keep(poolId: string, stopping: AbortSignal): Promise<void> {
  while (!stopping.aborted) {
    const client = new Client({ connectionString: databaseUrl() });
    client.on("error", () => undefined);
    try {
      await client.connect();
      await client.query("SELECT pg_advisory_lock($1, hashtext($2))", [LIVING, poolId]);
      while (!stopping.aborted) {
        await client.query(FREE_WHAT_THE_DEAD_HOLD, [LIVING, GRACE_SECONDS]);
        await pause(LOOK_MS, stopping);
      }
    } catch {
      // The database is away: the lock went with it and is taken again.
      await pause(TRY_AGAIN_MS, stopping);
    } finally {
      await client.end().catch(() => undefined);
    }
  }
}

/** Those that hold jobs or queues for a while and no lock, on a database that runs long enough to know. */
const FREE_WHAT_THE_DEAD_HOLD = `
  WITH held AS (
    SELECT locked_by, locked_at FROM graphile_worker._private_jobs WHERE locked_by IS NOT NULL
    UNION ALL SELECT locked_by, locked_at FROM graphile_worker._private_job_queues WHERE locked_by IS NOT NULL
  ), dead AS (
    SELECT DISTINCT locked_by FROM held
    WHERE greatest(locked_at, pg_postmaster_start_time()) < now() - make_interval(secs => $2)
      AND NOT EXISTS (SELECT FROM pg_locks l JOIN pg_database d ON d.oid = l.database
        WHERE l.locktype = 'advisory' AND l.objsubid = 2 AND d.datname = current_database() AND l.granted
          AND l.classid = $1::int::oid AND l.objid = (hashtext(locked_by)::bigint & 4294967295)::oid)
  )
  SELECT graphile_worker.force_unlock_workers(array_agg(locked_by)),
    pg_notify('jobs:insert', '{"r":"freed","count":1}')
  FROM dead HAVING count(*) > 0`;

function pause(ms: number, stopping: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const end = () => {
      clearTimeout(timer);
      stopping.removeEventListener("abort", end);
      resolve();
    };
    const timer = setTimeout(end, ms);
    stopping.addEventListener("abort", end);
  });
}
