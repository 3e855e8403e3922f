import type { ControllerFacts, Rule, RuleOf } from "@/lib/retrofit/compatibility/facts";
import { type FirmwareLevel, meetsLevel, parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import type { AcceptedController } from "@/lib/schema/compatibilityRule";

/** Model of a controller whose plate nobody has read. */
const NO_MODEL = /^(not recorded|unknown|)$/i;

/** How a controller answers a list of accepted ones. */
export type Acceptance =
  | { readonly answer: "meets" | "below" | "undecidable"; readonly needed: string | null }
  | { readonly answer: "not-listed" };

/** Holds a controller against the accepted ones: the model first, then the level. Nothing read is undecidable. */
export function accept(
  { model, level }: Pick<ControllerFacts, "model" | "level">,
  accepted: readonly AcceptedController[],
): Acceptance {
  const entry = accepted.find((one) => one.model === model);
  if (!entry)
    return NO_MODEL.test(model) ? { answer: "undecidable", needed: null } : { answer: "not-listed" };
  if (entry.level === null)
    return { answer: level.state === "unknown" ? "undecidable" : "meets", needed: null };
  const met = meetsLevel(level, parseFirmwareLevel(entry.level));
  const answer = met === "yes" ? "meets" : met === "no" ? "below" : "undecidable";
  return { answer, needed: entry.level };
}

/**
 * The floor rules a controller is held against: those of families that may replace its drives, or, when no rule
 * names any of these, all of them.
 */
export function floorRules(
  rules: readonly Rule[],
  { groups }: Pick<ControllerFacts, "groups">,
): RuleOf<"controller_floor">[] {
  const floors = rules.filter((rule) => rule.kind === "controller_floor");
  const targets = new Set(groups.flatMap((group) => group.targets));
  const own = floors.filter(({ terms }) => terms.families.some((family) => targets.has(family)));
  return own.length > 0 ? own : floors;
}

/** What has to happen to the controller before it runs the new drives. */
export type Step =
  | { readonly kind: "none" | "swap" | "unknown" | "no-rule" }
  | { readonly kind: "raise"; readonly to: FirmwareLevel };

/** The step the floor rules and ceilings ask for; the hardest of them when there are several. */
export function stepOf(
  rules: readonly Rule[],
  controller: Pick<ControllerFacts, "model" | "level" | "groups">,
): Step {
  const floors = floorRules(rules, controller);
  if (floors.length === 0) return { kind: "no-rule" };
  const answers = floors.map(({ terms }) => accept(controller, terms.controllers));
  const cannotReach = answers.some(
    (one) =>
      one.answer !== "meets" && "needed" in one && isBeyondCeiling(rules, controller.model, one.needed),
  );
  if (cannotReach || answers.some(({ answer }) => answer === "not-listed")) return { kind: "swap" };
  if (answers.some(({ answer }) => answer === "undecidable")) return { kind: "unknown" };
  const raised = answers.flatMap((one) =>
    one.answer === "below" && one.needed !== null ? [parseFirmwareLevel(one.needed)] : [],
  );
  const [first, ...rest] = raised;
  if (!first) return { kind: "none" };
  return { kind: "raise", to: rest.reduce((a, b) => (meetsLevel(a, b) === "yes" ? a : b), first) };
}

/** Whether a ceiling of the model lies below a level; unsure is not beyond. */
function isBeyondCeiling(rules: readonly Rule[], model: string, needed: string | null): boolean {
  if (needed === null) return false;
  const level = parseFirmwareLevel(needed);
  return rules.some(
    (rule) =>
      rule.kind === "ceiling" &&
      rule.terms.model === model &&
      meetsLevel(parseFirmwareLevel(rule.terms.level), level) === "no",
  );
}

/** Whether a step takes the controller over a level it has not reached; null is not known. */
export function crosses(step: Step, own: FirmwareLevel, level: string): boolean | null {
  const met = meetsLevel(own, parseFirmwareLevel(level));
  if (met === "yes") return false;
  if (step.kind === "swap") return true;
  if (step.kind === "unknown" || met === "undecidable") return null;
  return step.kind === "raise" && meetsLevel(step.to, parseFirmwareLevel(level)) === "yes";
}
