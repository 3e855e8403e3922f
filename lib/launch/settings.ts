import { Refusal } from "./refusal";

export interface Settings {
  readonly host: string;
  readonly port: number;
  /** Whether the demonstration company is served. */
  readonly demo: boolean;
  /** A PostgreSQL of one's own; without it the embedded one is started. */
  readonly externalDatabase: string | undefined;
  /** The address people open. */
  readonly address: string;
}

const HIGHEST_PORT = 65_535;

/** Reads how to start from the environment. */
export function readSettings(env: Readonly<Record<string, string | undefined>>): Settings {
  const host = env.HOST || "127.0.0.1";
  const port = readPort(env.PORT || "3000");
  return {
    host,
    port,
    demo: env.EBBLINE_DEMO !== "no",
    externalDatabase: env.DATABASE_URL || undefined,
    address: env.BETTER_AUTH_URL || `http://${reachable(host)}:${port}`,
  };
}

/** The address this machine reaches a listening host under. */
export function reachable(host: string): string {
  if (host === "0.0.0.0") return "127.0.0.1";
  if (host === "::") return "[::1]";
  return host.includes(":") ? `[${host}]` : host;
}

function readPort(written: string): number {
  const port = Number(written);
  if (Number.isInteger(port) && port > 0 && port <= HIGHEST_PORT) return port;
  throw new Refusal(`PORT must be a whole number from 1 to ${HIGHEST_PORT}, and it is "${written}".`);
}
