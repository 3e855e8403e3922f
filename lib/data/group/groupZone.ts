import "server-only";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { commonZone } from "@/lib/view/zone";

/** The zone whose clock the group goes by: that of most of its sites, UTC while there is none. */
export async function groupZone(tx: Transaction = database()): Promise<string> {
  const rows = await tx.site.findMany({ orderBy: { code: "asc" }, select: { timeZone: true } });
  return commonZone(rows.map(({ timeZone }) => timeZone));
}
