import { type AxisCheck, type PassRule, UNIT_OF_TRAVEL } from "@/lib/retrofit/axisChecks";
import type { JudgedCheck } from "@/lib/retrofit/judgeAxis";
import { exactNumber } from "@/lib/view/number";

const BEFORE: readonly PassRule["kind"][] = ["equal", "within", "repeats", "notMore", "notLess"];
const LIMIT: readonly PassRule["kind"][] = ["within", "repeats", "most", "notMore"];

/** Whether the check compares with a value known before the new drive runs. */
export const takesBefore = ({ rule }: AxisCheck): boolean => BEFORE.includes(rule.kind);
/** Whether a limit of its own may be set. */
export const takesLimit = ({ rule }: AxisCheck): boolean => LIMIT.includes(rule.kind);

/** Unit of a check's values on an axis that travels in this unit; null where nothing is measured. */
export function checkUnit({ unit }: AxisCheck, travelUnit: string | null): string | null {
  return unit === null || travelUnit === null ? unit : unit.replace(UNIT_OF_TRAVEL, travelUnit);
}

/** What the value compared with is. */
export const beforeWords = ({ byRecord }: AxisCheck): string =>
  byRecord === true ? "By the record" : "Before removal";

/** What is read with the new drive: `10 readings with the new drive`. */
export function readingsWords({ rule }: AxisCheck): string {
  const readings = rule.kind === "repeats" || rule.kind === "notMore" ? rule.readings : 1;
  return readings > 1 ? `${readings} readings with the new drive` : "With the new drive";
}

/** A share as a percentage with all its digits; twelve are more than any rule states. */
const percentOf = (share: number) => `${Number((100 * share).toPrecision(12))} %`;

/** When the check is passed, as the end of a sentence that begins with `Passes when`. */
export function ruleWords({ rule }: AxisCheck): string {
  switch (rule.kind) {
    case "confirmed":
      return "somebody who did it says so";
    case "zero":
      return "nothing was counted";
    case "equal":
      return "every reading is exactly the recorded value";
    case "within":
      return `off the recorded value by the limit at most, or by ${percentOf(rule.share)} of it where none is set`;
    case "repeats":
      return `${rule.readings} readings spread by the limit at most, and their mean lies within it of the value before`;
    case "most":
      return "no reading is above the limit";
    case "notMore": {
      const limit = rule.needsLimit ? "nor the limit" : "nor the limit, where one is set";
      return `no reading is above ${percentOf(rule.share)} of the value before, ${limit}`;
    }
    case "notLess":
      return `no reading is below ${percentOf(rule.share)} of the value before`;
  }
}

/** The value before and the limit as paper shows them: empty is to be filled in, a dash is not asked for. */
export function paperValues({ check, entry }: JudgedCheck, recorded: number | null) {
  const shown = (value: number | null) => (value === null ? "" : exactNumber(value));
  return {
    before: takesBefore(check) ? shown(entry.asFound ?? recorded) : "–",
    limit: takesLimit(check) ? shown(entry.limit) : "–",
  };
}
