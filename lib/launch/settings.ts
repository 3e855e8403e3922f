import { Refusal } from "./refusal";

export interface Settings {
  readonly host: string;
  readonly port: number;
  /** Whether the demonstration company is served. */
  readonly demo: boolean;
  /** A PostgreSQL of one's own; without it the embedded one is started. */
  readonly externalDatabase: string | undefined;
  /** Its address for the account that owns the tables; undefined where the application uses that one too. */
  readonly ownerDatabase: string | undefined;
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
    ownerDatabase: env.DATABASE_OWNER_URL || undefined,
    address: env.BETTER_AUTH_URL || `http://${reachable(host)}:${port}`,
  };
}

/** The address this machine reaches a listening host under. */
export function reachable(host: string): string {
  if (host === "0.0.0.0") return "127.0.0.1";
  if (host === "::") return "[::1]";
  return host.includes(":") ? `[${host}]` : host;
}

const THIS_MACHINE = /^(127\.\d+\.\d+\.\d+|localhost|\[::1\])$/;

/**
 * What whoever starts must know when passwords can be read on the way; undefined when they cannot.
 *
 * A browser on this machine needs no https. An address others reach does, and so does listening to the network without
 * saying which address people open.
 */
export function unsafeAddress({ address, host }: Pick<Settings, "address" | "host">): string | undefined {
  const { protocol, hostname } = new URL(address);
  if (protocol === "https:") return undefined;
  if (!THIS_MACHINE.test(hostname))
    return `People open Ebbline at ${address}, where whoever is on the network can read their passwords. Put a proxy with https before it and set BETTER_AUTH_URL to its address; then cookies are for https alone and browsers stay with it.`;
  if (THIS_MACHINE.test(new URL(`http://${reachable(host)}`).hostname) && host !== "0.0.0.0" && host !== "::")
    return undefined;
  return "Ebbline listens to the network without https. Where others open it through a proxy with https, set BETTER_AUTH_URL to that address; nobody should open it otherwise.";
}

function readPort(written: string): number {
  const port = Number(written);
  if (Number.isInteger(port) && port > 0 && port <= HIGHEST_PORT) return port;
  throw new Refusal(`PORT must be a whole number from 1 to ${HIGHEST_PORT}, and it is "${written}".`);
}
