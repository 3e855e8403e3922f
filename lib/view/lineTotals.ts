import type { RankedLine } from "@/lib/view/lineRanking";

/** Which of the two ranks leads. */
export type RankedBy = "loss" | "score";

/** What the address says leads; anything else is money. */
export function rankedBy(text: string | null | undefined): RankedBy {
  return text === "score" ? "score" : "loss";
}

/** Sums over lines; a sum over nothing known is null, never zero. */
export interface LineTotals {
  readonly lines: number;
  /** Lines with a known cost per hour, which the money is summed over. */
  readonly costed: number;
  readonly stopLoss: number | null;
  /** Every line at its low end, and every line at its high end: wider than the true span of the sum. */
  readonly lowest: number | null;
  readonly highest: number | null;
  readonly baseLoss: number | null;
  readonly shortageLoss: number | null;
  readonly stopsPerYear: number;
}

/** Adds up the lines as they are shown. */
export function sumLines(lines: readonly RankedLine[]): LineTotals {
  const costed = lines.filter((line) => line.stopLoss !== null);
  const over = (value: (line: RankedLine) => number | null) =>
    costed.length === 0 ? null : costed.reduce((sum, line) => sum + (value(line) ?? 0), 0);
  return {
    lines: lines.length,
    costed: costed.length,
    stopLoss: over((line) => line.stopLoss?.mean ?? null),
    lowest: over((line) => line.stopLoss?.low ?? null),
    highest: over((line) => line.stopLoss?.high ?? null),
    baseLoss: over((line) => line.baseLoss),
    shortageLoss: over((line) => line.shortageLoss),
    stopsPerYear: lines.reduce((sum, line) => sum + line.stopsPerYear, 0),
  };
}
