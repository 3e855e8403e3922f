import type { LossSpan } from "@/lib/risk/draws/linePlace";
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
  /** 5 % and 95 % points of the sum as drawn; else every line at its low end, and every line at its high end: wider. */
  readonly lowest: number | null;
  readonly highest: number | null;
  readonly isDrawn: boolean;
  readonly baseLoss: number | null;
  readonly shortageLoss: number | null;
  readonly stopsPerYear: number;
}

type Summed = Pick<RankedLine, "stopLoss" | "baseLoss" | "shortageLoss" | "stopsPerYear">;

/** Adds up the lines as they are shown; `drawn` is the span of exactly their sum, where there is one. */
export function sumLines(lines: readonly Summed[], drawn: LossSpan | null = null): LineTotals {
  const costed = lines.filter((line) => line.stopLoss !== null);
  const over = (value: (line: Summed) => number | null) =>
    costed.length === 0 ? null : costed.reduce((sum, line) => sum + (value(line) ?? 0), 0);
  return {
    lines: lines.length,
    costed: costed.length,
    stopLoss: over((line) => line.stopLoss?.mean ?? null),
    lowest: drawn?.low ?? over((line) => line.stopLoss?.low ?? null),
    highest: drawn?.high ?? over((line) => line.stopLoss?.high ?? null),
    isDrawn: drawn !== null,
    baseLoss: over((line) => line.baseLoss),
    shortageLoss: over((line) => line.shortageLoss),
    stopsPerYear: lines.reduce((sum, line) => sum + line.stopsPerYear, 0),
  };
}
