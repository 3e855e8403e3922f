import { daysBetween } from "@/lib/kernel/isoDate";

/** The number a spreadsheet keeps for a day, counted from 1900. */
export function dayNumber(day: string): number {
  return daysBetween("1899-12-30", day);
}
