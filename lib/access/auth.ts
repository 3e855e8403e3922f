import "server-only";
import { betterAuth } from "better-auth";
import { prismaAdapter } from "better-auth/adapters/prisma";
import { nextCookies } from "better-auth/next-js";
import { admin } from "better-auth/plugins/admin";
import { database } from "@/lib/data/client";
import { authSecret, authUrl } from "@/lib/env";

const MINIMUM_PASSWORD = 12;

/** Attempts from one address: a whole plant may stand behind one, and a shift begins at one time. */
const SIGN_INS = { window: 60, max: 20 };

function makeAuth() {
  return betterAuth({
    database: prismaAdapter(database(), { provider: "postgresql" }),
    secret: authSecret(),
    baseURL: authUrl(),
    emailAndPassword: { enabled: true, disableSignUp: true, minPasswordLength: MINIMUM_PASSWORD },
    rateLimit: { enabled: true, storage: "database", customRules: { "/sign-in/email": SIGN_INS } },
    telemetry: { enabled: false },
    plugins: [admin(), nextCookies()],
  });
}

let made: ReturnType<typeof makeAuth> | undefined;

/** Sign-in of the process, made at first use so that a build needs no database. */
export function auth(): ReturnType<typeof makeAuth> {
  made ??= makeAuth();
  return made;
}
