import { createHash } from "node:crypto";
import { cpSync, existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { projectFolder, stateFolder } from "./folders";
import { keepText } from "./keptText";
import { Refusal } from "./refusal";
import { runNode } from "./run";

const SOURCES = [
  "app",
  "instrumentation.ts",
  "lib",
  "prisma",
  "public",
  "next.config.ts",
  "package-lock.json",
  "postcss.config.mjs",
  "proxy.ts",
  "tsconfig.json",
];
const NOT_BUILT_FROM = ["lib/launch", "prisma/generated", "prisma/migrations"];

const client = join(projectFolder, "prisma/generated/client.ts");
export const builtServer = join(projectFolder, ".next/standalone/server.js");
const note = join(stateFolder, "built-from");

/**
 * Prisma wants a binary it would fetch from the web. To generate it only asks whether that file exists, so
 * any program will do.
 */
const generating = { PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: "1" };

/** Writes the database client from the schema. */
export async function generateClient(signal?: AbortSignal): Promise<void> {
  const done = await runNode(["node_modules/prisma/build/index.js", "generate"], {
    env: generating,
    output: "quiet",
    ...(signal ? { signal } : {}),
  });
  if (!done) throw new Refusal("The database client could not be written: Prisma's message is above.");
}

/** Whether the web application was built from the sources as they are. */
export function isBuilt(): boolean {
  if (!existsSync(builtServer) || !existsSync(client) || !existsSync(note)) return false;
  return readFileSync(note, "utf8") === fingerprint();
}

/** Builds the web application, with everything its server needs beside it. */
export async function build(signal?: AbortSignal): Promise<void> {
  const builtFrom = fingerprint();
  const done = await runNode(["node_modules/next/dist/bin/next", "build"], {
    env: { NEXT_TELEMETRY_DISABLED: "1", NODE_ENV: "production" },
    output: "quiet",
    ...(signal ? { signal } : {}),
  });
  if (!done) throw new Refusal("The web application could not be built: the message is above.");
  const beside = join(projectFolder, ".next/standalone");
  cpSync(join(projectFolder, ".next/static"), join(beside, ".next/static"), { recursive: true });
  const open = join(projectFolder, "public");
  if (existsSync(open)) cpSync(open, join(beside, "public"), { recursive: true });
  keepText(note, builtFrom);
}

/** A digest of all that the build is made from, and of the Node that made it. */
function fingerprint(): string {
  const digest = createHash("sha256").update(process.version);
  for (const source of SOURCES) addTo(digest, source);
  return digest.digest("hex");
}

function addTo(digest: ReturnType<typeof createHash>, path: string): void {
  const full = join(projectFolder, path);
  if (NOT_BUILT_FROM.includes(path) || !existsSync(full)) return;
  if (statSync(full).isDirectory()) {
    for (const name of readdirSync(full).sort()) addTo(digest, `${path}/${name}`);
  } else {
    digest.update(`${path}\0`).update(readFileSync(full)).update("\0");
  }
}
