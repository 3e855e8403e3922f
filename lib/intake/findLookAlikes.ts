import { lookAlikeKey, partKey } from "@/lib/intake/readPartNumber";

/** Two parts of the records whose numbers may be one number. */
export interface LookAlike {
  readonly firstId: string;
  readonly secondId: string;
  readonly score: number;
  readonly why: string;
}

interface Numbered {
  readonly id: string;
  readonly maker: string;
  readonly number: string;
}

/**
 * Pairs of parts whose numbers are alike but for separators, letters that look like digits, or the maker's spelling.
 * Numbers that differ by a letter or a digit are not among them: sizes of one family do.
 */
export function findLookAlikes(parts: readonly Numbered[]): LookAlike[] {
  const groups = new Map<string, Numbered[]>();
  for (const part of parts) {
    const key = lookAlikeKey(partKey(part.number));
    groups.set(key, [...(groups.get(key) ?? []), part]);
  }
  const pairs = [...groups.values()].flatMap((group) =>
    group.flatMap((first, index) => group.slice(index + 1).map((second) => pairOf(first, second))),
  );
  return pairs.sort((a, b) => b.score - a.score || (a.firstId < b.firstId ? -1 : 1));
}

function pairOf(first: Numbered, second: Numbered): LookAlike {
  const sameKey = partKey(first.number) === partKey(second.number);
  const sameMaker = partKey(first.maker) === partKey(second.maker);
  const base = sameKey
    ? { score: 0.97, why: "The numbers differ by separators only" }
    : { score: 0.93, why: "The numbers differ by letters that look like digits only" };
  const pair = { firstId: first.id, secondId: second.id };
  if (sameMaker) return { ...pair, ...base };
  return { ...pair, score: base.score * 0.75, why: `${base.why}; the makers are written differently` };
}
