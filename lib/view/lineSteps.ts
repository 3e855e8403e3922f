import type { ArithmeticStep, Figure } from "@/lib/view/lineArithmeticStep";
import { plainNumber, significant } from "@/lib/view/number";

/** A step of the arithmetic as text, in the parts the screen sets apart. */
export interface WrittenStep {
  readonly label: string;
  readonly formula: string;
  readonly value: string;
  readonly unit: string;
  readonly note: string | null;
}

const DIGITS = 4;

/** Writes a figure to four digits, a count in full; the calculation itself uses all digits. */
function written({ value }: Figure): string {
  if (Number.isInteger(value)) return plainNumber(value);
  return significant(value, DIGITS)
    .replace(/(\.\d*?)0+$/, "$1")
    .replace(/\.$/, "");
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
