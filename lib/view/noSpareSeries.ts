import { addMonths, type IsoDate } from "@/lib/kernel/isoDate";
import type { PoolResult } from "@/lib/risk/evaluation";
import type { SpanChart } from "@/lib/view/spanChart";
import { month } from "@/lib/view/time";

const PERCENT = 100;

function inPercent(share: number): number {
  return Math.round(share * PERCENT * 10) / 10;
}

/** The first of a depletion day's month among the chart's labels, or nothing when it lies beyond them. */
function mark(on: IsoDate | null, label: string, labels: readonly string[]) {
  if (on === null) return [];
  const at = month(on);
  return labels.includes(at) ? [{ at, label }] : [];
}

/**
 * The chance that a failure finds the shelf empty, month by month, ready to draw.
 *
 * The scale always runs from 0 to 100 %, so that two parts compare by eye.
 *
 * @param asOf Day of the evaluation; month 0 is its month.
 */
export function noSpareSeries(
  pool: Pick<PoolResult, "noSpareByMonth" | "depletionP50" | "depletionP80">,
  asOf: IsoDate,
): SpanChart {
  const points = pool.noSpareByMonth.map(({ mean, low, high }, ahead) => ({
    label: month(addMonths(asOf, ahead)),
    band: [inPercent(low), inPercent(high)] as const,
    values: { mean: inPercent(mean) },
  }));
  const labels = points.map((point) => point.label);
  return {
    title: "Chance that a failure finds no usable spare",
    xLabel: "Month",
    unit: "% chance",
    bandName: "5 % to 95 %",
    lines: [{ key: "mean", name: "Expected", look: "main" }],
    points,
    domain: [0, PERCENT],
    ticks: [0, 20, 40, 60, 80, 100],
    marks: [...mark(pool.depletionP50, "1 in 2", labels), ...mark(pool.depletionP80, "4 in 5", labels)],
  };
}
