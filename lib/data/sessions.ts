import "server-only";
import type { Refusal } from "@/lib/access/action";
import { type Actor, currentSessionId } from "@/lib/access/actor";
import { refusedOwnPassword } from "@/lib/access/ownPassword";
import { change } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { EndOthers, EndSession } from "@/lib/schema/session";

/** One place a person is signed in at. */
export interface OpenSession {
  readonly id: string;
  /** Whether it is the one that asks. */
  readonly isThis: boolean;
  /** What the browser says of itself; null when it said nothing. */
  readonly device: string | null;
  /** Network address it was opened from; null is not known. */
  readonly address: string | null;
  /** RFC 3339. */
  readonly openedAt: string;
  readonly usedAt: string;
}

/** Where the actor is signed in, the last used first. */
export async function readSessions(actor: Actor): Promise<OpenSession[]> {
  const here = await currentSessionId();
  const rows = await database().session.findMany({
    where: { userId: actor.userId, expiresAt: { gt: new Date() } },
    orderBy: { updatedAt: "desc" },
    select: { id: true, userAgent: true, ipAddress: true, createdAt: true, updatedAt: true },
  });
  return rows.map(({ id, userAgent, ipAddress, createdAt, updatedAt }) => ({
    id,
    isThis: id === here,
    device: userAgent || null,
    address: ipAddress || null,
    openedAt: createdAt.toISOString(),
    usedAt: updatedAt.toISOString(),
  }));
}

/** Ends one of the actor's sessions, at once and wherever it is, for who says their own password. */
export async function endSession(
  actor: Actor,
  { sessionId, password }: EndSession,
): Promise<Result<null, Refusal>> {
  const refused = await refusedOwnPassword(actor, password);
  if (refused) return err(refused);
  return change(actor, async (tx, record) => {
    const { count } = await tx.session.deleteMany({ where: { id: sessionId, userId: actor.userId } });
    if (count === 0)
      return err({ code: "missing", reason: "There you are signed out already. Look at the list again." });
    record({ deed: "session:end", entity: "User", entityId: actor.userId });
    return ok(null);
  });
}

/** Ends all of the actor's sessions but the one that asks, the same way. */
export async function endOtherSessions(
  actor: Actor,
  { password }: EndOthers,
): Promise<Result<{ ended: number }, Refusal>> {
  const refused = await refusedOwnPassword(actor, password);
  if (refused) return err(refused);
  const here = await currentSessionId();
  return change(actor, async (tx, record) => {
    const { count } = await tx.session.deleteMany({ where: { userId: actor.userId, id: { not: here } } });
    if (count > 0)
      record({ deed: "session:endOthers", entity: "User", entityId: actor.userId, after: { ended: count } });
    return ok({ ended: count });
  });
}

/** Whether a code is asked of the actor after the password. */
export async function hasSecondFactor(actor: Actor): Promise<boolean> {
  const user = await database().user.findUnique({
    where: { id: actor.userId },
    select: { twoFactorEnabled: true },
  });
  return user?.twoFactorEnabled === true;
}
