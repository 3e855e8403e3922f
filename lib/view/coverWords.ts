import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ExitGap } from "@/lib/view/coverLadder";
import { count, plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

/** A day by which the shelf is likely empty, in words. */
export function coverDayText(
  date: IsoDate | null,
  { months, asOf }: { readonly months: number; readonly asOf: IsoDate },
): string {
  if (date === null) return `not within ${months} months`;
  return date <= asOf ? "empty now" : day(date);
}

/** The exit gap in words. */
export function exitGapText(exit: ExitGap): string {
  switch (exit.kind) {
    case "none":
      return "no planned removal";
    case "some":
      return `${count(exit.staying, "unit")} without a planned removal`;
    case "all":
      return exit.months === null
        ? `outlast the last removal, ${day(exit.lastOn)}`
        : `${plainNumber(exit.months, 1)} to ${day(exit.lastOn)}`;
  }
}
