import "server-only";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import { cache } from "react";
import { auth } from "@/lib/access/auth";
import type { GrantedRole } from "@/lib/access/policy";
import { database } from "@/lib/data/client";

/** Who is asking, and what they may do where; the first argument of each read and write. */
export interface Actor {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  readonly grants: readonly GrantedRole[];
  /** The access key another system asks by; absent is the person on a screen. */
  readonly key?: { readonly id: string; readonly name: string };
  /** The request of that system, so that its change is made once however often it is sent. */
  readonly request?: OnceRequest;
}

/** A write of another system, as it named it. */
export interface OnceRequest {
  readonly name: string;
  /** SHA-256 of method, path and body, hex. */
  readonly hash: string;
}

const currentSession = cache(async () => auth().api.getSession({ headers: await headers() }));

/** The signed-in person of this request, or null. */
export const currentActor = cache(async (): Promise<Actor | null> => {
  const session = await currentSession();
  return session ? readActor(session.user.id) : null;
});

/** The session this request came by, of the person's several; "" when signed out. */
export async function currentSessionId(): Promise<string> {
  return (await currentSession())?.session.id ?? "";
}

/** The signed-in person of this request; others are sent to the sign-in page. */
export async function signedInActor(): Promise<Actor> {
  return (await currentActor()) ?? redirect("/sign-in");
}

/** Somebody by id, for requests that prove who asks in another way than a session; null when there is none. */
export async function readActor(userId: string): Promise<Actor | null> {
  const user = await database().user.findUnique({
    where: { id: userId },
    select: {
      id: true,
      name: true,
      email: true,
      banned: true,
      grants: { select: { role: true, siteId: true } },
    },
  });
  if (!user || user.banned) return null;
  return { userId: user.id, name: user.name, email: user.email, grants: user.grants };
}
