import type { RateResult } from "@/lib/risk/evaluation";
import { plainNumber, significant } from "@/lib/view/number";

/** One step of an opened calculation, ready to show. */
export interface RateStep {
  readonly label: string;
  readonly formula?: string;
  readonly value: string;
  readonly unit?: string;
}

const PER_UNIT_YEAR = "per unit-year";

/**
 * Opens a rate: what it borrows from its family, what was counted, and the sum.
 *
 * rate = (borrowed rate * weight + events) / (weight + unit-years); every shown line follows from those above it.
 */
export function rateSteps(rate: RateResult, events: string): RateStep[] {
  const weight = plainNumber(rate.priorUnitYears, 1);
  const borrowed = significant(rate.priorMean, 4);
  return [
    { label: "Rate borrowed from the family", value: borrowed, unit: PER_UNIT_YEAR },
    { label: "Its weight", value: weight, unit: "unit-years" },
    { label: `${events} counted, five years`, value: plainNumber(rate.events) },
    { label: "Time in service, five years", value: plainNumber(rate.unitYears, 1), unit: "unit-years" },
    {
      label: "Events, borrowed and counted",
      formula: `${borrowed} × ${weight} + ${plainNumber(rate.events)}`,
      value: significant(rate.a, 4),
    },
    {
      label: "Unit-years, borrowed and counted",
      formula: `${weight} + ${plainNumber(rate.unitYears, 1)}`,
      value: plainNumber(rate.b, 1),
      unit: "unit-years",
    },
    {
      label: "Rate",
      formula: `${significant(rate.a, 4)} ÷ ${plainNumber(rate.b, 1)}`,
      value: significant(rate.mean, 3),
      unit: PER_UNIT_YEAR,
    },
  ];
}

/** A rate with its range: `0.041 (0.033 to 0.050) per unit-year`. */
export function rateText({ mean, low, high }: RateResult): string {
  return `${significant(mean, 2)} (${significant(low, 2)} to ${significant(high, 2)}) ${PER_UNIT_YEAR}`;
}

/** What was counted: `112 in 2 650 unit-years`. */
export function countedText({ events, unitYears }: RateResult): string {
  return `${plainNumber(events)} in ${plainNumber(unitYears)} unit-years`;
}
