import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { type IsoDate, isIsoDate } from "@/lib/kernel/isoDate";

/**
 * The day everything on the screen is computed for: the one asked for, else the installation's own
 * (the demo company lives on a fixed day), else today.
 */
export async function readAsOf(_actor: Actor, asked: string | undefined): Promise<IsoDate> {
  if (asked !== undefined && isIsoDate(asked)) return asked;
  const setting = await database().setting.findUnique({ where: { key: "asOf" }, select: { value: true } });
  const kept = setting?.value;
  if (typeof kept === "string" && isIsoDate(kept)) return kept;
  return today();
}

function today(): IsoDate {
  return new Date().toISOString().slice(0, 10) as IsoDate;
}
