import { type ChildProcess, spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { dirname, join } from "node:path";
import { builtServer } from "./build";
import { stateFolder } from "./folders";
import { keptText } from "./keptText";
import { Refusal } from "./refusal";
import { reachable, type Settings } from "./settings";

export interface WebServer {
  /** Settles when the server ends, asked or not. */
  readonly ended: Promise<void>;
  stop(): Promise<void>;
}

const endWithParent = new URL("./endWithParent.mjs", import.meta.url).href;

/**
 * Megabytes for young objects: an evaluation makes many that die at once, and the default collects them too often. Per
 * cent the memory may grow before it is cleared: the default lets a long file pile up several times what it holds.
 */
export const MEMORY = ["--max-semi-space-size=32", "--heap-growing-percent=30"];

/** Longer than a proxy or browser keeps an idle connection: who ends it first must not be the one that is asked. */
const KEEP_OPEN_MS = 75_000;

const READY_MS = 60_000;
const STOP_MS = 8_000;

/** Starts the built web application on a database and waits until it answers. */
export async function startWeb(settings: Settings, databaseUrl: string): Promise<WebServer> {
  // A group of its own, so that Ctrl-C reaches it only through stop().
  const server = spawn(process.execPath, [...MEMORY, "--import", endWithParent, builtServer], {
    cwd: dirname(builtServer),
    env: { ...process.env, ...environment(settings, databaseUrl) },
    detached: true,
    stdio: ["ignore", "ignore", "inherit", "ipc"],
  });
  const ended = new Promise<void>((resolve) => server.once("exit", () => resolve()));
  const health = `http://${reachable(settings.host)}:${settings.port}/api/health`;
  const answered = await Promise.race([untilHealthy(health), ended.then(() => false)]);
  const stop = () => stopWeb(server, ended);
  if (answered) return { ended, stop };
  await stop();
  throw new Refusal(`The web server did not become ready at ${health}; what it said is above.`);
}

function environment(settings: Settings, databaseUrl: string): Record<string, string> {
  return {
    NODE_ENV: "production",
    NEXT_TELEMETRY_DISABLED: "1",
    HOSTNAME: settings.host,
    PORT: String(settings.port),
    DATABASE_URL: databaseUrl,
    // Nothing in the application may find the way to the owner's account.
    DATABASE_OWNER_URL: "",
    EBBLINE_DEMO: settings.demo ? "yes" : "no",
    EBBLINE_DATA_FOLDER: stateFolder,
    KEEP_ALIVE_TIMEOUT: String(KEEP_OPEN_MS),
    BETTER_AUTH_SECRET: secret(),
    BETTER_AUTH_URL: settings.address,
    BETTER_AUTH_TRUSTED_ORIGINS: [
      `http://127.0.0.1:${settings.port}`,
      `http://localhost:${settings.port}`,
    ].join(),
  };
}

/** Key of the session cookies, made at the first start, so that people stay signed in over a restart. */
function secret(): string {
  return (
    process.env.BETTER_AUTH_SECRET ||
    keptText(join(stateFolder, "secret"), () => randomBytes(48).toString("base64url"))
  );
}

async function untilHealthy(url: string): Promise<boolean> {
  const end = performance.now() + READY_MS;
  while (performance.now() < end) {
    const healthy = await fetch(url, { signal: AbortSignal.timeout(5_000) }).then(
      (answer) => answer.ok,
      () => false,
    );
    if (healthy) return true;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return false;
}

async function stopWeb(server: ChildProcess, ended: Promise<void>): Promise<void> {
  server.kill("SIGTERM");
  const late = setTimeout(() => server.kill("SIGKILL"), STOP_MS);
  await ended;
  clearTimeout(late);
}
