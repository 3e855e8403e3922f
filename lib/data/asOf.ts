import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { lookedBackTo } from "@/lib/data/lookBack";
import { type IsoDate, isIsoDate } from "@/lib/kernel/isoDate";

/**
 * The day everything on the screen is computed for: the one asked for, else the installation's own
 * (the demo company lives on a fixed day), else today. Looking back it is at the latest the day looked back to.
 */
export async function readAsOf(_actor: Actor, asked: string | undefined): Promise<IsoDate> {
  if (asked !== undefined && isIsoDate(asked)) return asked;
  const own = await ownDay(database());
  const back = lookedBackTo()?.slice(0, 10);
  return back !== undefined && back < own ? (back as IsoDate) : own;
}

/** The installation's own day: the one it stands at, else today. */
export async function ownDay(tx: Transaction): Promise<IsoDate> {
  return (await fixedDay(tx)) ?? today();
}

/** The day the installation stands at, as a demonstration does; null where it moves with the calendar. */
export async function fixedDay(tx: Transaction): Promise<IsoDate | null> {
  const setting = await tx.setting.findUnique({ where: { key: "asOf" }, select: { value: true } });
  const kept = setting?.value;
  return typeof kept === "string" && isIsoDate(kept) ? kept : null;
}

function today(): IsoDate {
  return new Date().toISOString().slice(0, 10) as IsoDate;
}
