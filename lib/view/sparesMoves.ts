import { daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import { plainNumber } from "@/lib/view/number";
import type { SparesPool } from "@/lib/view/sparesLook";
import { day } from "@/lib/view/time";

/** A change of chance smaller than this is rounding of the time that passed. */
const STILL = 0.0005;

/** What moved in a pool within the week. */
export interface PoolMove {
  /** Change of the no-spare chance, in [-1, 1]; null when the pool is new. */
  readonly noSpare: number | null;
  /** Days the P80 day moved, negative is nearer; null when either day is open or the shelf is empty already. */
  readonly depletionDays: number | null;
  /** Reasons on record, worst first; empty when only time passed. */
  readonly reasons: readonly string[];
}

/** Says how a pool stands against the week before. */
export function poolMove(pool: SparesPool): PoolMove {
  const { before } = pool;
  return {
    noSpare: before === null ? null : pool.noSpare.mean - before.noSpare,
    depletionDays: daysMoved(pool),
    reasons: reasonsOf(pool),
  };
}

function daysMoved({ asOf, before, depletionP80 }: SparesPool): number | null {
  const was = before?.depletionP80 ?? null;
  if (was === null || depletionP80 === null || depletionP80 <= asOf) return null;
  return daysBetween(was, depletionP80);
}

/** A depletion day in words. */
export function depletionDayText(date: IsoDate | null, { asOf }: SparesPool): string {
  if (date === null) return "beyond 5 years";
  return date <= asOf ? "empty now" : day(date);
}

function reasonsOf(pool: SparesPool): string[] {
  const { before, stage, newRemovals, repairsOverdue } = pool;
  const reasons: string[] = [];
  if (before === null) reasons.push("New in the records");
  else if (before.stage !== stage) reasons.push("Supply stage changed");
  if (newRemovals > 0) reasons.push(`${newRemovals} ${newRemovals === 1 ? "removal" : "removals"} this week`);
  if (repairsOverdue > 0)
    reasons.push(`${repairsOverdue} ${repairsOverdue === 1 ? "repair" : "repairs"} overdue`);
  return reasons;
}

/** Whether a pool got worse by more than rounding. */
export function gotWorse(pool: SparesPool): boolean {
  return (poolMove(pool).noSpare ?? 0) > STILL;
}

/** Pools in the order of what got worse: chance gained, then chance now, then number. */
export function orderByWorse(pools: readonly SparesPool[]): SparesPool[] {
  const gain = (pool: SparesPool) => {
    const moved = poolMove(pool).noSpare ?? 0;
    return Math.abs(moved) <= STILL ? 0 : moved;
  };
  return [...pools].sort(
    (a, b) => gain(b) - gain(a) || b.noSpare.mean - a.noSpare.mean || (a.number < b.number ? -1 : 1),
  );
}

const POINT = 100;

/** A change of chance in percentage points, signed: `+3.2 points`. */
export function pointsText(change: number): string {
  const points = plainNumber(Math.abs(change) * POINT, 1);
  return `${change > 0 ? "+" : "\u2212"}${points} points`;
}

/** Whether a change of chance is for the worse, the better, or only rounding. */
export function moveKind(change: number): "better" | "worse" | "same" {
  if (Math.abs(change) <= STILL) return "same";
  return change > 0 ? "worse" : "better";
}
