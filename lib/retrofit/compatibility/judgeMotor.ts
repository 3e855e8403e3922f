import type { AxisGroup, ControllerFacts, RuleOf } from "@/lib/retrofit/compatibility/facts";
import { type Verdict, verdictOf, worstState } from "@/lib/retrofit/compatibility/verdict";
import type { Fit } from "@/lib/schema/compatibilityRule";

const FIT_STATE = { fits: "clear", adapter: "caution", sizing: "blocked" } as const;

interface Matched {
  readonly group: AxisGroup;
  /** Null is a power nobody knows, which the rule asks for. */
  readonly fit: Fit | null;
}

/** Do the motors run on the drives that may replace theirs? Null where no such motor meets such a drive. */
export function judgeMotor(
  rule: RuleOf<"motor_match">,
  { groups }: Pick<ControllerFacts, "groups">,
): Verdict | null {
  const { motor, drive, fit, upToKw } = rule.terms;
  const matched = groups
    .filter((group) => group.motor === motor && group.targets.includes(drive))
    .map((group): Matched => {
      if (upToKw === null) return { group, fit };
      if (group.powerKw === null) return { group, fit: null };
      return { group, fit: group.powerKw <= upToKw ? fit : "sizing" };
    });
  const limit = upToKw === null ? "" : ` up to ${upToKw} kW`;
  return matched.length === 0
    ? null
    : verdictOf(rule, {
        blocker: "Motor unmatched",
        ...found(matched, {
          adapter: `with an adapter${limit}`,
          fits: `without change${limit}`,
          unread: "power not known",
        }),
        facts: matched.map(({ group }) => ({
          text: `${group.axes} × ${motor}${group.powerKw === null ? "" : ` of ${group.powerKw} kW`} (${group.feedback ?? "feedback not known"}) on ${group.drive ?? "a drive not known"}, for ${drive}`,
          evidence: group.evidence,
        })),
      });
}

/** Can the new drives read the position feedback? Null where no such feedback meets such a drive. */
export function judgeFeedback(
  rule: RuleOf<"feedback_match">,
  { groups }: Pick<ControllerFacts, "groups">,
): Verdict | null {
  const { feedback, drive, fit } = rule.terms;
  const matched = groups
    .filter(
      (group) => group.targets.includes(drive) && (group.feedback === feedback || group.feedback === null),
    )
    .map((group): Matched => ({ group, fit: group.feedback === null ? null : fit }));
  if (matched.length === 0) return null;
  return verdictOf(rule, {
    blocker: "Feedback unmatched",
    ...found(matched, { adapter: "with an adapter", fits: "without change", unread: "feedback not known" }),
    facts: matched.map(({ group }) => ({
      text: `${group.axes} × ${group.feedback ?? "feedback not known"}, for ${drive}`,
      evidence: group.evidence,
    })),
  });
}

interface FitWords {
  readonly adapter: string;
  readonly fits: string;
  readonly unread: string;
}

function found(
  matched: readonly Matched[],
  words: FitWords,
): Pick<Verdict, "state" | "arithmetic" | "unblocks"> {
  const axes = (fit: Fit | null) =>
    matched.filter((one) => one.fit === fit).reduce((sum, { group }) => sum + group.axes, 0);
  const counted = [
    [axes("fits"), words.fits],
    [axes("adapter"), words.adapter],
    [axes("sizing"), "to be sized anew"],
    [axes(null), words.unread],
  ] as const;
  const state = worstState(matched.map(({ fit }) => (fit === null ? "unknown" : FIT_STATE[fit])));
  return {
    state,
    arithmetic: `${counted
      .filter(([number]) => number > 0)
      .map(([number, word]) => `${number} ${word}`)
      .join(", ")}.`,
    unblocks: state === "clear" ? null : WAYS[state],
  };
}

const WAYS = {
  caution: "Plan the adapters and verify each motor on them.",
  unknown: "Read the plate.",
  blocked: "A competent engineer sizes a replacement; a list of candidates is not a sizing.",
} as const;
