import { consumptionRate } from "@/lib/reliability/rate";
import type { RateResult, Span } from "@/lib/risk/evaluation";
import { NBSP, plainNumber, significant } from "@/lib/view/number";

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

/** A share that comes back as the part's record says; none is recorded where nobody repairs it. */
export interface Returned {
  readonly share: number;
  readonly assumed: boolean;
}

/** Share of removed units that come back usable: the repair yield on record, else taken as none, as the cover does. */
export function returnedShare(repairYield: number | null): Returned {
  return { share: repairYield ?? 0, assumed: repairYield === null };
}

/** Opens the consumption: removals that do not come back usable. */
export function consumptionSteps(removal: RateResult, { share, assumed }: Returned): RateStep[] {
  const { mean } = consumptionRate(removal, share);
  return [
    { label: "Removal rate", value: significant(removal.mean, 3), unit: PER_UNIT_YEAR },
    {
      label: assumed
        ? "Share that comes back usable, none on record"
        : "Share that comes back usable, on record",
      value: significant(share, 2),
    },
    {
      label: "Consumption rate",
      formula: `${significant(removal.mean, 3)} × (1 − ${significant(share, 2)})`,
      value: significant(mean, 3),
      unit: PER_UNIT_YEAR,
    },
  ];
}

/** How far a rate rests on its own records: `own records carry 92 % of the weight`. */
export function weightText({ unitYears, priorMean, priorUnitYears, b }: RateResult): string {
  const own = `${plainNumber((100 * unitYears) / b)}${NBSP}%`;
  return `Own records carry ${own} of the weight; the rest is ${significant(priorMean, 2)} borrowed from the family, worth ${plainNumber(priorUnitYears)} unit-years.`;
}

/** A rate with its range: `0.041 (0.033 to 0.050) per unit-year`. */
export function rateText({ mean, low, high }: Span): string {
  return `${significant(mean, 2)} (${significant(low, 2)} to ${significant(high, 2)}) ${PER_UNIT_YEAR}`;
}

/** What was counted: `112 in 2 650 unit-years`. */
export function countedText({ events, unitYears }: RateResult): string {
  return `${plainNumber(events)} in ${plainNumber(unitYears)} unit-years`;
}
