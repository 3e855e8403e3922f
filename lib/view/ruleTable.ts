import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Rule } from "@/lib/retrofit/compatibility/facts";
import { ceilingWords } from "@/lib/retrofit/compatibility/judgeAxisCeiling";
import { acceptedWords } from "@/lib/retrofit/compatibility/judgeFloor";
import { either } from "@/lib/retrofit/compatibility/verdict";
import type { Fit, RuleKind } from "@/lib/schema/compatibilityRule";

/** A version of a rule as it is read. */
export type RuleVersion = Rule & {
  readonly note: string;
  readonly source: string;
  readonly retired: boolean;
  readonly changedOn: IsoDate;
  readonly changedBy: string;
};

/** What a kind of rule asks. */
export const RULE_KIND_NAMES: Readonly<Record<RuleKind, string>> = {
  controller_floor: "Firmware floor",
  ceiling: "Hardware ceiling",
  memory_growth: "Memory growth",
  card_lost: "Card lost",
  motor_match: "Motor match",
  feedback_match: "Feedback match",
  hardware_revision: "Drive revision",
  ring_whole: "Ring whole",
  axis_ceiling: "Axis ceiling",
};

export const FIT_NAMES: Readonly<Record<Fit, string>> = {
  fits: "fits without change",
  adapter: "runs with an adapter",
  sizing: "must be sized anew by a competent engineer",
};

/** What a rule says, in one sentence. */
export function ruleSentence(rule: Rule): string {
  switch (rule.kind) {
    case "controller_floor":
      return `${either(rule.terms.families)} needs ${acceptedWords(rule.terms.controllers)}.`;
    case "ceiling":
      return `${rule.terms.model} never goes beyond ${rule.terms.level}.`;
    case "memory_growth": {
      const { model, level, factor, cautionPercent, blockedPercent } = rule.terms;
      return `Raising ${model} to ${level} multiplies its memory by ${factor}: caution from ${cautionPercent} %, blocked above ${blockedPercent} %.`;
    }
    case "card_lost": {
      const { level, card, letter, racks } = rule.terms;
      return `From ${level} on, ${card} older than ${letter} is not run; ${racks} behind it is cut off.`;
    }
    case "motor_match": {
      const { motor, drive, fit, upToKw } = rule.terms;
      const beyond = upToKw === null ? "" : ` up to ${upToKw} kW; above, it must be sized anew`;
      return `${motor} on ${drive} ${FIT_NAMES[fit]}${beyond}.`;
    }
    case "feedback_match":
      return `${rule.terms.feedback} on ${rule.terms.drive} ${FIT_NAMES[rule.terms.fit]}.`;
    case "hardware_revision": {
      const { family, revision, controllers } = rule.terms;
      return `${family} from ${revision} on needs ${acceptedWords(controllers)}.`;
    }
    case "ring_whole":
      return "The axes of a ring are converted together.";
    case "axis_ceiling":
      return `${ceilingWords(rule.terms)} drives at most ${rule.terms.axes} axes.`;
  }
}
