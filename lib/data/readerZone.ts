import "server-only";
import type { Actor } from "@/lib/access/actor";
import { presentDatabase } from "@/lib/data/client";
import { sites } from "@/lib/data/scope";
import { commonZone } from "@/lib/view/zone";

/** The zone whose clock somebody is told instants by: that of most of the sites they may read, UTC without one. */
export async function readZone(actor: Actor): Promise<string> {
  const rows = await presentDatabase().site.findMany({
    ...{ where: sites(actor, "read"), orderBy: { code: "asc" }, select: { timeZone: true } },
  });
  return commonZone(rows.map(({ timeZone }) => timeZone));
}
