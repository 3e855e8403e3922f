import type { GrantedRole, Role } from "@/lib/access/policy";

const NAMES: Readonly<Record<Role, string>> = {
  viewer: "Viewer",
  technician: "Technician",
  planner: "Planner",
  engineer: "Engineer",
  approver: "Approver",
  admin: "Administrator",
  contractor: "Contractor",
};

/** A role as a person reads it. */
export function roleName(role: Role): string {
  return NAMES[role];
}

/** What somebody may be where, such as "Planner at VEL, Viewer at all sites". */
export function describeRoles(
  grants: readonly GrantedRole[],
  siteCodes: ReadonlyMap<string, string>,
): string {
  const described = grants.map(({ role, siteId }) => {
    if (role === "contractor") return `${roleName(role)} in a project`;
    const place = siteId === null ? "all sites" : (siteCodes.get(siteId) ?? "another site");
    return `${roleName(role)} at ${place}`;
  });
  return described.length > 0 ? described.join(", ") : "No role yet: ask an administrator";
}
