import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";

/** Lines the person may plan, by code. */
export async function readWritableLines(actor: Actor) {
  return database().line.findMany({
    where: atSites(actor, "plan:write"),
    select: { id: true, code: true, name: true },
    orderBy: { code: "asc" },
  });
}
