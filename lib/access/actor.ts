import "server-only";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import { cache } from "react";
import { auth } from "@/lib/access/auth";
import { PATH } from "@/lib/access/contentPolicy";
import { hasPassword, rolesWithFactor } from "@/lib/access/factorRule";
import { grantOf, grantsInForce } from "@/lib/access/grants";
import {
  type GrantedRole,
  maySomewhere,
  onlyReading,
  projectsOf,
  type Role,
  withAmounts,
} from "@/lib/access/policy";
import { noteSecurity } from "@/lib/access/securityLog";
import { database } from "@/lib/data/client";
import { lookedBackTo } from "@/lib/data/lookBack";

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

/** Who is signed in, and whether a second factor is still to be set up: until then nothing may be done or seen. */
const signedIn = cache(async (): Promise<{ readonly actor: Actor | null; readonly owesFactor: boolean }> => {
  const session = await currentSession();
  if (!session) return { actor: null, owesFactor: false };
  const { id, twoFactorEnabled } = session.user;
  const [actor, roles] = await Promise.all([
    readActor(id),
    twoFactorEnabled ? Promise.resolve<Role[]>([]) : rolesWithFactor(),
  ]);
  const isMeant = actor?.grants.some(({ role }) => roles.includes(role)) === true;
  const owesFactor = isMeant && (await hasPassword(id));
  return { actor: actor && owesFactor ? { ...actor, grants: [] } : actor, owesFactor };
});

/** Whether the signed-in person has a role that asks for a second factor and has none yet. */
export async function owesSecondFactor(): Promise<boolean> {
  return (await signedIn()).owesFactor;
}

/** The signed-in person of this request, or null; looking back they may only read. */
export async function currentActor(): Promise<Actor | null> {
  const { actor } = await signedIn();
  return actor && lookedBackTo() !== null ? { ...actor, grants: onlyReading(actor.grants) } : actor;
}

/** The session this request came by, of the person's several; "" when signed out. */
export async function currentSessionId(): Promise<string> {
  return (await currentSession())?.session.id ?? "";
}

/** What a page shows, by which is decided who may open it; the strictest unless it says otherwise. */
interface PageKind {
  /** `hidden`: the page tells no amounts of money to whom they are not shown. */
  readonly amounts?: "hidden";
  /** `contractors`: those of a project too; `everybody`: whoever is signed in, with a role or without. */
  readonly to?: "contractors" | "everybody";
}

/**
 * The signed-in person of this request; others are sent to the sign-in page, and to a page of theirs who may not open
 * this one. A page that tells amounts is read as somebody who has no role where amounts are not shown to them.
 */
export async function signedInActor({ amounts, to }: PageKind = {}): Promise<Actor> {
  const actor = (await currentActor()) ?? redirect("/sign-in");
  if (to === "everybody") return actor;
  const worksOutside = projectsOf(actor.grants, "read").length > 0;
  if (!maySomewhere(actor.grants, "read") && !(to === "contractors" && worksOutside))
    return lead(actor, worksOutside ? "/projects" : "/account");
  if (amounts === "hidden") return actor;
  const grants = withAmounts(actor.grants);
  if (!maySomewhere(grants, "read") && projectsOf(grants, "read").length === 0)
    return lead(actor, "/amounts");
  return { ...actor, grants };
}

/** Leads somebody away from a page that is not theirs, and notes that they asked for it. */
async function lead({ userId }: Actor, to: string): Promise<never> {
  const what = (await headers()).get(PATH) ?? "";
  noteSecurity({ event: "page refused", userId, what, why: to === "/amounts" ? "amounts" : "role" });
  redirect(to);
}

/**
 * The person of a request for a file or a list, or null: nobody, or somebody who reads at no site. What tells amounts is
 * read, as a page is, as somebody who has no role where they are not shown.
 */
export async function currentReader({ amounts }: Pick<PageKind, "amounts"> = {}): Promise<Actor | null> {
  const actor = await currentActor();
  const grants = amounts === "hidden" || !actor ? actor?.grants : withAmounts(actor.grants);
  return actor && grants && maySomewhere(grants, "read") ? { ...actor, grants } : null;
}

/** Somebody by id as far as amounts are shown to them: what a mail that tells amounts is written for. */
export async function readAmountsReader(userId: string): Promise<Actor | null> {
  const actor = await readActor(userId);
  return actor && { ...actor, grants: withAmounts(actor.grants) };
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
      grants: grantsInForce(),
    },
  });
  if (!user || user.banned) return null;
  return { userId: user.id, name: user.name, email: user.email, grants: user.grants.map(grantOf) };
}
