import type { LimitName, LimitUnit } from "@/lib/portfolio/planResult";
import { money } from "@/lib/view/format";
import { plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

/** What ids are called on the screen. */
export interface LimitNames {
  readonly site: (id: string) => string;
  readonly line: (id: string) => string;
  readonly option: (id: string) => string;
  readonly slot: (id: string) => string;
}

/** A quarter as people say it: `Q3 2027`. */
export const quarterWords = (id: string): string => `${id.slice(5)} ${id.slice(0, 4)}`;

/** What a limit is, in words. */
export function limitWords(limit: LimitName, names: LimitNames): string {
  switch (limit.kind) {
    case "budget":
      return limit.siteId === null
        ? `Budget ${limit.year}`
        : `Budget ${limit.year} at ${names.site(limit.siteId)}`;
    case "engineers":
      return `Engineers of ${limit.region}, ${quarterWords(limit.quarterId)}`;
    case "crews":
      return `Crews of ${limit.region} on ${day(limit.on)}`;
    case "crew-weeks":
      return `Crew-weeks of ${limit.region}, ${quarterWords(limit.quarterId)}`;
    case "window":
      return `${names.line(limit.lineId)} in ${names.slot(limit.windowId)}`;
    case "lead-time":
      return `Time to order and prepare ${names.line(limit.lineId)}`;
    case "must-do":
      return `Duty of ${names.line(limit.lineId)} by ${day(limit.by)}`;
    case "pin":
      return `${names.line(limit.lineId)} pinned in`;
    case "ban":
      return limit.slotId === null
        ? `${names.line(limit.lineId)} pinned out`
        : `No work on ${names.line(limit.lineId)} in ${names.slot(limit.slotId)}`;
    case "one-per-stage":
      return `One way of ${names.line(limit.lineId)} at step ${limit.stage}`;
    case "after":
      return `${names.line(limit.lineId)}: ${names.option(limit.optionId)} waits for what comes first`;
    case "commits-to":
      return `${names.line(limit.lineId)}: ${names.option(limit.optionId)} obliges to the next part`;
  }
}

/** An amount of what a limit counts. */
export function limitAmount(value: number, unit: LimitUnit): string {
  if (unit === "EUR") return money(value);
  return `${plainNumber(value, Number.isInteger(value) ? 0 : 1)} ${unit}`;
}
