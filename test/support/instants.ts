import { presentDatabase } from "@/lib/data/client";
import type { KnownAt } from "@/lib/view/knownAt";

/** The database's own now, after everything that is committed and before everything that begins later. */
export async function instantNow(): Promise<KnownAt> {
  const [row] = await presentDatabase().$queryRaw<{ at: string }[]>`
    SELECT to_char(clock_timestamp() AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"') AS "at"`;
  const at = row?.at ?? "";
  return { text: at.slice(0, 16), day: at.slice(0, 10), zone: "UTC", at };
}
