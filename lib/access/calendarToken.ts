import "server-only";
import { type Actor, readActor } from "@/lib/access/actor";
import { hashOf } from "@/lib/access/secret";
import { database } from "@/lib/data/client";

/** The person whose calendar the secret opens; null for one that is unknown or taken back. */
export async function actorOfCalendar(token: string): Promise<Actor | null> {
  const feed = await database().calendarFeed.findUnique({
    where: { tokenHash: hashOf(token) },
    select: { userId: true },
  });
  return feed ? readActor(feed.userId) : null;
}
