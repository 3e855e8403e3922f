import "server-only";
import { betterAuth } from "better-auth";
import { prismaAdapter } from "better-auth/adapters/prisma";
import { nextCookies } from "better-auth/next-js";
import { admin } from "better-auth/plugins/admin";
import { genericOAuth } from "better-auth/plugins/generic-oauth";
import { twoFactor } from "better-auth/plugins/two-factor";
import { metadataUrl } from "@/lib/access/companyIssuer";
import { hashPassword, isPassword } from "@/lib/access/passwordHash";
import { sessionCookies } from "@/lib/access/sessionCookies";
import { afterSignIn, beforeSignIn } from "@/lib/access/signInTrail";
import { presentDatabase } from "@/lib/data/client";
import { authSecret, authUrl, companySignIn } from "@/lib/env";

const MINIMUM_PASSWORD = 12;

/**
 * Seconds: a session ends when it was not used for a shift and its handover; that it was used is noted every quarter of
 * an hour. The database ends it seven days after it was opened, whatever happens (`hold_session`).
 */
const SESSION = { expiresIn: 12 * 3600, updateAge: 15 * 60 };

/** Attempts from one address: a whole plant may stand behind one, and a shift begins at one time. */
const SIGN_INS = { window: 60, max: 20 };

/** Name the company's own sign-in goes by in addresses: /api/auth/callback/company is where it sends people back. */
export const COMPANY = "company";

/** People sign in by the company's own account once an administrator made theirs here, by the same e-mail. */
function companyPlugins() {
  const company = companySignIn();
  if (!company) return [];
  const { issuer, clientId, clientSecret } = company;
  const discoveryUrl = metadataUrl(issuer);
  const config = {
    providerId: COMPANY,
    discoveryUrl,
    clientId,
    clientSecret,
    disableSignUp: true,
    pkce: true,
    requireIdTokenVerification: true,
    // With headers set, be they none, a redirect is followed within the same origin alone.
    discoveryHeaders: {},
  };
  return [genericOAuth({ config: [{ ...config, scopes: ["openid", "email", "profile"] }] })];
}

/** The sign-in on the settings and the database as they are now. */
export function makeAuth() {
  return betterAuth({
    database: prismaAdapter(presentDatabase(), { provider: "postgresql" }),
    secret: authSecret(),
    baseURL: authUrl(),
    emailAndPassword: {
      ...{ enabled: true, disableSignUp: true, minPasswordLength: MINIMUM_PASSWORD },
      password: { hash: hashPassword, verify: ({ hash, password }) => isPassword(hash, password) },
    },
    rateLimit: { enabled: true, storage: "database", customRules: { "/sign-in/email": SIGN_INS } },
    session: SESSION,
    advanced: sessionCookies(),
    telemetry: { enabled: false },
    account: { accountLinking: { enabled: true, trustedProviders: [COMPANY] } },
    hooks: { before: beforeSignIn, after: afterSignIn },
    plugins: [admin(), twoFactor({ issuer: "Ebbline" }), ...companyPlugins(), nextCookies()],
  });
}

let made: { readonly on: unknown; readonly auth: ReturnType<typeof makeAuth> } | undefined;

/** Sign-in of the process, made at first use so that a build needs no database, and anew where that is another. */
export function auth(): ReturnType<typeof makeAuth> {
  const on = presentDatabase();
  if (made?.on !== on) made = { on, auth: makeAuth() };
  return made.auth;
}
