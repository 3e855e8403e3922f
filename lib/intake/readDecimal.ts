import { plainText, type RawCell, type Reading, read, refuse } from "@/lib/intake/reading";

/** How a file writes a fraction: 1,5 or 1.5. The other mark, blanks and ' may group thousands. */
export type DecimalMark = "comma" | "point";

/** A number with whatever letters or signs stood before or after it, e.g. "3,5 h" → 3.5 and "h". */
export type MarkedNumber = { value: number; mark: string };

const SHAPES: Readonly<Record<DecimalMark, RegExp>> = {
  comma: /^(?:[1-9]\d{0,2}(?:\.\d{3})+|[1-9]\d{0,2}(?:[ '’]\d{3})+|\d+)(?:,\d+)?$|^,\d+$/,
  point: /^(?:[1-9]\d{0,2}(?:,\d{3})+|[1-9]\d{0,2}(?:[ '’]\d{3})+|\d+)(?:\.\d+)?$|^\.\d+$/,
};

const PARTS = /^([^\d.,+\-−]*?)\s*([+\-−]?)\s*([\d.,](?:[\d.,’' ]*[\d])?)\s*([-−]?)\s*([^\d]*)$/u;

/** The number's text in the machine's own form, or null when it does not follow the custom. */
function toPlainNumber(body: string, mark: DecimalMark): number | null {
  if (!SHAPES[mark].test(body)) return null;
  const grouped = body.replace(mark === "comma" ? /[.\s'’]/g : /[,\s'’]/g, "");
  const value = Number(mark === "comma" ? grouped.replace(",", ".") : grouped);
  return Number.isFinite(value) ? value : null;
}

function refuseCustom(body: string, mark: DecimalMark): Reading<never> {
  const other: DecimalMark = mark === "comma" ? "point" : "comma";
  if (toPlainNumber(body, other) === null) {
    return NOT_A_NUMBER;
  }
  return refuse(
    `The number is written with a decimal ${other}, the file is read with a decimal ${mark}`,
    "Choose the other decimal mark for this column, or correct the cell",
  );
}

const NOT_A_NUMBER = refuse(
  "This is not a number",
  "Enter digits with one decimal mark, such as 1234.5 or 1234,5",
);
const LONGEST_NUMBER = 60;

function readNumberText(text: string, mark: DecimalMark): Reading<MarkedNumber> {
  const parts = text.length > LONGEST_NUMBER ? null : PARTS.exec(text);
  if (!parts) return NOT_A_NUMBER;
  const [, before = "", sign = "", body = "", signAfter = "", after = ""] = parts;
  if (sign !== "" && signAfter !== "") return NOT_A_NUMBER;
  const value = toPlainNumber(body, mark);
  if (value === null) return refuseCustom(body, mark);
  const negative = /[-−]/.test(sign + signAfter) && value !== 0;
  return read({ value: negative ? -value : value, mark: (before + after).trim() });
}

/**
 * Reads a number with its unit or currency sign, by the file's own decimal mark.
 * A number cell of a workbook is taken as it is.
 */
export function readMarkedNumber(cell: RawCell, mark: DecimalMark): Reading<MarkedNumber> {
  if (typeof cell === "number") return Number.isFinite(cell) ? read({ value: cell, mark: "" }) : NOT_A_NUMBER;
  const text = plainText(cell);
  if (/^[+-]?\d+(?:[.,]\d+)?e[+-]?\d+$/i.test(text)) {
    return refuse(
      "The number is in scientific notation; digits may have been lost",
      "Format the column as a plain number in the file and load it again",
    );
  }
  return readNumberText(text, mark);
}

/** Reads a bare number by the file's own decimal mark; letters or signs beside it are refused. */
export function readDecimal(cell: RawCell, mark: DecimalMark): Reading<number> {
  const reading = readMarkedNumber(cell, mark);
  if (reading.state !== "value") return reading;
  if (reading.value.mark !== "") {
    return refuse(
      `“${reading.value.mark}” stands beside the number`,
      "Give the number alone, in the column's unit",
    );
  }
  return read(reading.value.value);
}
