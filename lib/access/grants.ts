import "server-only";
import type { Deed, GrantedRole, Role } from "@/lib/access/policy";

const grantFields = { role: true, siteId: true, projectId: true, without: true, endsOn: true } as const;

/** A granted role as it is stored. */
export interface StoredGrant {
  readonly role: Role;
  readonly siteId: string | null;
  readonly projectId: string | null;
  readonly without: readonly string[];
  readonly endsOn: Date | null;
}

/** What to read of a person's roles, those that ended included. */
export const everyGrant = { select: grantFields } as const;

/**
 * What to read of a person's roles that hold now. A role holds to the end of its last day in UTC, by the clock of this
 * machine and not by the day a demonstration stands at: who may come in is no figure.
 */
export function grantsInForce() {
  const today = new Date(`${new Date().toISOString().slice(0, 10)}T00:00:00Z`);
  return { where: { OR: [{ endsOn: null }, { endsOn: { gte: today } }] }, select: grantFields };
}

/** A stored role as the policy reads it. */
export function grantOf({ role, siteId, projectId, without }: StoredGrant): GrantedRole {
  return {
    ...{ role, siteId },
    ...(projectId === null ? {} : { projectId }),
    ...(without.length === 0 ? {} : { without: without as Deed[] }),
  };
}
