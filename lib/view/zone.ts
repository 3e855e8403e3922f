import { mostCommon } from "@/lib/kernel/mostCommon";
import { moment } from "@/lib/view/time";

/** Where nobody's zone is known. */
export const UTC = "UTC";

/** The zone most of the places are in; of equal ones the one named first, and UTC where there is no place. */
export const commonZone = (zones: readonly string[]): string => mostCommon(zones) ?? UTC;

/** An instant with the zone whose clock it is told by: `3 Apr 2026, 14:05 (Europe/Berlin)`. */
export function zonedMoment(instant: string | null, zone: string): string {
  return instant === null ? moment(null, zone) : `${moment(instant, zone)} (${zone})`;
}
