import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";

/** How often the records the figures are computed from have changed. */
export async function readDataVersion(_actor: Actor): Promise<number> {
  const { version } = await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
  return Number(version);
}
