import type { ControllerFacts, Rule } from "@/lib/retrofit/compatibility/facts";
import { firmwareWord } from "@/lib/retrofit/firmwareLevel";
import type { Evidence } from "@/lib/risk/evaluation";
import type { RuleKind } from "@/lib/schema/compatibilityRule";

export type VerdictState = "clear" | "caution" | "unknown" | "blocked";

/** What stands in the way, by name. */
export type Blocker =
  | "Firmware floor"
  | "Hardware ceiling"
  | "Memory headroom"
  | "Card lost"
  | "I/O stranded"
  | "Motor unmatched"
  | "Feedback unmatched"
  | "Drive revision"
  | "Ring whole"
  | "Axis ceiling";

/** What one rule says of one controller, and from what. */
export interface Verdict {
  readonly code: string;
  readonly version: number;
  readonly kind: RuleKind;
  readonly blocker: Blocker;
  readonly state: VerdictState;
  /** The comparison or sum in words: 88 % × 1.15 = 101 %. */
  readonly arithmetic: string;
  /** What clears it; null when nothing has to. */
  readonly unblocks: string | null;
  /** Records it rests on, each with its grade. */
  readonly facts: readonly { readonly text: string; readonly evidence: Evidence }[];
}

type Found = Pick<Verdict, "blocker" | "state" | "arithmetic" | "unblocks" | "facts">;

export function verdictOf({ code, version, kind }: Rule, found: Found): Verdict {
  return { code, version, kind, ...found };
}

/** Clear first. What nobody has read stands behind every known state that leaves a way, and before blocked only. */
const STATES: readonly VerdictState[] = ["clear", "caution", "unknown", "blocked"];

/** The worst of some states: unknown is never clear and never better than a caution; clear when there is none. */
export function worstState(states: readonly VerdictState[]): VerdictState {
  return STATES[Math.max(0, ...states.map((state) => STATES.indexOf(state)))] ?? "clear";
}

/** The controller's level as a fact a verdict rests on. */
export function levelFact(one: Pick<ControllerFacts, "designation" | "model" | "level" | "evidence">) {
  return {
    text: `${one.designation}, ${one.model}: level ${firmwareWord(one.level)}`,
    evidence: one.evidence,
  };
}

export const READ_THE_LEVEL = "Read the level off the controller.";

/** Names in a sentence: `A`, `A or B`, `A, B or C`. */
export function either(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} or ${names.at(-1)}`;
}
