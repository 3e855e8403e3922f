import "server-only";
import { z } from "zod";
import { noteSecurity } from "@/lib/access/securityLog";
import { companySignIn } from "@/lib/env";

const metadata = z.object({ issuer: z.string() });
const PATIENCE_MS = 10_000;

/** Where the company's sign-in says what it is (OpenID Connect Discovery 1.0, section 4). */
export const metadataUrl = (issuer: string): string => `${issuer}/.well-known/openid-configuration`;

/**
 * Whether the company's sign-in calls itself by the very issuer that was set (Discovery 1.0, section 4.3); a slash at the
 * end aside, as the setting is read without one. An answer that does not come is not the right one.
 */
export async function isOwnIssuer(): Promise<boolean> {
  const company = companySignIn();
  if (!company) return false;
  const answer = await fetch(metadataUrl(company.issuer), {
    redirect: "error",
    signal: AbortSignal.timeout(PATIENCE_MS),
  }).catch(() => null);
  const told = metadata.safeParse(await answer?.json().catch(() => null));
  const isOwn = told.success && told.data.issuer.replace(/\/$/, "") === company.issuer;
  if (!isOwn) noteSecurity({ event: "door refused", userId: null, what: "/sign-in/social", why: "issuer" });
  return isOwn;
}
