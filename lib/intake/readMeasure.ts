import type { Field } from "@/lib/intake/field";
import { type DecimalMark, type MarkedNumber, readMarkedNumber } from "@/lib/intake/readDecimal";
import { infer, plainText, type RawCell, type Reading, read, refuse } from "@/lib/intake/reading";
import { unitFactor } from "@/lib/intake/units";
import { isCurrency } from "@/lib/kernel/currency";

const CURRENCY_SIGN = /^(?:€|\$|£|zł|kr|kč|fr\.?|us\$|mx\$)$/i;

function isMoney(field: Field): boolean {
  return field.unit?.includes("currency") ?? false;
}

/** How a number that carries no unit of its own is to be taken: the unit its column's header gives. */
interface Written {
  readonly cell: RawCell;
  readonly headerUnit: string | null;
}

function convert(found: MarkedNumber, field: Field, { cell, headerUnit }: Written): Reading<number> {
  const unit = found.mark === "" ? headerUnit : found.mark;
  if (unit === null) return read(found.value);
  if (isMoney(field) && (CURRENCY_SIGN.test(unit) || isCurrency(unit.toUpperCase()))) {
    return infer(found.value, {
      problem: `“${unit}” stands beside the amount and was left out`,
      remedy: "Check that it is the currency the row is kept in",
    });
  }
  const factor = unitFactor(unit, field.unit);
  if (factor === 1) return read(found.value);
  if (factor === null) {
    return refuse(
      `“${unit}” stands beside the number and is no unit of this column`,
      field.unit === null ? "Give the number alone" : `Give the number in ${field.unit}`,
    );
  }
  // Nine digits are more than any of these files holds, and keep 0.1 × 60 from reading as 6.000000000000001.
  return tellConversion(Number((found.value * factor).toPrecision(9)), field, { cell, headerUnit: unit });
}

function tellConversion(value: number, field: Field, { cell, headerUnit }: Written): Reading<number> {
  const text = plainText(cell);
  const unit = headerUnit ?? "";
  const written = text.toLowerCase().includes(unit.toLowerCase()) ? text : `${text} ${unit}`;
  return infer(value, {
    problem: `“${written.trim()}” was converted to ${value} ${field.unit ?? ""}`,
    remedy: "Check the unit in the file",
  });
}

const CLOCK = /^(\d{1,4})\s?(?::|h|std\.?|godz\.?|tim\.?)\s?(\d{1,2})(?::\d{2})?\s?(?:h|m|min\.?)?$/i;

/** A stop written as hours and minutes, "1:30" or "1 h 30 min"; null when it is written otherwise. */
function readClock(cell: RawCell, field: Field): Reading<number> | null {
  const match = field.unit === "h" ? CLOCK.exec(plainText(cell)) : null;
  if (!match || Number(match[2]) > 59) return null;
  const hours = Number((Number(match[1]) + Number(match[2]) / 60).toPrecision(9));
  return tellConversion(hours, field, { cell, headerUnit: null });
}

function checkLimits(reading: Reading<number>, field: Field): Reading<number> {
  if (reading.state !== "value") return reading;
  if (field.min !== null && reading.value < field.min) {
    return refuse(
      `Below the smallest value that can be, ${field.min}`,
      "Correct the cell, or leave it empty",
    );
  }
  if (field.max !== null && reading.value > field.max) {
    return refuse(`Above the largest value that can be, ${field.max}`, "Correct the cell, or leave it empty");
  }
  if (isMoney(field) && reading.value === 0) {
    return {
      ...reading,
      caution: { problem: "The amount is zero", remedy: "Leave the cell empty when the amount is not known" },
    };
  }
  return reading;
}

/** How the numbers of one column are written. */
export interface NumberCustoms {
  readonly decimalMark: DecimalMark;
  /** The unit the header gives for bare numbers, where it is not the field's own; null else. */
  readonly headerUnit?: string | null;
}

/**
 * Reads a number in the field's unit, converting units it knows and quoting what was written; limits of the field
 * are checked.
 */
export function readMeasure(
  cell: RawCell,
  field: Field,
  { decimalMark, headerUnit = null }: NumberCustoms,
): Reading<number> {
  const clock = readClock(cell, field);
  if (clock !== null) return checkLimits(clock, field);
  const found = readMarkedNumber(cell, decimalMark);
  if (found.state !== "value") return found;
  return checkLimits(convert(found.value, field, { cell, headerUnit }), field);
}

/** As readMeasure, and the number must be whole. */
export function readInteger(cell: RawCell, field: Field, customs: NumberCustoms): Reading<number> {
  const reading = readMeasure(cell, field, customs);
  if (reading.state !== "value" || Number.isSafeInteger(reading.value)) return reading;
  return refuse("The number is not whole", "Enter a whole number");
}

/**
 * Reads a share in percent, 0 to 100. A bare number up to 1 is taken as a share of one, as spreadsheets
 * keep percent cells, and is said so.
 */
export function readPercent(cell: RawCell, field: Field, mark: DecimalMark): Reading<number> {
  const found = readMarkedNumber(cell, mark);
  if (found.state !== "value") return found;
  const { value, mark: sign } = found.value;
  if (sign !== "" && sign !== "%")
    return refuse(`“${sign}” stands beside the number`, "Give the share in percent");
  if (sign === "" && value > 0 && value <= 1) {
    // Twelve digits are kept so that 0.07 × 100 does not read as 7.000000000000001.
    const percent = Number((value * 100).toPrecision(12));
    return infer(percent, {
      problem: `Read as ${percent} %, since it is not above 1`,
      remedy: "Write shares in percent, such as 60 or 60 %",
    });
  }
  return checkLimits(read(value), field);
}
