import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { isoWeekText } from "@/lib/kernel/isoWeek";
import type { ReportKind } from "@/lib/schema/report";
import { dayAt, isMonthMorning, isMorningDue } from "@/lib/view/weekly";

/** A report that the timetable asks for, once. */
export interface ReportSlot {
  readonly kind: ReportKind;
  /** Null is the whole group. */
  readonly siteId: string | null;
  readonly period: string;
  /** Last day of the period, of which its figures are. */
  readonly asOf: IsoDate;
}

interface Place {
  /** Null is the whole group. */
  readonly siteId: string | null;
  /** IANA name of the zone whose clock counts. */
  readonly zone: string;
}

/**
 * The reports that are due at a place: of the week that ended, on Monday from six; of the month that ended, on its
 * first day from six. A server that slept at six still makes them that day.
 *
 * @param instant RFC 3339.
 */
export function slotsDue(instant: string, { siteId, zone }: Place): ReportSlot[] {
  const asOf = addDays(dayAt(instant, zone), -1);
  const week: ReportSlot = { kind: "weekly", siteId, period: isoWeekText(asOf), asOf };
  const month: ReportSlot = { kind: "monthly", siteId, period: asOf.slice(0, 7), asOf };
  return [
    ...(siteId !== null && isMorningDue(instant, zone) ? [week] : []),
    ...(isMonthMorning(instant, zone) ? [month] : []),
  ];
}

/** What a slot is called where it is kept: the same for the same report, so that it is made once. */
export function slotName({ kind, siteId, period }: Omit<ReportSlot, "asOf">): string {
  return `${kind}:${siteId ?? "group"}:${period}`;
}
