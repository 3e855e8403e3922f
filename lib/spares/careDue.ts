import { addDays, addMonths, type IsoDate } from "@/lib/kernel/isoDate";

/** Whether stored pieces wait for their care. `unknown`: nobody knows when they last had it, so it is due. */
export type CareState = "overdue" | "unknown" | "soon" | "later";

export interface CareDue {
  /** Null when the last care is not known. */
  readonly dueOn: IsoDate | null;
  readonly state: CareState;
}

/** Days ahead in which a care counts as due soon. Own choice of the product, no source. */
const SOON_DAYS = 60;

/**
 * When stored pieces are due for their next care.
 *
 * Due = last care + interval. A care dated after the day looked at was not known on it.
 *
 * @param lastOn Day of the last care; null is not known.
 * @param everyMonths Whole, > 0.
 */
export function careDue(lastOn: IsoDate | null, everyMonths: number, asOf: IsoDate): CareDue {
  if (!(Number.isSafeInteger(everyMonths) && everyMonths > 0))
    throw new RangeError(`everyMonths must be a whole number > 0, got ${everyMonths}`);
  if (lastOn === null || lastOn > asOf) return { dueOn: null, state: "unknown" };
  const dueOn = addMonths(lastOn, everyMonths);
  if (dueOn <= asOf) return { dueOn, state: "overdue" };
  return { dueOn, state: dueOn <= addDays(asOf, SOON_DAYS) ? "soon" : "later" };
}
