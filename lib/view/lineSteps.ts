import type { ArithmeticStep, Figure } from "@/lib/view/lineArithmeticStep";
import { significant } from "@/lib/view/number";

/** A step of the arithmetic as text, in the parts the screen sets apart. */
export interface WrittenStep {
  readonly label: string;
  readonly formula: string;
  readonly value: string;
  readonly unit: string;
  readonly note: string | null;
}

const DIGITS = 4;

/** Writes a figure to four digits; the calculation itself uses all of them. */
function written({ value }: Figure): string {
  return significant(value, DIGITS);
}

/** Writes the steps with their numbers put in, each named where it stands. */
export function writeSteps(steps: readonly ArithmeticStep[]): WrittenStep[] {
  return steps.map(({ title, result, calculation, note }) => ({
    label: title,
    formula: calculation
      .map((part) => (typeof part === "string" ? part : `${written(part)} ${part.name}`))
      .join(" "),
    value: written(result),
    unit: result.unit,
    note,
  }));
}
