import "server-only";
import { APIError, createAuthMiddleware, isAPIError } from "better-auth/api";
import { countWrong, forgetWrong, isResting } from "@/lib/access/signInPause";
import { database } from "@/lib/data/client";

const PASSWORD_PATH = "/sign-in/email";

/** What of the door and its keys is kept in the audit trail, by path; each names the person it was about. */
const DEEDS: Readonly<Record<string, string>> = {
  "/change-password": "password:change",
  "/two-factor/disable": "secondFactor:drop",
  "/two-factor/generate-backup-codes": "secondFactor:codes",
};

/** Refuses a password while its address rests. */
export const beforeSignIn = createAuthMiddleware(async ({ path, body }) => {
  if (path !== PASSWORD_PATH || !(await isResting(emailOf(body)))) return;
  throw new APIError("TOO_MANY_REQUESTS", { message: "Too many wrong passwords. Wait 15 minutes." });
});

/** Counts wrong passwords and writes the audit trail. */
export const afterSignIn = createAuthMiddleware(async ({ path, body, context }) => {
  const { newSession, returned, session } = context;
  const failed = isAPIError(returned);
  if (path === PASSWORD_PATH) {
    if (failed && returned.status === "UNAUTHORIZED") return refused(emailOf(body));
    if (!failed) await forgetWrong(emailOf(body));
    // The password alone opens nothing where a second factor is asked for.
    if (newSession?.user.twoFactorEnabled) return;
  }
  if (DEEDS[path] && !failed && session) return keep(session.user.id, DEEDS[path]);
  // Leading somebody back from the company's sign-in counts as failed to the library, for it redirects.
  // A session that is looked at near its end is renewed, which opens none.
  if (newSession && path !== "/get-session") await keep(newSession.user.id, "session:open");
});

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

function emailOf(body: unknown): string {
  const email = (body as { email?: unknown } | undefined)?.email;
  return typeof email === "string" ? email : "";
}
