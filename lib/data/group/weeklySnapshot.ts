import "server-only";
import { fixedDay } from "@/lib/data/asOf";
import { database } from "@/lib/data/client";
import { type TakenSnapshot, takeSnapshot } from "@/lib/data/group/takeSnapshot";
import { dayAt, isWeeklyDue } from "@/lib/view/weekly";

/**
 * Takes the week's snapshot when it is due by the clock of the place and nobody took it yet; else null.
 *
 * An installation that stands at one day, as the demonstration does, takes none: its calendar does not move.
 *
 * @param instant RFC 3339.
 * @param zone    IANA name.
 */
export async function weeklySnapshot(instant: string, zone: string): Promise<TakenSnapshot | null> {
  if (!isWeeklyDue(instant, zone) || (await fixedDay(database())) !== null) return null;
  return takeSnapshot(dayAt(instant, zone), null);
}
