import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { Client } from "pg";
import { openTestServer } from "@/lib/launch/check/testServer";
import type { Life } from "@/lib/launch/live";
import { migrate } from "@/lib/launch/migrate";

/** A database with the `large` demonstration: the one given, or a new one that is dropped at the end. */
export async function openLarge(life: Life): Promise<string> {
  const given = process.env.EBBLINE_BENCH_DATABASE_URL;
  if (given) {
    await migrate(given);
    return given;
  }
  const server = await openTestServer(life);
  const admin = new Client({ connectionString: server("postgres") });
  await admin.connect();
  await admin.query("DROP DATABASE IF EXISTS ebbline_bench WITH (FORCE)");
  await admin.query("CREATE DATABASE ebbline_bench");
  life.endWith(async () => {
    await admin.query("DROP DATABASE ebbline_bench WITH (FORCE)");
    await admin.end();
  });
  const url = server("ebbline_bench");
  await migrate(url);
  console.log("Filling a database with the large demonstration …");
  // By a process of its own: its memory is none of the engine's.
  await promisify(execFile)(
    process.execPath,
    ["--conditions=react-server", "--import", "tsx", "seed/index.ts", "large"],
    { env: { ...process.env, DATABASE_URL: url } },
  );
  return url;
}
