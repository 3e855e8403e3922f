import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { requireCount } from "@/lib/kernel/requireNumber";
import type { GammaRate } from "@/lib/reliability/rate";
import type { PoolSupply } from "@/lib/spares/exposure";

/** Pieces alike in their chance of working. */
interface Pieces {
  readonly count: number;
  readonly works: number;
}

/** A pool as the simulation walks through it, times in years from now. */
export interface SimulatedPool {
  readonly supply: PoolSupply;
  /** Removals per unit-year. */
  readonly rate: GammaRate;
  /** On the shelf now. */
  readonly pieces: readonly Pieces[];
  /** Reaching the shelf later. */
  readonly additions: readonly (Pieces & { readonly at: number })[];
}

/**
 * What becomes of a removal that finds the shelf empty: it waits for whatever comes; it waits only for pieces due back
 * from an order or a repair and is else got elsewhere; or it is got elsewhere at once, its own unit still coming back.
 */
export type Unmet = "waits" | "waits for what is due back" | "got elsewhere";

export interface Simulation {
  /** Times looked at, years, >= 0. */
  readonly times: readonly number[];
  /** Histories, > 0. */
  readonly runs: number;
  readonly seed: number;
  /** Names the stream of chance, e.g. the pool. */
  readonly name: string;
  readonly unmet: Unmet;
}

type Happening =
  | { readonly at: number; readonly kind: "removal"; readonly back: number | null }
  | { readonly at: number; readonly kind: "return" }
  | { readonly at: number; readonly kind: "addition"; readonly count: number }
  | { readonly at: number; readonly kind: "look"; readonly place: number };

function working(pieces: readonly Pieces[], stream: RandomStream): number {
  let good = 0;
  for (const { count, works } of pieces)
    for (let piece = 0; piece < count; piece += 1) if (stream.next() < works) good += 1;
  return good;
}

/** When the place on the shelf a removal empties is filled again; null is never. */
function backAt(
  { lastOrderAt, leadTime, repair }: PoolSupply,
  at: number,
  stream: RandomStream,
): number | null {
  if (at <= (lastOrderAt ?? Number.POSITIVE_INFINITY)) return at + leadTime;
  if (repair === null || at > (repair.untilAt ?? Number.POSITIVE_INFINITY)) return null;
  return stream.next() < repair.yield ? at + repair.turnaround : null;
}

function removals({ supply, rate }: SimulatedPool, end: number, stream: RandomStream): Happening[] {
  const perUnit = stream.gamma(rate.a) / rate.b;
  const happenings: Happening[] = [];
  for (const { from, to, units } of supply.installed) {
    const gap = () => -Math.log(1 - stream.next()) / (perUnit * units);
    const until = Math.min(end, to ?? end);
    for (let at = from + gap(); at <= until; at += gap()) {
      const back = backAt(supply, at, stream);
      happenings.push({ at, kind: "removal", back });
      if (back !== null) happenings.push({ at: back, kind: "return" });
    }
  }
  return happenings;
}

/** Pieces on the shelf, below zero when removals wait, and pieces due back for it. */
interface Shelf {
  pieces: number;
  due: number;
}

function remove(shelf: Shelf, back: number | null, unmet: Unmet): void {
  const isMet =
    unmet === "waits" ||
    (unmet === "got elsewhere" ? shelf.pieces > 0 : back !== null || shelf.pieces + shelf.due > 0);
  if (isMet) shelf.pieces -= 1;
  if (back !== null) shelf.due += 1;
}

/** One history: whether the shelf is empty at each look. */
function walk(happenings: Happening[], start: number, unmet: Unmet): boolean[] {
  const shelf: Shelf = { pieces: start, due: 0 };
  const empty: boolean[] = [];
  for (const one of happenings.sort((a, b) => a.at - b.at)) {
    if (one.kind === "removal") remove(shelf, one.back, unmet);
    else if (one.kind === "addition") shelf.pieces += one.count;
    else if (one.kind === "look") empty[one.place] = shelf.pieces <= 0;
    else {
      shelf.pieces += 1;
      shelf.due -= 1;
    }
  }
  return empty;
}

/**
 * Share of simulated histories in which a failure at each time would find the shelf empty.
 *
 * Discrete-event simulation: rate and working pieces are drawn, then removals, returns and additions happen one by one.
 * Knows nothing of exposures, distributions or points of a rate, so that it can speak against them. The standard error
 * of a share p is sqrt(p (1 - p) / runs).
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function simulateShelf(pool: SimulatedPool, simulation: Simulation): number[] {
  const { times, runs, seed, name, unmet } = simulation;
  if (requireCount(runs, "runs") === 0) throw new RangeError("runs must be > 0, got 0");
  const stream = randomStream(seed, name);
  const counts = times.map(() => 0);
  const end = Math.max(0, ...times);
  for (let run = 0; run < runs; run += 1) {
    const added = pool.additions.map(
      (pieces): Happening => ({ at: pieces.at, kind: "addition", count: working([pieces], stream) }),
    );
    const looks = times.map((at, place): Happening => ({ at, kind: "look", place }));
    const start = working(pool.pieces, stream);
    const empty = walk([...removals(pool, end, stream), ...added, ...looks], start, unmet);
    for (const [place, isEmpty] of empty.entries()) if (isEmpty) counts[place] = (counts[place] ?? 0) + 1;
  }
  return counts.map((count) => count / runs);
}
