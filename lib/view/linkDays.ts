import { INVITATION_DAYS } from "@/lib/schema/invitation";
import { count } from "@/lib/view/number";

type Days = (typeof INVITATION_DAYS)[number];

/** How long a one-time link may open, to choose from. */
export const LINK_DAYS = INVITATION_DAYS.map((days) => ({ value: String(days), label: count(days, "day") }));

/** The days chosen; the fewest for anything else. */
export function linkDays(chosen: string): Days {
  return INVITATION_DAYS.find((days) => String(days) === chosen) ?? INVITATION_DAYS[0];
}
