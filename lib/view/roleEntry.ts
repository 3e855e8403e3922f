import type { Role } from "@/lib/access/policy";
import { type PersonGrant, ROLES } from "@/lib/schema/people";
import { roleName } from "@/lib/view/role";

/** One role and the places it holds, as a form shows it. */
export interface RoleEntry {
  readonly role: Role;
  /** Holds at all sites, those to come included; the list is then without meaning. */
  readonly everywhere: boolean;
  readonly siteIds: readonly string[];
  /** The project of a contractor; "" is not chosen yet, and of other roles without meaning. */
  readonly projectId: string;
  /** Amounts of money are shown. */
  readonly amounts: boolean;
  /** What the work makes may be recorded; asked of contractors only. */
  readonly records: boolean;
  /** Last day it holds, `YYYY-MM-DD`; "" is without end. */
  readonly endsOn: string;
}

/** A role nobody has to take back: reading, and nowhere yet. */
export const FRESH_ENTRY: RoleEntry = {
  ...{ role: "viewer", everywhere: false, siteIds: [], projectId: "" },
  ...{ amounts: true, records: true, endsOn: "" },
};

/** Grants alike but for their site, by what they have in common. */
function gatherAlike(grants: readonly PersonGrant[]): PersonGrant[][] {
  const alike = new Map<string, PersonGrant[]>();
  for (const grant of grants) {
    const key = JSON.stringify([grant.role, grant.projectId, [...grant.without].sort(), grant.endsOn]);
    alike.set(key, [...(alike.get(key) ?? []), grant]);
  }
  return [...alike.values()];
}

/** The granted roles gathered by role, the least first, those alike but for the site together. */
export function gatherRoles(grants: readonly PersonGrant[]): RoleEntry[] {
  return gatherAlike(grants)
    .flatMap((group): RoleEntry[] => {
      const [first] = group;
      if (!first) return [];
      const siteIds = group.flatMap(({ siteId }) => siteId ?? []);
      return [
        {
          ...{ role: first.role, projectId: first.projectId ?? "", endsOn: first.endsOn ?? "", siteIds },
          everywhere: siteIds.length < group.length && first.role !== "contractor",
          amounts: !first.without.includes("money:read"),
          records: !first.without.includes("event:write"),
        },
      ];
    })
    .sort((a, b) => ROLES.indexOf(a.role) - ROLES.indexOf(b.role));
}

/** The granted roles a form asks for, each once; a site named beside all sites adds nothing. */
export function grantRoles(entries: readonly RoleEntry[]): PersonGrant[] {
  return gatherAlike(entries.flatMap(grantsOf)).flatMap((group): PersonGrant[] => {
    const everywhere = group.find(({ siteId }) => siteId === null);
    if (everywhere) return [everywhere];
    return [...new Map(group.map((grant) => [grant.siteId, grant])).values()];
  });
}

function grantsOf({ role, everywhere, siteIds, ...entry }: RoleEntry): PersonGrant[] {
  const isContractor = role === "contractor";
  const kind = {
    projectId: isContractor ? entry.projectId : null,
    endsOn: entry.endsOn === "" ? null : entry.endsOn,
    without: [
      ...(entry.amounts ? [] : (["money:read"] as const)),
      ...(isContractor && !entry.records ? (["event:write"] as const) : []),
    ],
  };
  const places = isContractor || everywhere ? [null] : siteIds;
  return places.map((siteId) => ({ role, siteId, ...kind }));
}

/** What is still to be said of a role before it can be given; null is nothing. */
export function lackOf({ role, everywhere, siteIds, projectId, endsOn }: RoleEntry): string | null {
  if (role !== "contractor")
    return everywhere || siteIds.length > 0 ? null : "Choose all sites or at least one site.";
  if (projectId === "") return "Choose the project the contractor works in.";
  return endsOn === "" ? "Say until which day the contractor works in it." : null;
}

/** Codes of sites and projects by their ids. */
export interface PlaceCodes {
  readonly sites: ReadonlyMap<string, string>;
  readonly projects: ReadonlyMap<string, string>;
}

/** A role and its places, such as "Planner at OST and VEL, without amounts, until 2027-03-31". */
export function describeEntry(entry: RoleEntry, codes: PlaceCodes): string {
  return [
    `${roleName(entry.role)} ${placesIn(entry, codes)}`,
    ...(entry.amounts ? [] : ["without amounts"]),
    ...(entry.role === "contractor" && !entry.records ? ["reads only"] : []),
    ...(entry.endsOn === "" ? [] : [`until ${entry.endsOn}`]),
  ].join(", ");
}

function placesIn({ role, everywhere, siteIds, projectId }: RoleEntry, { sites, projects }: PlaceCodes) {
  if (role === "contractor") return `in ${projects.get(projectId) ?? "a project"}`;
  if (everywhere) return "at all sites";
  const codes = siteIds.map((id) => sites.get(id) ?? "another site").sort();
  const last = codes.pop() ?? "no site";
  return `at ${codes.length > 0 ? `${codes.join(", ")} and ` : ""}${last}`;
}
