/** What a person may be at a site. */
export type Role = "viewer" | "technician" | "planner" | "engineer" | "approver" | "admin";

/** What can be asked of the product; each read and write names one. */
export type Deed =
  | "read"
  | "event:write"
  | "stock:write"
  | "register:import"
  | "line:write"
  | "plan:write"
  | "plan:approve"
  | "project:write"
  | "report:issue"
  | "people:write";

/** A role at one site, or at all of them when `siteId` is null. */
export interface GrantedRole {
  readonly role: Role;
  readonly siteId: string | null;
  /** Of what the role allows only this, as an access key may; absent is all of it. */
  readonly only?: readonly Deed[];
}

const deedsOf: Readonly<Record<Role, readonly Deed[]>> = {
  viewer: ["read"],
  technician: ["read", "event:write"],
  planner: ["read", "event:write", "stock:write", "register:import", "report:issue"],
  engineer: [
    "read",
    "event:write",
    "stock:write",
    "register:import",
    "line:write",
    "plan:write",
    "project:write",
    "report:issue",
  ],
  approver: ["read", "plan:write", "plan:approve", "report:issue"],
  admin: [
    "read",
    "event:write",
    "stock:write",
    "register:import",
    "line:write",
    "plan:write",
    "plan:approve",
    "project:write",
    "report:issue",
    "people:write",
  ],
};

/** Sites at which a deed is allowed: all of them, or those listed. */
export type SiteScope = "all" | readonly string[];

/** Where the holder of these roles may do the deed; an empty list is nowhere. */
export function scopeOf(grants: readonly GrantedRole[], deed: Deed): SiteScope {
  const sites = new Set<string>();
  for (const { role, siteId, only } of grants) {
    if (!deedsOf[role].includes(deed) || only?.includes(deed) === false) continue;
    if (siteId === null) return "all";
    sites.add(siteId);
  }
  return [...sites].sort();
}

/** Whether the holder of these roles may do the deed at the site. */
export function mayAt(grants: readonly GrantedRole[], deed: Deed, siteId: string): boolean {
  const scope = scopeOf(grants, deed);
  return scope === "all" || scope.includes(siteId);
}

/** Whether the holder of these roles may do the deed anywhere at all: what a button asks. */
export function maySomewhere(grants: readonly GrantedRole[], deed: Deed): boolean {
  const scope = scopeOf(grants, deed);
  return scope === "all" || scope.length > 0;
}

/** What another system may do at most in the name of a person: these deeds, at these sites or (null) all. */
export interface Limits {
  readonly deeds: readonly Deed[];
  readonly siteIds: readonly string[] | null;
}

/** The roles as far as the limits let them through: never more than either of the two. */
export function narrowGrants(
  grants: readonly GrantedRole[],
  { deeds, siteIds }: Limits,
): readonly GrantedRole[] {
  return grants.flatMap(({ role, siteId, only = deeds }): GrantedRole[] => {
    const left = { role, only: only.filter((deed) => deeds.includes(deed)) };
    if (siteIds === null) return [{ ...left, siteId }];
    const places = siteId === null ? siteIds : siteIds.filter((id) => id === siteId);
    return places.map((id) => ({ ...left, siteId: id }));
  });
}

/** Whether the holder of these roles keeps no records anywhere, only reads and decides. */
export function isOnlyReader(grants: readonly GrantedRole[]): boolean {
  return grants.length > 0 && grants.every(({ role }) => role === "viewer" || role === "approver");
}
