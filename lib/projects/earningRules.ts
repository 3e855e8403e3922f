import { requireCount, requireNumber, requireShare } from "@/lib/kernel/requireNumber";

/**
 * How a piece of work earns its value. None of them asks anybody how far it feels.
 *
 * whole: all when it is finished (0/100) · half: half when it begins, half when it is finished (50/50) ·
 * milestones: the weights of its milestones that are done · axes: by axes that have done a step ·
 * effort: as planned, so it is never late and tells nothing about progress (level of effort).
 */
export type EarningRule =
  | { readonly kind: "whole"; readonly finished: boolean }
  | { readonly kind: "half"; readonly begun: boolean; readonly finished: boolean }
  | {
      readonly kind: "milestones";
      readonly milestones: readonly { readonly weight: number; readonly done: boolean }[];
    }
  | { readonly kind: "axes"; readonly done: number; readonly total: number }
  | { readonly kind: "effort"; readonly planned: number };

/**
 * Share of its value a piece of work has earned, in [0, 1].
 *
 * Without axes, or without weight, nothing is earned.
 *
 * @throws {RangeError} when more axes are done than there are, or a number is out of its range.
 * @see GAO-09-3SP, Cost Estimating and Assessment Guide (names of the rules from memory); by axes: own.
 */
export function earnedShare(rule: EarningRule): number {
  switch (rule.kind) {
    case "whole":
      return rule.finished ? 1 : 0;
    case "half":
      return rule.finished ? 1 : rule.begun ? 0.5 : 0;
    case "milestones":
      return weighted(rule.milestones);
    case "axes":
      return byAxes(rule);
    case "effort":
      return requireShare(rule.planned, "planned");
  }
}

function weighted(milestones: readonly { readonly weight: number; readonly done: boolean }[]): number {
  for (const { weight } of milestones) requireNumber(weight, "weight", { least: 0 });
  const all = milestones.reduce((sum, { weight }) => sum + weight, 0);
  const done = milestones.reduce((sum, one) => sum + (one.done ? one.weight : 0), 0);
  return all > 0 ? done / all : 0;
}

function byAxes({ done, total }: { readonly done: number; readonly total: number }): number {
  requireCount(total, "axes");
  requireCount(done, "axes done");
  if (done > total) throw new RangeError(`${done} axes are done of ${total}`);
  return total > 0 ? done / total : 0;
}
