import type { LineInput } from "@/lib/risk/evaluation";
import { expectedStopCost } from "@/lib/risk/expectedStopCost";
import { costTerms } from "@/lib/risk/lineStops";
import type { RestorationTimes } from "@/lib/risk/restorationTimes";

/** Mean cost of one stop on a line, EUR, by where its spare comes from. */
export interface WayCosts {
  readonly own: number;
  /** From another site, or round it where that is cheaper; never below `own`. */
  readonly other: number;
  /** With none at any site; never below `other`. */
  readonly none: number;
}

/** What a stop costs by the way taken, as `lineStops` takes them; null without a cost per hour. */
export function wayCosts(line: LineInput, times: RestorationTimes, transferHours: number): WayCosts | null {
  const terms = costTerms(line);
  if (terms === null) return null;
  const own = expectedStopCost({ restoration: times.withSpare, delayHours: 0 }, terms);
  const sent = expectedStopCost({ restoration: times.withSpare, delayHours: transferHours }, terms);
  const none = Math.max(own, expectedStopCost({ restoration: times.withoutSpare, delayHours: 0 }, terms));
  return { own, other: Math.min(sent, none), none };
}
