import { axesOf, type ControllerFacts, type Rule } from "@/lib/retrofit/compatibility/facts";
import { judgeAxisCeiling } from "@/lib/retrofit/compatibility/judgeAxisCeiling";
import { judgeCard } from "@/lib/retrofit/compatibility/judgeCard";
import { judgeRevision, judgeRing } from "@/lib/retrofit/compatibility/judgeDrive";
import { judgeCeiling, judgeFloor } from "@/lib/retrofit/compatibility/judgeFloor";
import { judgeMemory } from "@/lib/retrofit/compatibility/judgeMemory";
import { judgeFeedback, judgeMotor } from "@/lib/retrofit/compatibility/judgeMotor";
import { floorRules, type Step, stepOf } from "@/lib/retrofit/compatibility/step";
import { type Verdict, type VerdictState, worstState } from "@/lib/retrofit/compatibility/verdict";

/** A controller with what every rule says of it. */
export interface JudgedController {
  readonly facts: ControllerFacts;
  /** What has to happen to it before it runs the new drives. */
  readonly step: Step["kind"];
  readonly verdicts: readonly Verdict[];
  /** The worst verdict of those about a retrofit. */
  readonly state: VerdictState;
}

/** Where a controller or a line stands on the way to the new drives. */
export type Standing = "swap" | "below" | "unknown" | "ready" | "converted" | "no-rule";

export interface JudgedLine {
  /** That of the leading controller; null without a controller. */
  readonly standing: Standing | null;
  readonly lead: JudgedController | null;
  readonly controllers: readonly JudgedController[];
}

/** A drive of newer hardware in an old place is a matter of spares; it does not stand in the way of a retrofit. */
const BESIDE_RETROFIT: ReadonlySet<Verdict["kind"]> = new Set(["hardware_revision"]);

/**
 * Holds a controller against every rule; a rule that does not concern it says nothing.
 *
 * What rests on a level or figure nobody has read is unknown, never clear.
 */
export function judgeController(rules: readonly Rule[], facts: ControllerFacts): JudgedController {
  const step = stepOf(rules, facts);
  const floors = floorRules(rules, facts);
  const verdicts = rules
    .map((rule) => judge(rule, facts, { step, floors }))
    .filter((verdict) => verdict !== null);
  const state = worstState(verdicts.filter(({ kind }) => !BESIDE_RETROFIT.has(kind)).map((one) => one.state));
  return {
    facts,
    step: step.kind,
    verdicts,
    state: step.kind === "no-rule" ? worstState([state, "unknown"]) : state,
  };
}

interface Setting {
  readonly step: Step;
  readonly floors: ReturnType<typeof floorRules>;
}

function judge(rule: Rule, facts: ControllerFacts, { step, floors }: Setting): Verdict | null {
  switch (rule.kind) {
    case "controller_floor":
      return floors.includes(rule) ? judgeFloor(rule, facts) : null;
    case "ceiling":
      return judgeCeiling(rule, facts, floors);
    case "memory_growth":
      return judgeMemory(rule, facts, step);
    case "card_lost":
      return judgeCard(rule, facts, step);
    case "motor_match":
      return judgeMotor(rule, facts);
    case "feedback_match":
      return judgeFeedback(rule, facts);
    case "hardware_revision":
      return judgeRevision(rule, facts);
    case "ring_whole":
      return judgeRing(rule, facts);
    case "axis_ceiling":
      return judgeAxisCeiling(rule, facts);
  }
}

/**
 * Holds the controllers of a line against the rules.
 *
 * The line stands where its leading controller stands: the one recorded as such, else the one that drives most
 * axes, by designation among equals. The others are judged beside it and can stand worse.
 */
export function judgeLine(rules: readonly Rule[], controllers: readonly ControllerFacts[]): JudgedLine {
  const judged = controllers.map((facts) => judgeController(rules, facts));
  const [byAxes] = [...judged].sort(
    (a, b) => axesOf(b.facts) - axesOf(a.facts) || (a.facts.designation < b.facts.designation ? -1 : 1),
  );
  const lead = judged.find(({ facts }) => facts.leads) ?? byAxes ?? null;
  return { standing: lead && standingOf(rules, lead), lead, controllers: judged };
}

/** Where a controller stands; one that runs new drives and has none left to replace is converted. */
export function standingOf(rules: readonly Rule[], { facts, step }: JudgedController): Standing {
  if (step === "raise") return "below";
  if (step !== "none") return step;
  const families = new Set(floorRules(rules, facts).flatMap(({ terms }) => terms.families));
  const isOld = facts.groups.some(({ targets }) => targets.some((family) => families.has(family)));
  const isNew = facts.groups.some(({ drive }) => drive !== null && families.has(drive));
  return isNew && !isOld ? "converted" : "ready";
}

/** Standings from the one furthest from the new drives to the one that has them. */
export const STANDINGS: readonly Standing[] = ["swap", "below", "unknown", "no-rule", "ready", "converted"];
