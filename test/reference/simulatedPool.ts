import { type RandomStream, randomStream } from "@/lib/kernel/random";

/** A pool as a simulation sees it, times in years from now. */
export interface SimulatedPool {
  readonly units: number;
  /** The removal rate is Gamma(a, b), per unit-year. */
  readonly a: number;
  readonly b: number;
  readonly leadTime: number;
  readonly lastOrderAt: number;
  readonly repair: { readonly turnaround: number; readonly yield: number; readonly untilAt: number };
  /** Chance of working of each piece on the shelf. */
  readonly pieces: readonly number[];
}

type Event = { readonly at: number; readonly kind: "removal" | "arrival" };

/** When the place on the shelf a removal empties is filled again; null is never. */
function filledAt(pool: SimulatedPool, at: number, stream: RandomStream): number | null {
  if (at <= pool.lastOrderAt) return at + pool.leadTime;
  if (at > pool.repair.untilAt) return null;
  return stream.next() < pool.repair.yield ? at + pool.repair.turnaround : null;
}

/** Every removal up to a time and every arrival it causes, as they happen. */
function history(pool: SimulatedPool, until: number, stream: RandomStream): Event[] {
  const rate = (pool.units * stream.gamma(pool.a)) / pool.b;
  const events: Event[] = [];
  const gap = () => -Math.log(1 - stream.next()) / rate;
  for (let at = gap(); at <= until; at += gap()) {
    events.push({ at, kind: "removal" });
    const filled = filledAt(pool, at, stream);
    if (filled !== null && filled <= until) events.push({ at: filled, kind: "arrival" });
  }
  return events.sort((one, other) => one.at - other.at);
}

/**
 * Share of simulated histories in which a failure at a time would find the shelf empty.
 *
 * Walks event by event: a removal takes a piece or waits, an arrival goes to who waits or to the shelf. Knows nothing of
 * exposures, tails or posteriors.
 */
export function simulatedNoSpare(pool: SimulatedPool, at: number, runs: number): number {
  const stream = randomStream(2026, `pool to ${at}`);
  let empty = 0;
  for (let run = 0; run < runs; run += 1) {
    let shelf = pool.pieces.filter((works) => stream.next() < works).length;
    for (const { kind } of history(pool, at, stream)) shelf += kind === "arrival" ? 1 : -1;
    if (shelf <= 0) empty += 1;
  }
  return empty / runs;
}
