import { type LimitRow, slackOf } from "@/lib/portfolio/planLimits";
import type { Candidate } from "@/lib/portfolio/planSlots";

/** How a search is watched: a clock handed in, since the core has none. */
export interface Watch {
  /** Seconds since the run began. */
  seconds(): number;
  /** Whether a person asked it to end with what it has; absent is never. */
  readonly stopped?: () => boolean;
}

/** Whether a search must end: its time is up, or a person stopped it. */
export const isLate = (watch: Watch, stopAt: number): boolean =>
  (watch.stopped?.() ?? false) || watch.seconds() >= stopAt;

/** A change of a plan: candidates taken out and put in. */
interface Move {
  readonly out: readonly number[];
  readonly in: readonly number[];
}

export interface ExchangeTerms {
  readonly candidates: readonly Candidate[];
  readonly limits: readonly LimitRow[];
  readonly open: readonly boolean[];
  /** What is to be made as large as can be. */
  readonly value: (chosen: readonly number[]) => number;
  /** A quick look at it, to look at the likeliest moves first. */
  readonly guess: (chosen: readonly number[]) => number;
  readonly watch: Watch;
  /** Second of the run at which it stops. */
  readonly stopAt: number;
  /** Hears of each better plan. */
  readonly better?: (chosen: readonly number[]) => void;
}

export interface Exchanged {
  readonly chosen: readonly number[];
  readonly value: number;
  /** False when time ran out first. */
  readonly settled: boolean;
}

/** Moves looked at with the true worth in each round, and candidates put in against each one taken out. */
const LOOKS = 60;
const PARTNERS = 60;
const LEAST_GAIN = 1e-9;

const ascending = (a: number, b: number) => a - b;

export function after(chosen: readonly number[], { out, in: put }: Move): number[] {
  return [...chosen.filter((index) => !out.includes(index)), ...put].sort(ascending);
}

/** Tells whether a plan keeps within all limits once it is changed; looks only at the limits the change touches. */
export function fitting(limits: readonly LimitRow[], candidates: number) {
  const byCandidate = Array.from({ length: candidates }, (): [number, number][] => []);
  for (const [row, { takes }] of limits.entries())
    for (const [index, amount] of takes) byCandidate[index]?.push([row, amount]);
  return (chosen: readonly number[]) => {
    const used = limits.map(() => 0);
    for (const index of chosen)
      for (const [row, amount] of byCandidate[index] ?? []) used[row] = (used[row] as number) + amount;
    return ({ out, in: put }: Move): boolean => {
      const change = new Map<number, number>();
      const add = (sign: number) => (index: number) => {
        for (const [row, amount] of byCandidate[index] ?? [])
          change.set(row, (change.get(row) ?? 0) + sign * amount);
      };
      put.forEach(add(1));
      out.forEach(add(-1));
      return [...change].every(([row, by]) => {
        const { most } = limits[row] as LimitRow;
        return (used[row] as number) + by <= most + slackOf(most);
      });
    };
  };
}

/** All ways to change one line: take its options out, put one in, or put one in for one. */
function singleMoves(terms: ExchangeTerms, chosen: readonly number[]): Move[] {
  const lineOf = (index: number) => (terms.candidates[index] as Candidate).line.lineId;
  const free = terms.candidates.filter(({ index }) => terms.open[index] && !chosen.includes(index));
  const mine = new Map<string, number[]>();
  for (const index of chosen) mine.set(lineOf(index), [...(mine.get(lineOf(index)) ?? []), index]);
  const drops = [...mine.values()].flatMap((list) =>
    list.length > 1 ? [list, ...list.map((one) => [one])] : [list],
  );
  return [
    ...drops.map((out) => ({ out, in: [] })),
    ...free.flatMap(({ index, line }) => {
      const list = mine.get(line.lineId) ?? [];
      const outs =
        list.length > 1 ? [[], list, ...list.map((one) => [one])] : list.length === 1 ? [[], list] : [[]];
      return outs.map((out) => ({ out, in: [index] }));
    }),
  ];
}

/** Two steps of one line at once, such as a controller and the drives after it. */
function chainMoves({ candidates, open }: ExchangeTerms, chosen: readonly number[]): Move[] {
  const taken = new Set(chosen.map((index) => (candidates[index] as Candidate).line.lineId));
  return candidates
    .filter(({ index, option, line }) => open[index] && option.after.length > 0 && !taken.has(line.lineId))
    .flatMap((later) =>
      candidates
        .filter(
          ({ index, option, slot }) =>
            open[index] && later.option.after.includes(option.id) && slot.endsOn < later.slot.startsOn,
        )
        .map((earlier) => ({ out: [], in: [earlier.index, later.index] })),
    );
}

/** One line out and another in. */
function swapMoves(terms: ExchangeTerms, chosen: readonly number[], ranked: readonly Move[]): Move[] {
  const partners = ranked.filter(({ out, in: put }) => out.length === 0 && put.length > 0).slice(0, PARTNERS);
  const drops = singleMoves({ ...terms, candidates: terms.candidates, open: [] }, chosen);
  return drops.flatMap(({ out }) =>
    partners.flatMap(({ in: put }) => (put.some((index) => out.includes(index)) ? [] : [{ out, in: put }])),
  );
}

/** Moves with what they promise, the best first; equal ones stay in their order. */
function rankedBy(terms: ExchangeTerms, chosen: readonly number[], moves: readonly Move[]): Move[] {
  // Once time has run out nothing is looked at any more.
  const late = () => isLate(terms.watch, terms.stopAt);
  return moves
    .map((move) => ({ move, guess: late() ? Number.NEGATIVE_INFINITY : terms.guess(after(chosen, move)) }))
    .sort((a, b) => b.guess - a.guess)
    .map(({ move }) => move);
}

function bestMove(terms: ExchangeTerms, from: Exchanged, moves: readonly Move[]): Exchanged | "late" | null {
  let best: Exchanged | null = null;
  for (const move of moves) {
    if (isLate(terms.watch, terms.stopAt)) return best ?? "late";
    const chosen = after(from.chosen, move);
    const value = terms.value(chosen);
    if (value > (best ?? from).value + LEAST_GAIN * Math.max(1, Math.abs(from.value)))
      best = { chosen, value, settled: true };
  }
  return best;
}

/**
 * Changes a plan move by move while its true value rises: a line dropped, added, moved or swapped for another.
 *
 * Each round takes the best of the likeliest moves. It ends when none of them helps, so a plan whose moves are few
 * enough is the best among all its neighbours.
 */
export function exchange(terms: ExchangeTerms, start: readonly number[]): Exchanged {
  const fits = fitting(terms.limits, terms.candidates.length);
  let now: Exchanged = { chosen: start, value: terms.value(start), settled: true };
  for (;;) {
    const kept = fits(now.chosen);
    const open = [...singleMoves(terms, now.chosen), ...chainMoves(terms, now.chosen)];
    const ranked = rankedBy(terms, now.chosen, open);
    const single = ranked.filter(kept);
    const swaps = rankedBy(terms, now.chosen, swapMoves(terms, now.chosen, ranked).filter(kept));
    const looks = [...single.slice(0, LOOKS), ...swaps.slice(0, LOOKS)];
    const next = bestMove(terms, now, looks);
    if (next === "late") return { ...now, settled: false };
    if (next === null) return now;
    now = next;
    terms.better?.(now.chosen);
  }
}
