import { Client } from "pg";
import { expect, test } from "vitest";
import { startJobs } from "@/lib/jobs/startJobs";
import { freshDatabase } from "@/test/support/database";

const PATIENCE_MS = 20_000;

/** The question asked again until its answer is the one waited for; the last answer. */
async function waitFor(client: Client, sql: string, wanted: number): Promise<number> {
  const end = performance.now() + PATIENCE_MS;
  for (;;) {
    const { rows } = await client.query<{ found: number }>(sql);
    const found = rows[0]?.found ?? Number.NaN;
    if (found === wanted || performance.now() > end) return found;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

test("the queue knows each recurring work once, however often it is started, and does what is asked of it", async () => {
  const { url, close } = await freshDatabase("jobs");
  const [one, other] = await Promise.all([startJobs(), startJobs()]);
  const client = new Client({ connectionString: url });
  await client.connect();
  const known = "SELECT count(*)::int AS found FROM graphile_worker._private_known_crontabs";
  expect(await waitFor(client, known, 3)).toBe(3);
  const { rows } = await client.query(
    "SELECT identifier FROM graphile_worker._private_known_crontabs ORDER BY identifier",
  );
  expect(rows).toEqual([
    { identifier: "due reports" },
    { identifier: "weekly digests" },
    { identifier: "weekly snapshot" },
  ]);
  await other.stop();
  await client.query("SELECT graphile_worker.add_job('weeklySnapshot')");
  const open = "SELECT count(*)::int AS found FROM graphile_worker._private_jobs";
  expect(await waitFor(client, open, 0)).toBe(0);
  await one.stop();
  await client.end();
  await close();
});

test("a job of a process that was killed is done by another one, and a living one's is left to it", async () => {
  const { url, close } = await freshDatabase("jobs of the dead");
  const living = await startJobs();
  const client = new Client({ connectionString: url });
  await client.connect();
  const take = async (key: string, by: string) => {
    await client.query(
      "SELECT graphile_worker.add_job('weeklySnapshot', job_key := $1, run_at := now() + interval '1 day')",
      [key],
    );
    await client.query(
      `UPDATE graphile_worker._private_jobs
       SET locked_by = $2, locked_at = now() - interval '1 minute', run_at = now() WHERE key = $1`,
      [key, by],
    );
  };
  await client.query("SELECT pg_advisory_lock(72707372, hashtext('pool-living'))");
  await take("dead's", "pool-dead");
  await take("living's", "pool-living");
  const open = "SELECT count(*)::int AS found FROM graphile_worker._private_jobs";
  expect(await waitFor(client, open, 1)).toBe(1);
  const { rows } = await client.query(`SELECT key, locked_by FROM graphile_worker._private_jobs`);
  expect(rows).toEqual([{ key: "living's", locked_by: "pool-living" }]);
  await living.stop();
  await client.end();
  await close();
});
