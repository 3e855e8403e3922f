import type { Field } from "@/lib/intake/field";
import { type DecimalMark, type MarkedNumber, readMarkedNumber } from "@/lib/intake/readDecimal";
import { infer, type RawCell, type Reading, read, refuse } from "@/lib/intake/reading";

const CURRENCY_MARK = /^(?:€|\$|£|zł|kr|eur|usd|gbp|pln|sek|mxn|chf|czk|dkk|nok|us\$|mx\$)$/i;

type UnitTable = { readonly [unit: string]: number };
const HOUR_UNITS: UnitTable = {
  h: 1,
  hr: 1,
  hrs: 1,
  hour: 1,
  hours: 1,
  std: 1,
  godz: 1,
  tim: 1,
  min: 1 / 60,
  mins: 1 / 60,
  minutes: 1 / 60,
  d: 24,
  day: 24,
  days: 24,
  tage: 24,
  dni: 24,
  dagar: 24,
  días: 24,
};
const WEEK_UNITS: UnitTable = {
  wk: 1,
  wks: 1,
  w: 1,
  week: 1,
  weeks: 1,
  wo: 1,
  wochen: 1,
  tyg: 1,
  v: 1,
  veckor: 1,
  sem: 1,
  semanas: 1,
  d: 1 / 7,
  days: 1 / 7,
  tage: 1 / 7,
  dni: 1 / 7,
};
const DAY_UNITS: UnitTable = {
  d: 1,
  day: 1,
  days: 1,
  tage: 1,
  dni: 1,
  dagar: 1,
  días: 1,
  wk: 7,
  week: 7,
  weeks: 7,
  wochen: 7,
};

const METRE_UNITS: UnitTable = { m: 1, cm: 0.01, mm: 0.001, ft: 0.3048 };
/** Horsepower: mechanical, and metric as PS and KM. */
const KILOWATT_UNITS: UnitTable = { kw: 1, w: 0.001, hp: 0.7457, ps: 0.735_5, km: 0.735_5 };
const UNITS: Readonly<Record<string, UnitTable>> = {
  h: HOUR_UNITS,
  weeks: WEEK_UNITS,
  days: DAY_UNITS,
  m: METRE_UNITS,
  kW: KILOWATT_UNITS,
};

function factorOf(mark: string, unit: string | null): number | null {
  const word = mark.toLowerCase().replace(/\.$/, "");
  const table = UNITS[unit ?? ""] ?? {};
  return Object.hasOwn(table, word) ? (table[word] ?? null) : null;
}

function isMoney(field: Field): boolean {
  return field.unit?.includes("currency") ?? false;
}

function convert(found: MarkedNumber, field: Field): Reading<number> {
  if (found.mark === "") return read(found.value);
  if (isMoney(field) && CURRENCY_MARK.test(found.mark)) {
    return infer(found.value, {
      problem: `“${found.mark}” stands beside the amount and was left out`,
      remedy: "Check that it is the currency the row is kept in",
    });
  }
  const factor = factorOf(found.mark, field.unit);
  if (factor === 1) return read(found.value);
  if (factor !== null) {
    return infer(found.value * factor, {
      problem: `Converted from “${found.mark}” to ${field.unit ?? ""}`,
      remedy: "Check the unit in the file",
    });
  }
  return refuse(
    `“${found.mark}” stands beside the number and is no unit of this column`,
    field.unit === null ? "Give the number alone" : `Give the number in ${field.unit}`,
  );
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

/** Reads a number in the field's unit, converting units it knows; limits of the field are checked. */
export function readMeasure(cell: RawCell, field: Field, mark: DecimalMark): Reading<number> {
  const found = readMarkedNumber(cell, mark);
  if (found.state !== "value") return found;
  return checkLimits(convert(found.value, field), field);
}

/** As readMeasure, and the number must be whole. */
export function readInteger(cell: RawCell, field: Field, mark: DecimalMark): Reading<number> {
  const reading = readMeasure(cell, field, mark);
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
