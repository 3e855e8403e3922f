import { randomUUID } from "node:crypto";
import type { Actor } from "@/lib/access/actor";
import { makeKey } from "@/lib/data/accessKeys";
import { database } from "@/lib/data/client";
import type { MakeAccessKey } from "@/lib/schema/accessKey";

/** A key of a stored person, which reads unless told otherwise. */
export async function tokenOf(actor: Actor, given: Partial<MakeAccessKey> = {}): Promise<string> {
  const wish: MakeAccessKey = { name: "Line monitor", deeds: ["read"], siteIds: null, days: 30 };
  const key = await makeKey(actor, { ...wish, ...given });
  if (!key.ok) throw new Error(key.error.reason);
  return key.value.token;
}

/** A new name for a request. */
export const named = () => ({ "Idempotency-Key": randomUUID() });

/** A failure at a place of the line SUD-01 of the two sites, as another system tells it. */
export async function failureAt(happenedAt: string) {
  const machine = { line: { code: "SUD-01" } };
  const { id: positionId } = await database().position.findFirstOrThrow({
    where: { machine },
    orderBy: { id: "asc" },
  });
  return {
    ...{ positionId, kind: "failure", happenedAt, downtimeHours: "4.5", logisticHours: "1" },
    ...{ unitOut: "scrap", text: "Tripped" },
  };
}
