import { randomUUID } from "node:crypto";
import type { Actor } from "@/lib/access/actor";
import type { Role } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import type { PersonGrant } from "@/lib/schema/people";

/** A role as an administrator gives it, without end and with all it allows. */
export const roleAt = (role: Role, siteId: string | null = null): PersonGrant => ({
  ...{ role, siteId },
  ...{ projectId: null, without: [], endsOn: null },
});

/** A stored person with one role, at one site or at all. */
export async function makeActor(role: Role, siteId: string | null = null): Promise<Actor> {
  const userId = randomUUID();
  const email = `${role}.${userId.slice(0, 8)}@halvenor.example`;
  await database().user.create({ data: { id: userId, name: `${role} of a test`, email } });
  await database().grant.create({ data: { userId, role, siteId } });
  return { userId, name: `${role} of a test`, email, grants: [{ role, siteId }] };
}
