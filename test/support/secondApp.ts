import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { dirname } from "node:path";
import { Client } from "pg";
import { builtServer } from "@/lib/launch/build";
import { freePort } from "@/lib/launch/port";
import { accountRows } from "@/seed/accountRows";
import { demoAccounts } from "@/seed/accounts";

export interface SecondApp {
  /** Where a browser reaches it. */
  readonly address: string;
  readonly port: number;
  /** Ends the process at once, as a power cut would: kill -9. */
  kill(): Promise<void>;
  stop(): Promise<void>;
  /** Sends a signal and goes on. */
  send(signal: NodeJS.Signals): void;
}

const READY_MS = 60_000;
const SECRET = "of-the-second-application-of-a-test";

/**
 * The built application a second time, on a database of its own.
 *
 * @param wanted Port to come back at after a kill; without it, or when it is taken, any free one.
 */
export async function startSecondApp(databaseUrl: string, wanted = 0): Promise<SecondApp> {
  if (!existsSync(builtServer))
    throw new Error(
      "The application is not built, and these tests need it: run npm test, or next build first.",
    );
  const port = await freePort(wanted);
  const address = `http://127.0.0.1:${port}`;
  const server = spawn(process.execPath, [builtServer], {
    cwd: dirname(builtServer),
    env: {
      ...process.env,
      NODE_ENV: "production",
      HOSTNAME: "127.0.0.1",
      PORT: String(port),
      DATABASE_URL: databaseUrl,
      BETTER_AUTH_SECRET: SECRET,
      BETTER_AUTH_URL: address,
      EBBLINE_DEMO: "no",
    },
    stdio: ["ignore", "ignore", "inherit"],
  });
  const ended = new Promise<void>((resolve) => server.once("exit", () => resolve()));
  const end = (signal: NodeJS.Signals) => async () => {
    server.kill(signal);
    await ended;
  };
  const isReady = await Promise.race([untilHealthy(address), ended.then(() => false)]);
  if (!isReady) {
    await end("SIGKILL")();
    throw new Error(`The second application did not become ready at ${address}.`);
  }
  return { address, port, kill: end("SIGKILL"), stop: end("SIGTERM"), send: (signal) => server.kill(signal) };
}

async function untilHealthy(address: string): Promise<boolean> {
  const end = performance.now() + READY_MS;
  while (performance.now() < end) {
    const healthy = await fetch(`${address}/api/health`).then(
      (answer) => answer.ok,
      () => false,
    );
    if (healthy) return true;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return false;
}

/** Lets the demonstration's people sign in to an empty database; those of one site may do nothing yet. */
export async function addAccounts(databaseUrl: string): Promise<void> {
  const client = new Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    const tables = await accountRows(demoAccounts, new Map(), new Date().toISOString());
    for (const [table, rows] of Object.entries(tables)) {
      const columns = Object.keys(rows[0] ?? {}).map((column) => `"${column}"`);
      await client.query(
        `INSERT INTO "${table}" (${columns}) SELECT ${columns} FROM jsonb_populate_recordset(NULL::"${table}", $1)`,
        [JSON.stringify(rows)],
      );
    }
  } finally {
    await client.end();
  }
}
