import type { ControllerFacts, Rule } from "@/lib/retrofit/compatibility/facts";
import { judgeFeedback, judgeMotor } from "@/lib/retrofit/compatibility/judgeMotor";
import { type VerdictState, worstState } from "@/lib/retrofit/compatibility/verdict";
import { axisName, type ScopeAxis, type ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";
import { type FoundSuccessor, successorIn } from "@/lib/retrofit/scope/successorFor";

/** Whether the motor can stay; `sizing` is that a competent engineer has to size a replacement. */
export type MotorFit = "fits" | "adapter" | "sizing" | "unknown";

export interface MotorVerdict {
  readonly fit: MotorFit;
  readonly words: string;
}

/** An axis that is converted, and why. */
export interface AxisScope {
  readonly axis: ScopeAxis;
  readonly why: "out of supply" | "in the ring";
  /** Null where none is on record. */
  readonly successor: FoundSuccessor | null;
  readonly motor: MotorVerdict;
}

/** Which axes are converted, which of other lines hang on the same ring, and which stay. */
export interface ChosenAxes {
  readonly converted: readonly { readonly axis: ScopeAxis; readonly why: AxisScope["why"] }[];
  readonly elsewhere: readonly ScopeAxis[];
  readonly staying: readonly ScopeAxis[];
}

const isOld = ({ drive }: ScopeAxis, target: string): boolean =>
  drive?.family !== target && drive?.stage !== "open";

/**
 * Chooses the axes to convert: drives out of open supply, undated or not identified, and every other node of a ring
 * in which one of them is, because a ring is in series and is converted as a whole.
 *
 * @param only Ids of the axes asked for; the rings still come along. Undefined asks for the whole line.
 */
export function chooseAxes(facts: ScopeFacts, target: string, only?: ReadonlySet<string>): ChosenAxes {
  const own = facts.axes.filter(({ lineCode }) => lineCode === facts.lineCode);
  const asked = own.filter((axis) => isOld(axis, target) && (only === undefined || only.has(axis.id)));
  const ids = new Set(asked.map(({ id }) => id));
  const rings = new Set(asked.flatMap(({ ring }) => (ring === null ? [] : [ring])));
  const comesAlong = ({ id, ring, drive }: ScopeAxis) =>
    !ids.has(id) && ring !== null && rings.has(ring) && drive?.family !== target;
  return {
    converted: own
      .filter((axis) => ids.has(axis.id) || comesAlong(axis))
      .map((axis) => ({ axis, why: ids.has(axis.id) ? "out of supply" : "in the ring" })),
    elsewhere: facts.axes.filter((axis) => axis.lineCode !== facts.lineCode && comesAlong(axis)),
    staying: own.filter((axis) => !ids.has(axis.id) && !comesAlong(axis)),
  };
}

/** What one converted axis asks for. */
export function scopeAxis(
  { axis, why }: ChosenAxes["converted"][number],
  target: string,
  facts: ScopeFacts,
): AxisScope {
  return {
    ...{ axis, why },
    successor: axis.drive && successorIn(axis.drive, target, facts),
    motor: judgeAxisMotor(axis, target, facts.rules),
  };
}

const FITS: Readonly<Record<VerdictState, MotorFit>> = {
  clear: "fits",
  caution: "adapter",
  unknown: "unknown",
  blocked: "sizing",
};

/** Holds the motor of an axis against the rules on motors and feedback; where none speaks of it, it is not known. */
function judgeAxisMotor(axis: ScopeAxis, target: string, rules: readonly Rule[]): MotorVerdict {
  const { motor, feedback, drive, evidence } = axis;
  if (motor === null) return { fit: "unknown", words: `No motor is recorded at ${axisName(axis)}.` };
  const facts: Pick<ControllerFacts, "groups"> = {
    groups: [
      {
        ...{ axes: 1, drive: drive?.family ?? null, targets: [target], feedback, evidence },
        ...{ motor: motor.family, powerKw: motor.powerKw },
      },
    ],
  };
  const verdicts = rules.flatMap((rule) => {
    const verdict =
      rule.kind === "motor_match"
        ? judgeMotor(rule, facts)
        : rule.kind === "feedback_match"
          ? judgeFeedback(rule, facts)
          : null;
    return verdict === null ? [] : [verdict];
  });
  if (verdicts.length === 0)
    return { fit: "unknown", words: `No rule speaks of ${motor.family ?? motor.number} on ${target}.` };
  return {
    fit: FITS[worstState(verdicts.map(({ state }) => state))],
    words: verdicts.map(({ code, arithmetic }) => `${code}: ${arithmetic}`).join(" "),
  };
}
