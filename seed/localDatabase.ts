import { SeedRefusal } from "@/seed/load";

/** This machine, a socket of it, or the database service beside the app in the compose file. */
const LOCAL_HOSTS = ["", "localhost", "127.0.0.1", "[::1]", "database"];

/**
 * Refuses a database that is not on this machine.
 *
 * @throws {SeedRefusal} naming the host.
 */
export function refuseForeign(url: string): void {
  const { hostname, searchParams } = new URL(url);
  const host = searchParams.get("host") ?? hostname;
  if (LOCAL_HOSTS.includes(host) || host === "::1" || host.startsWith("/")) return;
  throw new SeedRefusal(`A demonstration is only written to a database on this machine, not to ${host}.`);
}
