import { readXml } from "@/lib/intake/workbook/readXml";

/** What the number of a cell stands for, by how the sheet shows it. */
export type CellFormat =
  | { readonly shows: "number" | "date" | "time" }
  /** A number shown with zeros before it, such as 00123. */
  | { readonly shows: "digits"; readonly width: number };

/** Days between the starts of the two ways a workbook counts days, 1900 and 1904. */
const DAYS_TO_1904 = 1462;
const START_1900 = Date.UTC(1899, 11, 30);
const DAY_MS = 86_400_000;
/** 29 February 1900, a day that never was; earlier numbers count one day less. */
const NO_DAY = 60;
const AFTER_9999 = 2_958_466;

const NUMBER: CellFormat = { shows: "number" };
const DATE: CellFormat = { shows: "date" };
const TIME: CellFormat = { shows: "time" };

const within = (id: number, ...ranges: readonly [number, number][]) =>
  ranges.some(([from, to]) => id >= from && id <= to);

/** Formats a workbook does not spell out, by number (ISO/IEC 29500-1, 18.8.30 numFmt; from memory). */
function builtIn(id: number): CellFormat {
  if (within(id, [14, 17], [22, 22], [27, 31], [34, 36], [50, 54], [57, 58])) return DATE;
  return within(id, [18, 21], [32, 33], [45, 47], [55, 56]) ? TIME : NUMBER;
}

/** What a format code shows: letters outside quotes, escapes and brackets tell dates and times. */
export function formatOf(code: string): CellFormat {
  const bare = (code.split(";")[0] ?? "")
    .replace(/"[^"]*"|\\.|_.|\*./g, "")
    .replace(/\[(h+|m+|s+)\]/gi, "$1")
    .replace(/\[[^\]]*\]|am\/pm|a\/p|general/gi, "");
  if (/^0{2,}$/.test(bare)) return { shows: "digits", width: bare.length };
  if (/[yd]/i.test(bare) || (/m/i.test(bare) && !/[hs]/i.test(bare))) return DATE;
  return /[hs]/i.test(bare) ? TIME : NUMBER;
}

/** The format of each cell style by its number, from the styles part. */
export function readCellFormats(pieces: Iterable<Uint8Array>): CellFormat[] {
  const codes = new Map<number, string>();
  const formats: CellFormat[] = [];
  let inCells = false;
  readXml(pieces, {
    open: (name, attribute) => {
      if (name === "cellXfs") inCells = true;
      if (name === "numFmt") codes.set(Number(attribute("numFmtId")), attribute("formatCode") ?? "");
      if (name !== "xf" || !inCells) return;
      const id = Number(attribute("numFmtId") ?? 0);
      const code = codes.get(id);
      formats.push(code === undefined ? builtIn(id) : formatOf(code));
    },
    close: (name) => {
      if (name === "cellXfs") inCells = false;
    },
  });
  return formats;
}

function asMoment(serial: number, from1904: boolean): string | null {
  const days = from1904 ? serial + DAYS_TO_1904 : serial;
  if (days < 0 || days >= AFTER_9999) return null;
  const counted = days < NO_DAY && days >= 1 && !from1904 ? days + 1 : days;
  // A workbook keeps times as fractions of a day, which miss a minute's start by parts of a second.
  const moment = Math.round((counted * DAY_MS) / 1000) * 1000;
  return new Date(START_1900 + moment).toISOString().slice(0, 16);
}

function asHours(serial: number): string {
  const minutes = Math.round(serial * 1440);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;
}

/**
 * The number of a cell as the sheet shows it: a moment `YYYY-MM-DDTHH:MM`, hours `H:MM`, digits with their zeros,
 * else the number. What is no day stays the number.
 */
export function showNumber(value: number, format: CellFormat, from1904: boolean): string | number {
  if (format.shows === "date") return asMoment(value, from1904) ?? value;
  // A day and a time of day shown as a time only is still a moment.
  if (format.shows === "time")
    return value >= 0 && value < 366 ? asHours(value) : (asMoment(value, from1904) ?? value);
  if (format.shows === "digits" && Number.isSafeInteger(value) && value >= 0)
    return String(value).padStart(format.width, "0");
  return Number(value.toPrecision(15));
}
