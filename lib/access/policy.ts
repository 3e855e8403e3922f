/** What a person may be at a site, or a contractor in one project. */
export type Role = "viewer" | "technician" | "planner" | "engineer" | "approver" | "admin" | "contractor";

/** What can be asked of the product; each read and write names one. */
export type Deed =
  | "read"
  | "money:read"
  | "event:write"
  | "stock:write"
  | "register:import"
  | "line:write"
  | "plan:write"
  | "plan:approve"
  | "project:write"
  | "report:issue"
  | "people:write";

/** A role at one site, or at all of them when `siteId` is null; a contractor's holds in one project and at no site. */
export interface GrantedRole {
  readonly role: Role;
  readonly siteId: string | null;
  /** The one project of a contractor. */
  readonly projectId?: string | null;
  /** Of what the role allows not this, such as seeing amounts. */
  readonly without?: readonly Deed[];
  /** Of what the role allows only this, as an access key may; absent is all of it. */
  readonly only?: readonly Deed[];
}

const deedsOf: Readonly<Record<Role, readonly Deed[]>> = {
  viewer: ["read", "money:read"],
  technician: ["read", "money:read", "event:write"],
  planner: ["read", "money:read", "event:write", "stock:write", "register:import", "report:issue"],
  engineer: [
    "read",
    "money:read",
    "event:write",
    "stock:write",
    "register:import",
    "line:write",
    "plan:write",
    "project:write",
    "report:issue",
  ],
  approver: ["read", "money:read", "plan:write", "plan:approve", "report:issue"],
  admin: [
    "read",
    "money:read",
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
  contractor: ["read", "money:read", "event:write"],
};

/** Sites at which a deed is allowed: all of them, or those listed. */
export type SiteScope = "all" | readonly string[];

/** Where the holder of these roles may do the deed; an empty list is nowhere. */
export function scopeOf(grants: readonly GrantedRole[], deed: Deed): SiteScope {
  const sites = new Set<string>();
  for (const grant of grants) {
    if (grant.role === "contractor" || !allows(grant, deed)) continue;
    if (grant.siteId === null) return "all";
    sites.add(grant.siteId);
  }
  return [...sites].sort();
}

function allows({ role, only, without }: GrantedRole, deed: Deed): boolean {
  return deedsOf[role].includes(deed) && only?.includes(deed) !== false && !without?.includes(deed);
}

/** Projects in which the holder of these roles may do the deed as a contractor, whatever the sites. */
export function projectsOf(grants: readonly GrantedRole[], deed: Deed): readonly string[] {
  const own = grants.filter((grant) => grant.role === "contractor" && allows(grant, deed));
  return [...new Set(own.flatMap(({ projectId }) => projectId ?? []))].sort();
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

/** Whether the holder of these roles may do the deed in the project: at its site, or as its contractor. */
export function mayInProject(
  grants: readonly GrantedRole[],
  deed: Deed,
  { projectId, siteId }: { readonly projectId: string; readonly siteId: string },
): boolean {
  return mayAt(grants, deed, siteId) || projectsOf(grants, deed).includes(projectId);
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
  return grants.flatMap(({ siteId, only = deeds, ...grant }): GrantedRole[] => {
    const left = { ...grant, only: only.filter((deed) => deeds.includes(deed)) };
    if (siteIds === null) return [{ ...left, siteId }];
    const places = siteId === null ? siteIds : siteIds.filter((id) => id === siteId);
    return places.map((id) => ({ ...left, siteId: id }));
  });
}

/** The roles without the right to change anything, as whoever looks back has them. */
export function onlyReading(grants: readonly GrantedRole[]): readonly GrantedRole[] {
  return narrowGrants(grants, { deeds: ["read", "money:read"], siteIds: null });
}

/**
 * The roles as far as amounts are shown to their holder: what whatever tells amounts is read with, so that a site
 * without amounts is there as if the holder had no role at it.
 */
export function withAmounts(grants: readonly GrantedRole[]): readonly GrantedRole[] {
  const scope = scopeOf(grants, "money:read");
  if (scope === "all") return grants;
  return grants.flatMap((grant): GrantedRole[] => {
    if (grant.role === "contractor") return allows(grant, "money:read") ? [grant] : [];
    const places = grant.siteId === null ? scope : scope.filter((id) => id === grant.siteId);
    return places.map((siteId) => ({ ...grant, siteId }));
  });
}

/** Whether the holder of these roles sees amounts wherever they read. */
export function seesAmounts(grants: readonly GrantedRole[]): boolean {
  const scope = scopeOf(grants, "read");
  if (scope === "all") return scopeOf(grants, "money:read") === "all";
  return (
    scope.every((siteId) => mayAt(grants, "money:read", siteId)) &&
    projectsOf(grants, "read").every((id) => projectsOf(grants, "money:read").includes(id))
  );
}

/** Whether the holder of these roles keeps no records anywhere, only reads and decides. */
export function isOnlyReader(grants: readonly GrantedRole[]): boolean {
  return grants.length > 0 && grants.every(({ role }) => role === "viewer" || role === "approver");
}
