import { kendallTauB } from "@/lib/risk/rankAgreement";
import type { RankedLine } from "@/lib/view/lineRanking";

/** How far money and score agree on the order of lines. */
export interface LineAgreement {
  /** Kendall's tau-b, in [-1, 1]; null when it is not defined. */
  readonly tau: number | null;
  /** Lines with both figures. */
  readonly lines: number;
  readonly sentence: string;
}

/** Compares the orders by money and by score over the lines that have both. */
export function lineAgreement(lines: readonly RankedLine[]): LineAgreement {
  const both = lines.flatMap(({ stopLoss, score }) =>
    stopLoss === null ? [] : [{ loss: stopLoss.mean, score }],
  );
  const losses = both.map((line) => line.loss);
  const scores = both.map((line) => line.score);
  if (new Set(losses).size < 2 || new Set(scores).size < 2)
    return {
      tau: null,
      lines: both.length,
      sentence:
        "Two lines with different losses and scores are needed before the two orders can be compared.",
    };
  const tau = kendallTauB(losses, scores);
  return { tau, lines: both.length, sentence: sentenceOf(tau) };
}

function sentenceOf(tau: number): string {
  const same = Math.round(50 * (1 + tau));
  return `Money and score ${strengthOf(tau)}: of 100 pairs of these lines, about ${same} stand in the same order in both.`;
}

function strengthOf(tau: number): string {
  if (tau >= 0.8) return "put the lines in nearly the same order";
  if (tau >= 0.5) return "mostly agree";
  if (tau >= 0.2) return "agree in part";
  return tau > -0.2 ? "hardly agree" : "disagree";
}
