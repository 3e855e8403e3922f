import { requireCount, requireShare } from "@/lib/kernel/requireNumber";

/** Pieces beyond these change no chance that matters and are left out. */
export const MOST_PIECES = 400;

/** Puts n alike pieces, each working with the same chance, on a shelf of uncertain count. */
function addPieces(shelf: readonly number[], count: number, works: number): number[] {
  let chances = [...shelf];
  for (let piece = 0; piece < count; piece += 1) {
    const next = new Array<number>(chances.length + 1).fill(0);
    for (const [k, chance] of chances.entries()) {
      next[k] = (next[k] as number) + chance * (1 - works);
      next[k + 1] = chance * works;
    }
    chances = next;
  }
  return chances;
}

/**
 * Chance of each number of working spares, P(K = k) for k = 0 … pieces, when each works or not for itself.
 *
 * @param pieces Groups alike in their chance of working: count whole, works in [0, 1]. Above 400 pieces the rest is left out.
 * @throws {RangeError} naming the argument and its value.
 */
export function stockChance(
  pieces: readonly { readonly count: number; readonly works: number }[],
): readonly number[] {
  let chances: number[] = [1];
  for (const { count, works } of pieces) {
    const room = MOST_PIECES + 1 - chances.length;
    chances = addPieces(chances, Math.min(requireCount(count, "count"), room), requireShare(works, "works"));
  }
  return chances;
}
