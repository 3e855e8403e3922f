import { spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { builtServer } from "@/lib/launch/build";
import type { Life } from "@/lib/launch/live";
import { freePort } from "@/lib/launch/port";
import { Refusal } from "@/lib/launch/refusal";
import { MEMORY } from "@/lib/launch/web";

/** The built server as people use it, in a process of its own. */
export interface ServedApp {
  readonly address: string;
  readonly pid: number;
  /** Signs the cookies of its sessions. */
  readonly secret: string;
  readonly metricsToken: string;
  /** The name a browser calls an action by, as this build made it. */
  actionId(exportedName: string): string;
}

const READY_MS = 60_000;

/** Starts the built server on a database; `EBBLINE_BENCH_SERVER` names another build's `server.js`. */
export async function serveApp(databaseUrl: string, life: Life): Promise<ServedApp> {
  const entry = process.env.EBBLINE_BENCH_SERVER ?? builtServer;
  if (!existsSync(entry))
    throw new Refusal("The application is not built: run npm start or npm test once before.");
  const port = await freePort(3970);
  const address = `http://127.0.0.1:${port}`;
  const [secret, metricsToken] = [randomBytes(24).toString("hex"), randomBytes(24).toString("hex")];
  const flags = (process.env.EBBLINE_BENCH_NODE_FLAGS ?? "").split(" ").filter(Boolean);
  const server = spawn(process.execPath, [...MEMORY, ...flags, entry], {
    cwd: dirname(entry),
    env: {
      ...process.env,
      ...{ NODE_ENV: "production", HOSTNAME: "127.0.0.1", PORT: String(port), EBBLINE_DEMO: "no" },
      ...{ DATABASE_URL: databaseUrl, BETTER_AUTH_SECRET: secret, BETTER_AUTH_URL: address },
      EBBLINE_METRICS_TOKEN: metricsToken,
    },
    stdio: ["ignore", "ignore", "inherit"],
  });
  const ended = new Promise<void>((resolve) => server.once("exit", () => resolve()));
  life.endWith(async () => {
    server.kill("SIGTERM");
    await ended;
  });
  if (!(await Promise.race([untilHealthy(address), ended.then(() => false)])))
    throw new Refusal(`The server of ${entry} did not become ready; what it said is above.`);
  const actionId = (exportedName: string) => actionOf(dirname(entry), exportedName);
  return { address, pid: server.pid ?? 0, secret, metricsToken, actionId };
}

interface Manifest {
  readonly node: Readonly<Record<string, { readonly exportedName: string }>>;
}

function actionOf(folder: string, exportedName: string): string {
  const file = join(folder, ".next/server/server-reference-manifest.json");
  const { node } = JSON.parse(readFileSync(file, "utf8")) as Manifest;
  const found = Object.entries(node).find(([, action]) => action.exportedName === exportedName);
  if (!found) throw new Error(`The build has no action ${exportedName}`);
  return found[0];
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
