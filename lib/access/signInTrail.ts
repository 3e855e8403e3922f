import "server-only";
import { APIError, createAuthMiddleware, getSessionFromCtx, isAPIError } from "better-auth/api";
import { isOwnIssuer } from "@/lib/access/companyIssuer";
import { refusedPassword } from "@/lib/access/refusedPassword";
import { noteSecurity } from "@/lib/access/securityLog";
import { countWrong, forgetWrong, isResting } from "@/lib/access/signInPause";
import { spendCode } from "@/lib/access/spentCode";
import { database } from "@/lib/data/client";

const PASSWORD_PATH = "/sign-in/email";
const COMPANY_PATH = "/sign-in/social";
const CODE_PATH = "/two-factor/verify-totp";

/** What of the door and its keys is kept in the audit trail, by path; each names the person it was about. */
const DEEDS: Readonly<Record<string, string>> = {
  "/change-password": "password:change",
  "/two-factor/disable": "secondFactor:drop",
  "/two-factor/generate-backup-codes": "secondFactor:codes",
};

/** Refuses a password while its address rests, a company that is not the one set, and a new password soon guessed. */
export const beforeSignIn = createAuthMiddleware(async (asked) => {
  const { path, body } = asked;
  if (path === PASSWORD_PATH && (await isResting(emailOf(body))))
    throw new APIError("TOO_MANY_REQUESTS", { message: "Too many wrong passwords. Wait 15 minutes." });
  if (path === COMPANY_PATH && !(await isOwnIssuer()))
    throw new APIError("FORBIDDEN", { message: "The company's sign-in is not the one that was set." });
  if (path !== "/change-password") return;
  const session = await getSessionFromCtx(asked);
  const { newPassword } = body as { readonly newPassword?: unknown };
  if (!session || typeof newPassword !== "string") return;
  const message = await refusedPassword(newPassword, session.user);
  if (message !== null) throw new APIError("UNPROCESSABLE_ENTITY", { message });
});

/** Counts wrong passwords, notes refusals and writes the audit trail. */
export const afterSignIn = createAuthMiddleware(async ({ path, body, context }) => {
  const { newSession, returned, session } = context;
  // Leading somebody on, as to the company's sign-in and back, counts as failed to the library.
  const refusal = isAPIError(returned) && returned.status !== "FOUND" ? String(returned.status) : null;
  noteRefusal(path, refusal, session?.user.id);
  if (path === PASSWORD_PATH) await countPassword(emailOf(body), refusal);
  // The password alone opens nothing where a second factor is asked for.
  if (path === PASSWORD_PATH && newSession?.user.twoFactorEnabled) return;
  if (path === CODE_PATH && newSession) await refuseSpentCode(newSession, body);
  if (DEEDS[path] && refusal === null && session) return keep(session.user.id, DEEDS[path]);
  // A session that is looked at near its end is renewed, which opens none.
  if (newSession && path !== "/get-session") await keep(newSession.user.id, "session:open");
});

function noteRefusal(what: string, why: string | null, userId: string | null = null): void {
  if (why !== null) noteSecurity({ event: "door refused", userId, what, why });
}

async function countPassword(email: string, refusal: string | null): Promise<void> {
  if (refusal === null) return forgetWrong(email);
  if (refusal === "UNAUTHORIZED") await refused(email);
}

async function keep(userId: string, deed: string): Promise<void> {
  await database().auditEntry.create({ data: { userId, deed, entity: "User", entityId: userId } });
}

async function refused(email: string): Promise<void> {
  await countWrong(email);
  const known = await database().user.findUnique({
    where: { email: email.toLowerCase() },
    select: { id: true },
  });
  const entityId = known?.id ?? "nobody";
  await database().auditEntry.create({ data: { deed: "session:refuse", entity: "User", entityId } });
}

interface Opened {
  readonly user: { readonly id: string };
  readonly session: { readonly token: string };
}

/** Closes what a code opened that had been used before. */
async function refuseSpentCode({ user, session }: Opened, body: unknown): Promise<void> {
  const { code } = body as { readonly code?: unknown };
  if (await spendCode(user.id, String(code))) return;
  await database().session.deleteMany({ where: { token: session.token } });
  noteSecurity({ event: "door refused", userId: user.id, what: CODE_PATH, why: "code used before" });
  throw new APIError("UNAUTHORIZED", { message: "This code was used already. Wait for the next one." });
}

function emailOf(body: unknown): string {
  const email = (body as { email?: unknown } | undefined)?.email;
  return typeof email === "string" ? email : "";
}
