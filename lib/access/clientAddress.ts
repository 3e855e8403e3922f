import type { IncomingHttpHeaders } from "node:http";
import { aroundRequests } from "@/lib/access/aroundRequests";

/** What a proxy says of the client; anybody may write the same. */
const SAID_BY_A_PROXY = [
  ...["forwarded", "x-forwarded-for", "x-forwarded-host", "x-forwarded-proto", "x-forwarded-port"],
  "x-real-ip",
];

/** Takes from a request what only a trusted proxy may say; the framework then fills in what the connection itself says. */
export function forgetForwarded(headers: IncomingHttpHeaders): void {
  for (const name of SAID_BY_A_PROXY) delete headers[name];
}

/** From now on no request of this process names another client address or host than its connection has. */
export function believeConnections(): void {
  aroundRequests(({ headers }, _, pass) => {
    forgetForwarded(headers);
    return pass();
  });
}
