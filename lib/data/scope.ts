import "server-only";
import type { Actor } from "@/lib/access/actor";
import { type Deed, projectsOf, scopeOf } from "@/lib/access/policy";

/** Condition on a site's id: the sites where the actor may do the deed. Spread into a `where`. */
export function siteIds(actor: Actor, deed: Deed): { readonly in: string[] } | undefined {
  const scope = scopeOf(actor.grants, deed);
  return scope === "all" ? undefined : { in: [...scope] };
}

/** `where` of rows that carry `siteId`. */
export function atSites(actor: Actor, deed: Deed): { siteId?: { in: string[] } } {
  const ids = siteIds(actor, deed);
  return ids ? { siteId: { in: ids.in } } : {};
}

/** `where` of `Site` itself. */
export function sites(actor: Actor, deed: Deed): { id?: { in: string[] } } {
  const ids = siteIds(actor, deed);
  return ids ? { id: { in: ids.in } } : {};
}

/** `where` of `Project` itself: those at the sites where the actor may, and those a contractor works in. */
export function projects(
  actor: Actor,
  deed: Deed,
): { OR?: [{ siteId: { in: string[] } }, { id: { in: string[] } }] } {
  const ids = siteIds(actor, deed);
  return ids ? { OR: [{ siteId: { in: ids.in } }, { id: { in: [...projectsOf(actor.grants, deed)] } }] } : {};
}

/** The actor as somebody who reads this one site without its amounts: a contractor, for the line of their project. */
export function asGuestAt(actor: Actor, siteId: string): Actor {
  return { ...actor, grants: [{ role: "viewer", siteId, without: ["money:read"] }] };
}

/** The actor as somebody who reads this one site and no other: what is kept for anybody who reads it. */
export function atOneSite(actor: Actor, siteId: string): Actor {
  const here = actor.grants.filter((grant) => grant.siteId === null || grant.siteId === siteId);
  return { ...actor, grants: here.map((grant) => ({ ...grant, siteId })) };
}
