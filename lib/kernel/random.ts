/** A stream of chance that gives the same draws for the same seed and name on every machine. */
export interface RandomStream {
  /** Uniform in [0, 1). */
  next(): number;
  /** Uniform in [lo, hi). */
  between(lo: number, hi: number): number;
  /** Uniform over the whole numbers lo … hi, both included. */
  integer(lo: number, hi: number): number;
  /** One of the entries, each alike likely. */
  pick<T>(list: readonly T[]): T;
  /** Standard normal. */
  normal(): number;
  /** Poisson count; mean >= 0. */
  poisson(mean: number): number;
  /** Gamma with rate 1; shape > 0. */
  gamma(shape: number): number;
  /** A shuffled copy. */
  shuffle<T>(list: readonly T[]): T[];
}

/** FNV-1a over the characters, folded with the seed: the start of the stream. */
function startOf(seed: number, name: string): number {
  let hash = 0x811c9dc5 ^ Math.imul(seed | 0, 0x9e3779b1);
  for (const char of `${seed}/${name}`) hash = Math.imul(hash ^ (char.codePointAt(0) ?? 0), 0x01000193);
  return hash >>> 0;
}

/** SplitMix32: a counter put through a mixing function (constants from memory of the public-domain version). */
function uniform(start: number): () => number {
  let state = start;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 0x1_0000_0000;
  };
}

function drawNormal(next: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** Marsaglia and Tsang 2000; a shape below 1 is drawn one higher and scaled back. */
function drawGamma(next: () => number, shape: number): number {
  if (!(Number.isFinite(shape) && shape > 0))
    throw new RangeError(`shape must be finite and > 0, got ${shape}`);
  if (shape < 1) return drawGamma(next, shape + 1) * (1 - next()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = drawNormal(next);
    const v = (1 + c * x) ** 3;
    if (v <= 0) continue;
    const u = 1 - next();
    // Their quick bound: it lies inside the exact one and spares most draws two logarithms.
    if (u < 1 - 0.0331 * x * x * x * x) return d * v;
    if (Math.log(u) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** Counts exponential gaps; a large mean is drawn in pieces so that no power underflows. */
function drawPoisson(next: () => number, mean: number): number {
  if (!(Number.isFinite(mean) && mean >= 0))
    throw new RangeError(`mean must be finite and >= 0, got ${mean}`);
  let count = 0;
  for (let rest = mean; rest > 0; rest -= 30) {
    const limit = Math.exp(-Math.min(rest, 30));
    for (let product = next(); product > limit; product *= next()) count += 1;
  }
  return count;
}

/**
 * Opens the stream of a name, so that one table's draws do not shift another's.
 *
 * @param seed Whole number; @param name Any text, e.g. the table the stream fills.
 * @throws {RangeError} if the seed is not an integer; the draws throw when an argument is out of its range.
 */
export function randomStream(seed: number, name: string): RandomStream {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`seed must be an integer, got ${seed}`);
  const next = uniform(startOf(seed, name));
  const integer = (lo: number, hi: number): number => {
    if (!(Number.isSafeInteger(lo) && Number.isSafeInteger(hi) && lo <= hi))
      throw new RangeError(`lo and hi must be integers with lo <= hi, got ${lo} and ${hi}`);
    return lo + Math.floor(next() * (hi - lo + 1));
  };
  const shuffle = <T>(list: readonly T[]): T[] => {
    const left = [...list];
    return list.flatMap(() => left.splice(Math.floor(next() * left.length), 1));
  };
  return {
    next,
    between: (lo, hi) => lo + next() * (hi - lo),
    integer,
    pick: <T>(list: readonly T[]): T => {
      if (list.length === 0) throw new RangeError("list must hold an entry, got 0");
      return list[integer(0, list.length - 1)] as T;
    },
    normal: () => drawNormal(next),
    poisson: (mean) => drawPoisson(next, mean),
    gamma: (shape) => drawGamma(next, shape),
    shuffle,
  };
}
