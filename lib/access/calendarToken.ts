import "server-only";
import { createHash, randomBytes } from "node:crypto";
import { type Actor, readActor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";

/** A secret nobody guesses, and what is kept of it. */
export function newToken(): { readonly token: string; readonly tokenHash: string } {
  const token = randomBytes(32).toString("base64url");
  return { token, tokenHash: hashOf(token) };
}

/** The person whose calendar the secret opens; null for one that is unknown or taken back. */
export async function actorOfCalendar(token: string): Promise<Actor | null> {
  const feed = await database().calendarFeed.findUnique({
    where: { tokenHash: hashOf(token) },
    select: { userId: true },
  });
  return feed ? readActor(feed.userId) : null;
}

function hashOf(token: string): string {
  return createHash("sha256").update(token).digest("hex");
}
