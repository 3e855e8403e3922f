import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { groupZone } from "@/lib/data/group/groupZone";
import { lookedBackTo } from "@/lib/data/lookBack";
import { type IsoDate, isIsoDate } from "@/lib/kernel/isoDate";
import { dayAt } from "@/lib/view/weekly";

/** Days a page can be asked for: nothing here is older, and what is computed ahead still ends in a year of four digits. */
const [FIRST_DAY, LAST_DAY] = ["1900-01-01", "2199-12-31"];

/**
 * The day everything on the screen is computed for: the one asked for, else the installation's own
 * (the demo company lives on a fixed day), else today. Looking back it is at the latest the day looked back to.
 */
export async function readAsOf(_actor: Actor, asked: string | undefined): Promise<IsoDate> {
  if (asked !== undefined && isIsoDate(asked) && asked >= FIRST_DAY && asked <= LAST_DAY) return asked;
  const own = await ownDay(database());
  const back = lookedBackTo()?.day;
  return back !== undefined && back < own ? back : own;
}

/** The installation's own day: the one it stands at, else today by the clock of most of its sites. */
export async function ownDay(tx: Transaction): Promise<IsoDate> {
  return (await fixedDay(tx)) ?? dayAt(new Date().toISOString(), await groupZone(tx));
}

/** The day the installation stands at, as a demonstration does; null where it moves with the calendar. */
export async function fixedDay(tx: Transaction): Promise<IsoDate | null> {
  const setting = await tx.setting.findUnique({ where: { key: "asOf" }, select: { value: true } });
  const kept = setting?.value;
  return typeof kept === "string" && isIsoDate(kept) ? kept : null;
}
