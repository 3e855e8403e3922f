import { z } from "zod";
import { SUPPLY_STAGES } from "@/lib/lifecycle/supplyStage";
import type { RankedLine } from "@/lib/view/lineRanking";

const first = (value: unknown) => (Array.isArray(value) ? value[0] : value);

/** What the address says about the ranking; anything it cannot mean is left out. */
export const lineQuery = z.object({
  by: z.preprocess(first, z.enum(["loss", "score"]).catch("loss")),
  site: z.preprocess(first, z.string().max(20).catch("")),
  stage: z.preprocess(first, z.enum(["", ...SUPPLY_STAGES]).catch("")),
  q: z.preprocess(first, z.string().trim().max(100).catch("")),
});

export type LineQuery = z.output<typeof lineQuery>;

/** The lines that match all the filters. */
export function filterLines(lines: readonly RankedLine[], query: LineQuery): RankedLine[] {
  const wanted = query.q.toLocaleLowerCase("en");
  return lines.filter(
    (line) =>
      (query.site === "" || line.siteCode === query.site) &&
      (query.stage === "" || line.worstStage === query.stage) &&
      (wanted === "" || textOf(line).includes(wanted)),
  );
}

function textOf(line: RankedLine): string {
  const controllers = line.controllers.map((one) => one.model);
  const part = line.depletionPart?.label ?? "";
  return [line.code, line.name, line.siteCode, line.siteName, part, ...controllers]
    .join("\n")
    .toLocaleLowerCase("en");
}

/** The lines with the leading rank first; lines without one come last, by code. */
export function orderLines(lines: readonly RankedLine[], by: LineQuery["by"]): RankedLine[] {
  const place = (line: RankedLine) => (by === "loss" ? line.rankByLoss : line.rankByScore) ?? Infinity;
  return [...lines].sort((a, b) => {
    const [one, other] = [place(a), place(b)];
    return one === other ? (a.code < b.code ? -1 : 1) : one - other;
  });
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
