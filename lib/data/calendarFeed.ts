import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { newSecret } from "@/lib/access/secret";
import { change } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { authUrl } from "@/lib/env";
import { ok, type Result } from "@/lib/kernel/result";

/** Since when the person has a calendar address; null without one. RFC 3339. */
export async function readCalendarFeed(actor: Actor): Promise<string | null> {
  const feed = await database().calendarFeed.findUnique({
    where: { userId: actor.userId },
    select: { createdAt: true },
  });
  return feed?.createdAt.toISOString() ?? null;
}

/** Makes the person a calendar address; a former one stops working. It is told this once and not kept. */
export async function makeCalendarFeed(actor: Actor): Promise<Result<{ address: string }, Refusal>> {
  const { token, tokenHash } = newSecret();
  const { userId } = actor;
  return change(actor, async (tx, record) => {
    await tx.calendarFeed.upsert({
      where: { userId },
      create: { userId, tokenHash },
      update: { tokenHash, createdAt: new Date() },
    });
    record({ deed: "calendar:make", entity: "CalendarFeed", entityId: userId });
    return ok({ address: `${authUrl()}/api/calendar/${token}` });
  });
}

/** Takes the person's calendar address back. */
export async function dropCalendarFeed(actor: Actor): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const { count } = await tx.calendarFeed.deleteMany({ where: { userId: actor.userId } });
    if (count > 0) record({ deed: "calendar:drop", entity: "CalendarFeed", entityId: actor.userId });
    return ok(null);
  });
}
