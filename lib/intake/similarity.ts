function countPairs(word: string): Map<string, number> {
  const pairs = new Map<string, number>();
  for (let index = 0; index < word.length - 1; index += 1) {
    const pair = word.slice(index, index + 2);
    pairs.set(pair, (pairs.get(pair) ?? 0) + 1);
  }
  return pairs;
}

/**
 * How alike two words are, 0 to 1: twice the letter pairs they share over the pairs they have
 * (Sørensen–Dice coefficient on letter bigrams).
 */
export function similarity(one: string, other: string): number {
  if (one === other) return 1;
  if (one.length < 2 || other.length < 2) return 0;
  const left = countPairs(one);
  let shared = 0;
  for (const [pair, count] of countPairs(other)) shared += Math.min(count, left.get(pair) ?? 0);
  return (2 * shared) / (one.length - 1 + other.length - 1);
}
