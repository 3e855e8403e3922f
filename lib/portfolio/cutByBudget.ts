import { requireNumber } from "@/lib/kernel/requireNumber";
import { err, ok, type Result } from "@/lib/kernel/result";

/** What a person decided about a line, against the cut. */
export type Pin = "in" | "out" | "none";

export interface RankedLine {
  readonly id: string;
  /** Estimated cost, > 0; null is not estimated, and such a line cannot be funded. */
  readonly cost: number | null;
  readonly pin: Pin;
}

export interface CutOptions {
  /** Money to spend, >= 0, in the currency of the costs. */
  readonly budget: number;
  /** Go on past a line that does not fit and take later ones that do. */
  readonly fill: boolean;
}

export interface Cut {
  /** Funded lines in rank order. */
  readonly funded: readonly string[];
  readonly spent: number;
  readonly remaining: number;
  /** First line in rank order that the money does not reach; null when all priced lines are funded. */
  readonly fundingLine: string | null;
  /** The lines not funded from the funding line on, in rank order, without those pinned out or not priced. */
  readonly below: readonly string[];
  /** Lines without a cost estimate, in rank order. */
  readonly unpriced: readonly string[];
}

export type NoCut =
  /** The lines pinned in cost more than there is. */
  | { readonly reason: "pins-exceed-budget"; readonly enough: number; readonly short: number }
  /** A line pinned in has no cost estimate. */
  | { readonly reason: "pin-not-priced"; readonly ids: readonly string[] };

interface Priced {
  readonly id: string;
  readonly cost: number;
}

function requireLines(lines: readonly RankedLine[]): void {
  if (new Set(lines.map(({ id }) => id)).size !== lines.length)
    throw new RangeError(`lines must each have an own id, got ${lines.length}`);
  for (const { cost } of lines) if (cost !== null) requireNumber(cost, "cost", { least: 0, open: true });
}

const total = (lines: readonly Priced[]) => lines.reduce((sum, { cost }) => sum + cost, 0);

/** Takes lines in order while they fit; at the first that does not, stops or passes over it. */
function takeInOrder(lines: readonly Priced[], money: number, fill: boolean): Set<string> {
  const taken = new Set<string>();
  let left = money;
  for (const { id, cost } of lines) {
    if (cost <= left) {
      taken.add(id);
      left -= cost;
    } else if (!fill) break;
  }
  return taken;
}

/**
 * Spends a budget down a ranking: lines pinned in first, then in rank order as far as the money goes.
 *
 * The plain baseline of a plan: it looks at rank and cost only, so a dear line high up can keep out several cheaper
 * ones worth more together.
 *
 * @param lines In rank order, best first.
 * @returns The cut, or why the pins cannot be kept and how much would be enough.
 * @throws {RangeError} naming the argument and its value.
 */
export function cutByBudget(lines: readonly RankedLine[], { budget, fill }: CutOptions): Result<Cut, NoCut> {
  requireNumber(budget, "budget", { least: 0 });
  requireLines(lines);
  const unpriced = lines.filter(({ cost, pin }) => cost === null && pin !== "out");
  const blind = unpriced.filter(({ pin }) => pin === "in");
  if (blind.length > 0) return err({ reason: "pin-not-priced", ids: blind.map(({ id }) => id) });
  const priced = (pin: Pin): Priced[] =>
    lines.flatMap((line) =>
      line.pin === pin && line.cost !== null ? [{ id: line.id, cost: line.cost }] : [],
    );
  const pinned = priced("in");
  const enough = total(pinned);
  if (enough > budget) return err({ reason: "pins-exceed-budget", enough, short: enough - budget });
  const free = priced("none");
  const taken = takeInOrder(free, budget - enough, fill);
  const below = free.filter(({ id }) => !taken.has(id)).map(({ id }) => id);
  const chosen = lines.filter(({ id, pin }) => pin === "in" || taken.has(id));
  const spent = chosen.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
  return ok({
    funded: chosen.map(({ id }) => id),
    spent,
    remaining: Math.max(0, budget - spent),
    fundingLine: below[0] ?? null,
    below,
    unpriced: unpriced.map(({ id }) => id),
  });
}
