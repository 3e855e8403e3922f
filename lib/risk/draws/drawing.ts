import { type RandomStream, randomStream } from "@/lib/kernel/random";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { GroupInput } from "@/lib/risk/evaluation";

/** One value a draw. */
export type Vector = Float64Array;

/** What every part of a drawing reads. */
export interface Drawing {
  readonly input: GroupInput;
  readonly assumptions: Assumptions;
  readonly draws: number;
  readonly seed: number;
}

/** Fills a vector from the stream of its own name, so that no other quantity shifts it. */
export function drawVector(
  { draws, seed }: Drawing,
  name: string,
  next: (from: RandomStream) => number,
): Vector {
  const stream = randomStream(seed, name);
  const out = new Float64Array(draws);
  for (let i = 0; i < draws; i += 1) out[i] = next(stream);
  return out;
}

/** Value of one draw; the index must be below the length. */
export function valueAt(vector: Vector, draw: number): number {
  const value = vector[draw];
  if (value === undefined) throw new RangeError(`draw must be below ${vector.length}, got ${draw}`);
  return value;
}

/** Smallest value of an ascending list that at least the share `p` of it does not exceed. */
export function pointOf(sorted: Vector, p: number): number {
  return valueAt(sorted, Math.max(0, Math.ceil(p * sorted.length) - 1));
}

/** The same of a list in any order. */
export function quantile(vector: Vector, p: number): number {
  return pointOf(vector.slice().sort(), p);
}

/** Answers each question once. */
export function once<T>(): (key: string, make: () => T) => T {
  const memo = new Map<string, T>();
  return (key, make) => {
    const known = memo.get(key);
    if (known !== undefined) return known;
    const made = make();
    memo.set(key, made);
    return made;
  };
}
