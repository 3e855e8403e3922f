import type { Field } from "@/lib/intake/field";
import { readBoolean, readChoice } from "@/lib/intake/readChoice";
import type { DateOrder, DatePrecision } from "@/lib/intake/readDate";
import { readDate, readDateTime } from "@/lib/intake/readDate";
import type { DecimalMark } from "@/lib/intake/readDecimal";
import { readEmpty } from "@/lib/intake/readEmpty";
import { type Firmware, readFirmware } from "@/lib/intake/readFirmware";
import { infer, plainText, type RawCell, type Reading, read, refuse } from "@/lib/intake/reading";
import { readInteger, readMeasure, readPercent } from "@/lib/intake/readMeasure";
import { type PartNumber, readPartNumber } from "@/lib/intake/readPartNumber";
import { type QuantityBasis, readQuantity } from "@/lib/intake/readQuantity";

/**
 * What a field holds: text for text, code and choice; a number for integer, decimal, percent, quantity and
 * year; "YYYY-MM-DD" for date; "YYYY-MM-DDTHH:MM" on the site's own clock for dateTime and endTime, the latter also "THH:MM". null is not known.
 */
export type FieldValue = string | number | boolean | PartNumber | Firmware | null;

/** How one column is written. */
export type Customs = {
  decimalMark: DecimalMark;
  dateOrder: DateOrder;
  /** The unit its header gives, where it is another than the field's. */
  headerUnit?: string | null;
  /** What its quantities count; pieces unless said otherwise. */
  quantity?: QuantityBasis;
  /** The source's own words for nothing; those commonly used unless given. */
  nullWords?: readonly string[];
};

/** A reading with how much of a date was written; null for what is no date. */
export type CellReading = { reading: Reading<FieldValue>; precision: DatePrecision | "minute" | null };

const LONGEST_TEXT = 4000;

function readText(cell: RawCell): Reading<string> {
  const text = plainText(cell);
  return text.length <= LONGEST_TEXT
    ? read(text)
    : refuse(`Longer than ${LONGEST_TEXT} letters`, "Shorten the text");
}

function readCode(cell: RawCell): Reading<string> {
  const text = plainText(cell);
  if (/^\d(?:[.,]\d+)?e\+\d+$/i.test(text)) {
    return refuse(
      "A spreadsheet turned the number into scientific notation; digits were lost",
      "Format the column as text in the file, enter the number again and load the file again",
    );
  }
  return text.length <= 120 ? read(text) : refuse("Longer than 120 letters", "Enter the short code");
}

function readYear(cell: RawCell): Reading<number> {
  const text = plainText(cell);
  const year = /^(?:19[5-9]\d|20\d{2})(?:\.0+)?$/.test(text) ? Number(text) : null;
  if (year !== null) return read(year);
  const date = readDate(cell, "dayFirst");
  if (date.state === "value" && !/^\d+(?:\.\d+)?$/.test(text)) {
    // The year of a full date is the same in either order of day and month.
    return infer(Number(date.value.on.slice(0, 4)), null);
  }
  return refuse("This is not a year between 1950 and 2099", "Enter the year with four digits");
}

function readDated(cell: RawCell, order: DateOrder): CellReading {
  const reading = readDate(cell, order);
  if (reading.state !== "value") return { reading, precision: null };
  return { reading: { ...reading, value: reading.value.on }, precision: reading.value.precision };
}

function readTimed(cell: RawCell, order: DateOrder): CellReading {
  const reading = readDateTime(cell, order);
  if (reading.state !== "value") return { reading, precision: null };
  return { reading: { ...reading, value: reading.value.at }, precision: reading.value.precision };
}

/** The end of a stop: a time like its start, or a time of day alone, kept as "THH:MM". */
function readEnd(cell: RawCell, order: DateOrder): CellReading {
  const clock = /^([01]?\d|2[0-3])[:.]([0-5]\d)(?::[0-5]\d)?$/.exec(plainText(cell));
  if (!clock) return readTimed(cell, order);
  return { reading: read(`T${clock[1]?.padStart(2, "0")}:${clock[2]}`), precision: "minute" };
}

type CellReader = (cell: RawCell, field: Field, customs: Customs) => Reading<FieldValue>;

const READERS: Readonly<Record<Exclude<Field["kind"], "date" | "dateTime" | "endTime">, CellReader>> = {
  text: readText,
  code: readCode,
  integer: (cell, field, customs) => readInteger(cell, field, customs),
  decimal: (cell, field, customs) => readMeasure(cell, field, customs),
  percent: (cell, field, customs) => readPercent(cell, field, customs.decimalMark),
  choice: (cell, field) => readChoice(cell, field.choices),
  boolean: readBoolean,
  partNumber: readPartNumber,
  firmware: readFirmware,
  quantity: (cell, _field, customs) => readQuantity(cell, customs.decimalMark, customs.quantity),
  year: readYear,
};

/** Reads one cell as its field says, after finding whether there is anything in it. Never throws. */
export function readCell(cell: RawCell, field: Field, customs: Customs): CellReading {
  const empty = readEmpty(cell, field.kind, customs.nullWords);
  if (empty !== null) return { reading: empty, precision: null };
  if (field.kind === "date") return readDated(cell, customs.dateOrder);
  if (field.kind === "dateTime") return readTimed(cell, customs.dateOrder);
  if (field.kind === "endTime") return readEnd(cell, customs.dateOrder);
  return { reading: READERS[field.kind](cell, field, customs), precision: null };
}
