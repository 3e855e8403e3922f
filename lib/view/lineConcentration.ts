import type { RankedLine } from "@/lib/view/lineRanking";

/** The few lines that carry most of the money. */
export interface LineConcentration {
  /** How many lines it takes, from the largest. */
  readonly lines: number;
  /** Lines with a known cost per hour. */
  readonly of: number;
  /** Their part of the sum, in [0, 1]. */
  readonly share: number;
  /** Sum over all lines with a known cost per hour, EUR a year. */
  readonly total: number;
}

const MOST = 0.7;

/** Finds how few lines carry at least 70 % of the stop loss; null when no loss is known. */
export function lineConcentration(lines: readonly RankedLine[]): LineConcentration | null {
  const losses = lines.flatMap(({ stopLoss }) => (stopLoss === null ? [] : [stopLoss.mean]));
  const total = losses.reduce((sum, loss) => sum + loss, 0);
  if (!(total > 0)) return null;
  const falling = losses.sort((a, b) => b - a);
  let carried = 0;
  let count = 0;
  for (const loss of falling) {
    if (carried >= MOST * total) break;
    carried += loss;
    count += 1;
  }
  return { lines: count, of: losses.length, share: carried / total, total };
}

const WORDS = "no|One|Two|Three|Four|Five|Six|Seven|Eight|Nine|Ten|Eleven|Twelve".split("|");

/** The finding in one sentence; `money` writes an amount of EUR. */
export function concentrationSentence(
  { lines, of, share, total }: LineConcentration,
  terms: { readonly whose: string; readonly money: (eur: number) => string },
): string {
  const who = WORDS[lines] ?? String(lines);
  const carry = lines === 1 ? "line carries" : "lines carry";
  const others = of === lines ? "" : ` The other ${of - lines} share the rest.`;
  return `${who} ${carry} ${Math.round(share * 100)} % of ${terms.whose} ${terms.money(total)} first-year loss.${others}`;
}
