import type { ControllerFacts, RuleOf } from "@/lib/retrofit/compatibility/facts";
import { crosses, type Step } from "@/lib/retrofit/compatibility/step";
import {
  READ_THE_LEVEL,
  type Verdict,
  type VerdictState,
  verdictOf,
} from "@/lib/retrofit/compatibility/verdict";

/**
 * Memory after the raise: used share times the factor of the rule, percent.
 *
 * @param memoryPercent Used now, 0 to 100.
 * @param factor What the raise multiplies it by, from 1.
 */
export function raisedMemory(memoryPercent: number, factor: number): number {
  return Math.round(memoryPercent * factor * 1e6) / 1e6;
}

type Terms = RuleOf<"memory_growth">["terms"];

/** Does the program still fit after the raise? Above `blockedPercent` it does not; null for another model. */
export function judgeMemory(
  rule: RuleOf<"memory_growth">,
  controller: ControllerFacts,
  step: Step,
): Verdict | null {
  const { terms } = rule;
  if (controller.model !== terms.model) return null;
  const { memoryPercent, designation, evidence } = controller;
  const used =
    memoryPercent === null ? "memory not read" : `${percentWord(memoryPercent, terms)} of memory used`;
  const found = outcome(terms, controller, crosses(step, controller.level, terms.level));
  return verdictOf(rule, {
    ...{ blocker: "Memory headroom", ...found },
    facts: [{ text: `${designation}: ${used}`, evidence }],
  });
}

function outcome(
  terms: Terms,
  { memoryPercent: used }: ControllerFacts,
  raised: boolean | null,
): Pick<Verdict, "state" | "arithmetic" | "unblocks"> {
  const { level, factor } = terms;
  if (used === null)
    return {
      state: "unknown",
      arithmetic: `The memory in use is not known, and raising to ${level} multiplies it by ${factor}.`,
      unblocks: "Read the memory off the controller.",
    };
  const after = raisedMemory(used, factor);
  const sum = `${percentWord(used, terms)} × ${factor} = ${percentWord(after, terms)}`;
  if (raised === null)
    return {
      state: "unknown",
      arithmetic: `If it has to be raised to ${level}: ${sum}.`,
      unblocks: READ_THE_LEVEL,
    };
  if (raised)
    return { ...judged(after, terms), arithmetic: `Raised to ${level}: ${sum}, ${against(after, terms)}.` };
  // It runs with what it has, so a full memory calls for care and blocks nothing.
  const state = used >= terms.cautionPercent ? "caution" : "clear";
  return {
    ...{ state, unblocks: state === "clear" ? null : FREE_MEMORY },
    arithmetic: `No raise over ${level} is needed: ${percentWord(used, terms)} used as it is, ${against(used, terms)}.`,
  };
}

const FREE_MEMORY = "Free memory: take out unused program, traces and comments kept on board.";

function judged(
  percent: number,
  { cautionPercent, blockedPercent }: Terms,
): Pick<Verdict, "state" | "unblocks"> {
  const state: VerdictState =
    percent > blockedPercent ? "blocked" : percent >= cautionPercent ? "caution" : "clear";
  const unblocks = {
    clear: null,
    caution: "Try the raise on a copy of the program first.",
    blocked: `${FREE_MEMORY} Where that is not enough, replace the controller.`,
  }[state];
  return { state, unblocks };
}

/** Which limit a share is held against, in words. */
function against(percent: number, { cautionPercent, blockedPercent }: Terms): string {
  if (percent > blockedPercent) return `above ${blockedPercent} %`;
  return percent >= cautionPercent ? `from ${cautionPercent} % on` : `below ${cautionPercent} %`;
}

/** Whole per cent, unless rounding would put the value on a limit it is not at. */
function percentWord(percent: number, { cautionPercent, blockedPercent }: Terms): string {
  const whole = Math.round(percent);
  const blurs = whole !== percent && (whole === cautionPercent || whole === blockedPercent);
  return `${blurs ? percent.toFixed(1) : whole} %`;
}
