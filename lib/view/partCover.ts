import { addMonths, type IsoDate } from "@/lib/kernel/isoDate";
import type { PartDossier, PartPool } from "@/lib/view/partDossier";
import type { SpanChart } from "@/lib/view/spanChart";
import { day, month } from "@/lib/view/time";

const PERCENT = 100;

/** The chance of an empty shelf month by month ahead, with its range and its depletion days. */
export function coverChart(pool: PartPool, asOf: IsoDate): SpanChart {
  const months = pool.noSpareByMonth.length - 1;
  const points = pool.noSpareByMonth.map(({ mean, low, high }, ahead) => ({
    label: month(addMonths(asOf, ahead)),
    band: [low * PERCENT, high * PERCENT] as const,
    values: { mean: mean * PERCENT },
  }));
  const inside = (date: IsoDate | null): date is IsoDate =>
    date !== null && date >= asOf && date <= addMonths(asOf, months);
  const marks = [
    { name: "P50", date: pool.depletionP50 },
    { name: "P80", date: pool.depletionP80 },
  ].flatMap(({ name, date }) => (inside(date) ? [{ at: month(monthOf(date, asOf)), label: name }] : []));
  return {
    title: "Chance that a failure finds the shelf empty",
    xLabel: "Month",
    unit: "%",
    bandName: "5 % to 95 % of the rate",
    lines: [{ key: "mean", name: "Chance", look: "main" }],
    points,
    domain: [0, PERCENT],
    ticks: [0, 20, 40, 60, 80, 100],
    marks: marks.length === 2 && marks[0]?.at === marks[1]?.at ? both(marks) : marks,
  };
}

/** Of what is this near to 1 a curve shows a straight line at the top. */
const CERTAIN = 0.999;

/** Whether a failure of any month computed is all but sure to find no spare, at the low end of its range too. */
export function isAlwaysEmpty({ noSpareByMonth }: PartPool): boolean {
  return noSpareByMonth.every(({ low }) => low > CERTAIN);
}

type Marks = SpanChart["marks"];

/** Two marks on one month would be written over each other. */
function both([one, other]: Marks): Marks {
  return one && other ? [{ at: one.at, label: `${one.label}, ${other.label}` }] : [];
}

/** The first point of the curve at or after a day. */
function monthOf(date: IsoDate, asOf: IsoDate): IsoDate {
  let ahead = 0;
  while (addMonths(asOf, ahead) < date) ahead += 1;
  return addMonths(asOf, ahead);
}

/** A depletion day in words. */
export function depletionText(date: IsoDate | null, { asOf, pool }: PartDossier): string {
  if (date !== null) return date <= asOf ? "empty now" : day(date);
  return pool === null ? "not computed" : `not within ${pool.noSpareByMonth.length - 1} months`;
}
