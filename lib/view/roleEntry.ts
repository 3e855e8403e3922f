import type { GrantedRole, Role } from "@/lib/access/policy";
import { ROLES } from "@/lib/schema/people";
import { roleName } from "@/lib/view/role";

/** One role and the places it holds, as a form shows it. */
export interface RoleEntry {
  readonly role: Role;
  /** Holds at all sites, those to come included; the list is then without meaning. */
  readonly everywhere: boolean;
  readonly siteIds: readonly string[];
}

/** The granted roles gathered by role, the least first. */
export function gatherRoles(grants: readonly GrantedRole[]): RoleEntry[] {
  return ROLES.flatMap((role) => {
    const places = grants.filter((grant) => grant.role === role).map(({ siteId }) => siteId);
    if (places.length === 0) return [];
    const siteIds = places.filter((siteId) => siteId !== null);
    return [{ role, everywhere: siteIds.length < places.length, siteIds }];
  });
}

/** The granted roles a form asks for, each once; a site named beside all sites adds nothing. */
export function grantRoles(entries: readonly RoleEntry[]): GrantedRole[] {
  return ROLES.flatMap((role): GrantedRole[] => {
    const own = entries.filter((entry) => entry.role === role);
    if (own.some((entry) => entry.everywhere)) return [{ role, siteId: null }];
    return [...new Set(own.flatMap((entry) => entry.siteIds))].map((siteId) => ({ role, siteId }));
  });
}

/** Whether a role is asked for without saying where. */
export function isPlaceless({ everywhere, siteIds }: RoleEntry): boolean {
  return !everywhere && siteIds.length === 0;
}

/** A role and its places, such as "Planner at OST and VEL". */
export function describeEntry(
  { role, everywhere, siteIds }: RoleEntry,
  siteCodes: ReadonlyMap<string, string>,
): string {
  if (everywhere) return `${roleName(role)} at all sites`;
  const codes = siteIds.map((id) => siteCodes.get(id) ?? "another site").sort();
  const last = codes.pop() ?? "no site";
  return `${roleName(role)} at ${codes.length > 0 ? `${codes.join(", ")} and ` : ""}${last}`;
}
