import "server-only";
import { createHmac } from "node:crypto";
import { authSecret } from "@/lib/env";

/**
 * The secret of a webhook: worked out from the installation's key, so that the database holds none.
 *
 * @param generation Raised by one when the secret is changed.
 */
export function webhookSecret(webhookId: string, generation: number): string {
  const mac = createHmac("sha256", authSecret()).update(`webhook secret ${webhookId} ${generation}`);
  return `ebs_${mac.digest("base64url")}`;
}

/** What is signed: which message, when it is sent, and what it says. */
export interface Signed {
  readonly id: string;
  /** Seconds since 1970, as sent. */
  readonly time: number;
  readonly body: string;
}

/** HMAC-SHA-256 (RFC 2104) over `id.time.body`, hex. */
export function signature(secret: string, { id, time, body }: Signed): string {
  return createHmac("sha256", secret).update(`${id}.${time}.${body}`).digest("hex");
}
