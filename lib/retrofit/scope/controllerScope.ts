import { type JudgedController, judgeController } from "@/lib/retrofit/compatibility";
import { type VerdictState, worstState } from "@/lib/retrofit/compatibility/verdict";
import type { Norm } from "@/lib/retrofit/costNorm";
import type { AxisScope, ChosenAxes, MotorFit } from "@/lib/retrofit/scope/axisScope";
import type { ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";
import { sum } from "@/lib/retrofit/scope/spread";

/** What stands in the way, by name; what it rests on and what clears it. */
export interface ScopeBlocker {
  readonly name: string;
  readonly state: Exclude<VerdictState, "clear">;
  readonly words: string;
  readonly unblocks: string | null;
  /** Controllers, or nothing where it is about the whole line. */
  readonly where: readonly string[];
  /** Rule it comes from; null is no rule of the list. */
  readonly rule: string | null;
}

/** A newer drive in an old place is about spares, not about a conversion. */
const BESIDE = "hardware_revision";
/** Said once for the whole line. */
const SUMMED: ReadonlySet<string> = new Set(["motor_match", "feedback_match", "ring_whole"]);

/** The controllers of the converted axes, held against the rules as if each drive were of the target family. */
export function judgeForTarget(
  facts: ScopeFacts,
  converted: ChosenAxes["converted"],
  target: string,
): JudgedController[] {
  const designations = new Set(converted.map(({ axis }) => axis.controller));
  const families = new Set(converted.map(({ axis }) => axis.drive?.family ?? null));
  return facts.controllers
    .filter(({ designation }) => designations.has(designation))
    .map((one) => {
      const groups = one.groups.map((group) => ({
        ...group,
        targets: families.has(group.drive) ? [target] : [],
      }));
      const judged = judgeController(facts.rules, { ...one, groups });
      return { ...judged, verdicts: judged.verdicts.filter(({ kind }) => kind !== BESIDE) };
    });
}

/** The verdicts in the way, alike ones said once with their controllers; blocked first. */
export function blockersOf(
  controllers: readonly JudgedController[],
  axes: readonly AxisScope[],
): ScopeBlocker[] {
  const byWords = new Map<string, ScopeBlocker>();
  for (const { facts, verdicts } of controllers)
    for (const { code, kind, blocker, state, arithmetic, unblocks } of verdicts) {
      if (state === "clear" || SUMMED.has(kind)) continue;
      const key = `${code} ${state} ${arithmetic}`;
      const where = [...(byWords.get(key)?.where ?? []), facts.designation];
      byWords.set(key, { ...{ name: blocker, state, words: arithmetic, unblocks, where }, rule: code });
    }
  return [
    ...byWords.values(),
    ...motorBlockers(axes),
    ...missingSuccessors(axes),
    ...missingControllers(axes),
  ].sort(worstFirst);
}

/** Worst state first. */
export function worstFirst(a: ScopeBlocker, b: ScopeBlocker): number {
  return a.state === b.state ? 0 : worstState([a.state, b.state]) === a.state ? -1 : 1;
}

function motorBlockers(axes: readonly AxisScope[]): ScopeBlocker[] {
  const at = (fit: MotorFit) => axes.filter(({ motor }) => motor.fit === fit).length;
  const of = `of ${axes.length} motors`;
  const found: readonly (readonly [number, ScopeBlocker["state"], string, string])[] = [
    [
      at("sizing"),
      "blocked",
      "match no new drive",
      "A competent engineer sizes each replacement; a list of candidates is not a sizing.",
    ],
    [
      at("unknown"),
      "unknown",
      "are not judged: no rule speaks of them, or the plate is not read",
      "Read the plates, and record what the drive maker says of the motor.",
    ],
    [
      at("adapter"),
      "caution",
      "stay only with an adapter",
      "Plan the adapters and verify each motor on one.",
    ],
  ];
  return found
    .filter(([count]) => count > 0)
    .map(([count, state, words, unblocks]) => ({
      ...{ name: "Motor unmatched", state, unblocks, where: [], rule: null },
      words: `${count} ${of} ${words}.`,
    }));
}

function missingSuccessors(axes: readonly AxisScope[]): ScopeBlocker[] {
  const without = axes.filter(({ successor }) => successor === null).length;
  if (without === 0) return [];
  return [
    {
      ...{ name: "Successor missing", state: "unknown", where: [], rule: null },
      words: `${without} of ${axes.length} converted axes have no drive of the target family on record.`,
      unblocks: "Identify the drives, and record what follows them.",
    },
  ];
}

function missingControllers(axes: readonly AxisScope[]): ScopeBlocker[] {
  const without = axes.filter(({ axis }) => axis.controller === null).length;
  if (without === 0) return [];
  return [
    {
      ...{ name: "Controller not recorded", state: "unknown", where: [], rule: null },
      words: `${without} of ${axes.length} converted axes hang on no recorded controller.`,
      unblocks: "Record the controller of the machine.",
    },
  ];
}

/** How many controllers change; one nobody has read counts as a swap, but for the low end. */
export function controllerCounts(controllers: readonly JudgedController[]) {
  const at = (...steps: readonly JudgedController["step"][]) =>
    controllers.filter(({ step }) => steps.includes(step)).length;
  const [swaps, unread, raises] = [at("swap"), at("unknown", "no-rule"), at("raise")];
  const swapped: Norm = [swaps, swaps + unread, swaps + unread];
  const raised: Norm = [raises, raises, raises];
  return { swaps, unread, raises, none: at("none"), swapped, raised };
}

/** Racks that lose their bus by the rules on cards; where a rule is unsure, not in the low end. */
export function strandedRacks(facts: ScopeFacts, controllers: readonly JudgedController[]): Norm {
  const racksOf = (families: readonly string[], one: JudgedController) =>
    one.facts.racks
      .filter(({ family }) => families.includes(family))
      .reduce((total, { pieces }) => total + pieces, 0);
  return sum(
    controllers.map((one): Norm => {
      const families = (state: VerdictState) =>
        facts.rules.flatMap((rule) =>
          rule.kind === "card_lost" &&
          one.verdicts.some(({ code, state: said }) => code === rule.code && said === state)
            ? [rule.terms.racks]
            : [],
        );
      const lost = racksOf(families("blocked"), one);
      const unsure = racksOf([...families("unknown"), ...families("caution")], one);
      return [lost, lost + unsure, lost + unsure];
    }),
  );
}
