import type { Assumptions } from "@/lib/risk/assumptions";

/** A number in a calculation: what it is, and in which unit. */
export interface Figure {
  readonly name: string;
  readonly value: number;
  /** Empty for a plain number. */
  readonly unit: string;
}

/** One step from the records to the money; the calculation gives the result exactly. */
export interface ArithmeticStep {
  readonly title: string;
  readonly result: Figure;
  /** Figures and the signs between them; empty when the result is read or integrated, not multiplied out. */
  readonly calculation: readonly (Figure | string)[];
  readonly note: string | null;
}

/** What the arithmetic needs besides the driver. */
export interface ArithmeticTerms {
  /** EUR an hour; null is not known. */
  readonly costPerHour: number | null;
  readonly bufferHours: number | null;
  readonly unrecoveredShare: number;
  /** EUR by any stop at all; null is none known. */
  readonly fixedCost: number | null;
  /** EUR once a stop lasts longer than so many hours, the shortest first. */
  readonly costSteps: readonly { readonly afterHours: number; readonly cost: number }[];
  /** EUR a year on the whole line; null is not known. */
  readonly lineLoss: number | null;
  readonly lineScore: number;
  /** Those the figures were computed with. */
  readonly assumptions: Assumptions;
}

/** Names a number of a calculation. */
export const figure = (name: string, value: number, unit = ""): Figure => ({ name, value, unit });
