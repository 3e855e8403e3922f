import { timingSafeEqual } from "node:crypto";
import { hashOf } from "@/lib/access/secret";
import { metricsToken } from "@/lib/env";

/** Whether a request says the token the environment sets for the metrics; without one set nobody may read them. */
export function mayReadMetrics(authorization: string | null): boolean {
  const wanted = metricsToken();
  if (wanted === null) return false;
  const said = /^Bearer +(\S+)$/i.exec(authorization ?? "")?.[1] ?? "";
  // Hashes have one length, which the comparison needs, and tell nothing of the token's.
  return timingSafeEqual(Buffer.from(hashOf(said)), Buffer.from(hashOf(wanted)));
}
