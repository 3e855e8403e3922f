import { fromDayNumber, fullYear, mondayOfWeek, toIsoDate } from "@/lib/intake/calendar";
import { monthOfName } from "@/lib/intake/monthNames";
import { infer, plainText, type RawCell, type Reading, read, refuse } from "@/lib/intake/reading";
import { addDays, type IsoDate } from "@/lib/kernel/isoDate";

/** Which of 03/04/2026 is the day. Dates that begin with the year or use dots tell it themselves. */
export type DateOrder = "dayFirst" | "monthFirst";

export type DatePrecision = "day" | "week" | "month" | "quarter" | "year";

/** The first day of what was written, and how much was written. */
export type WrittenDate = { on: IsoDate; precision: DatePrecision };

/** A local time "YYYY-MM-DDTHH:MM" without a zone, and how much was written. */
export type WrittenTime = { at: string; precision: DatePrecision | "minute" };

type Draft = { on: IsoDate | null; precision: DatePrecision };
type Shape = { pattern: RegExp; draft: (parts: readonly string[], order: DateOrder) => Draft };

function day(year: string, month: string | number, dayOfMonth: string): Draft {
  return { on: toIsoDate(fullYear(year), Number(month), Number(dayOfMonth)), precision: "day" };
}

function month(year: string, monthOfYear: string | number): Draft {
  return { on: toIsoDate(fullYear(year), Number(monthOfYear), 1), precision: "month" };
}

function week(year: string, weekOfYear: string): Draft {
  return { on: mondayOfWeek(fullYear(year), Number(weekOfYear)), precision: "week" };
}

function quarter(year: string, quarterOfYear: string): Draft {
  return { on: toIsoDate(fullYear(year), Number(quarterOfYear) * 3 - 2, 1), precision: "quarter" };
}

const NAME = "(\\p{L}{3,})\\.?";
const YEAR = "(\\d{4}|\\d{2})";
/** Words for week and quarter in the seven languages of the files. */
const WEEK =
  "(?:kw|cw|wk|week|woche|kalenderwoche|w|v|vecka|tydz|tydzień|tyg|sem|semana|semaine|settimana|sett|uge)";
const QUARTER = "(?:quarter|quartal|kwartał|kvartal|trimestre|trim|qtr|q|k|t)";
const PART_OF_YEAR = "\\.? ?(\\d{1,2})";
const OF_YEAR = " ?[/.-]? ?(?:de |du |del )?";

const SHAPES: readonly Shape[] = [
  { pattern: /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/, draft: ([y = "", m = "", d = ""]) => day(y, m, d) },
  { pattern: /^((?:19|20)\d{2})(\d{2})(\d{2})$/, draft: ([y = "", m = "", d = ""]) => day(y, m, d) },
  { pattern: /^(\d{1,2})\. ?(\d{1,2})\. ?(\d{4}|\d{2})$/, draft: ([d = "", m = "", y = ""]) => day(y, m, d) },
  {
    pattern: /^(\d{1,2})[/-](\d{1,2})[/-](\d{4}|\d{2})$/,
    draft: ([a = "", b = "", y = ""], order) => (order === "dayFirst" ? day(y, b, a) : day(y, a, b)),
  },
  {
    pattern: new RegExp(`^${WEEK}${PART_OF_YEAR}${OF_YEAR}${YEAR}$`, "iu"),
    draft: ([w = "", y = ""]) => week(y, w),
  },
  {
    pattern: new RegExp(`^${QUARTER}\\.? ?([1-4])${OF_YEAR}${YEAR}$`, "iu"),
    draft: ([q = "", y = ""]) => quarter(y, q),
  },
  {
    pattern: new RegExp(`^([1-4]) ?(?:\\.|º|er|e|ème|nd|rd|th|st|o)? ?${QUARTER}${OF_YEAR}${YEAR}$`, "iu"),
    draft: ([q = "", y = ""]) => quarter(y, q),
  },
  {
    pattern: new RegExp(`^(\\d{1,2})\\.?[ -]?(?:de )?${NAME},?[ -]?(?:de )?${YEAR}$`, "u"),
    draft: ([d = "", m = "", y = ""]) => day(y, monthOfName(m) ?? 0, d),
  },
  {
    pattern: new RegExp(`^${NAME} (\\d{1,2}),? (\\d{4})$`, "u"),
    draft: ([m = "", d = "", y = ""]) => day(y, monthOfName(m) ?? 0, d),
  },
  { pattern: /^(\d{4})[ -]?(?:kw|cw|wk|w|v)(\d{1,2})$/i, draft: ([y = "", w = ""]) => week(y, w) },
  { pattern: /^(\d{4})[ /-]?[qk]([1-4])$/i, draft: ([y = "", q = ""]) => quarter(y, q) },
  { pattern: /^(\d{1,2})[/.-](\d{4})$/, draft: ([m = "", y = ""]) => month(y, m) },
  { pattern: /^(\d{4})[-/.](\d{1,2})$/, draft: ([y = "", m = ""]) => month(y, m) },
  {
    pattern: new RegExp(`^${NAME}[ -]?(?:de )?(\\d{4})$`, "u"),
    draft: ([m = "", y = ""]) => month(y, monthOfName(m) ?? 0),
  },
  { pattern: /^(\d{4})$/, draft: ([y = ""]) => ({ on: toIsoDate(Number(y), 1, 1), precision: "year" }) },
];

const REMEDY = "Write the date as year-month-day, such as 2026-04-03";

function readDayNumber(value: number): Reading<WrittenDate> {
  const on = fromDayNumber(value);
  if (on === null) return refuse("This is not a date", REMEDY);
  return infer(
    { on, precision: "day" },
    {
      problem: `Read as a spreadsheet's day number: ${on}`,
      remedy: "Format the column as a date in the file",
    },
  );
}

function finish(draft: Draft): Reading<WrittenDate> {
  if (draft.on === null) {
    return refuse(
      "There is no such day, or not in this order of day and month",
      `${REMEDY}, or change the order`,
    );
  }
  const written: WrittenDate = { on: draft.on, precision: draft.precision };
  if (draft.precision === "day") return read(written);
  return infer(written, {
    problem: `Only the ${draft.precision} is given; its first day, ${draft.on}, is used`,
    remedy: "Enter the day when it is known",
  });
}

/**
 * Reads a date in any of the shapes registers use. What names only a week, month, quarter or year gives its
 * first day and keeps the precision.
 */
export function readDate(cell: RawCell, order: DateOrder): Reading<WrittenDate> {
  // A workbook's date cell without a time of day comes with midnight.
  const text = plainText(cell).replace(/^(\d{4}-\d{2}-\d{2})[T ]00:00(?::00(?:\.0+)?)?$/, "$1");
  for (const { pattern, draft } of SHAPES) {
    const match = pattern.exec(text);
    if (match) return finish(draft(match.slice(1), order));
  }
  if (/^\d{5}(?:\.\d+)?$/.test(text)) return readDayNumber(Number(text));
  return refuse("This is not a date", REMEDY);
}

const CLOCK = /^(.+?)(?:T|,? )(\d{1,2})[:.](\d{2})(?:[:.]\d{2}(?:[.,]\d+)?)?(?: ?(am|pm|a\.m\.|p\.m\.))?$/i;

function hourOf(hour: number, half: string | undefined): number | null {
  if (half === undefined) return hour <= 24 ? hour : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half.toLowerCase().startsWith("p") ? 12 : 0);
}

function joinTime(on: IsoDate, hour: number | null, minute: number): string | null {
  if (hour === null || minute > 59 || (hour === 24 && minute > 0)) return null;
  const date = hour === 24 ? addDays(on, 1) : on;
  return date && `${date}T${String(hour % 24).padStart(2, "0")}:${String(minute).padStart(2, "0")}`;
}

function readDayFraction(value: number): Reading<WrittenTime> {
  const minutes = Math.round((value - Math.floor(value)) * 1440);
  const on = fromDayNumber(Math.floor(value) + (minutes === 1440 ? 1 : 0));
  const at = on && joinTime(on, Math.floor((minutes % 1440) / 60), minutes % 60);
  if (!at) return refuse("This is not a date", REMEDY);
  return infer(
    { at, precision: "minute" },
    {
      problem: `Read as a spreadsheet's day number: ${at.replace("T", " ")}`,
      remedy: "Format the column as a date in the file",
    },
  );
}

/**
 * Reads a local time of the site. A date without a time of day is midnight with precision "day"; a time with
 * a zone is refused, since it would not be the site's own clock.
 */
export function readDateTime(cell: RawCell, order: DateOrder): Reading<WrittenTime> {
  const text = plainText(cell);
  if (/^\d{5}\.\d+$/.test(text)) return readDayFraction(Number(text));
  if (/\d(?::\d{2}){1,2}(?:\.\d+)?\s?(?:Z|[+-]\d{2}:?\d{2})$/.test(text)) {
    return refuse("The time carries a zone", "Give the time on the site's own clock, without a zone");
  }
  const clock = CLOCK.exec(text);
  const reading = readDate(clock?.[1] ?? cell, order);
  if (reading.state !== "value") return reading;
  const { on, precision } = reading.value;
  if (!clock) {
    return infer(
      { at: `${on}T00:00`, precision },
      reading.caution ?? {
        problem: "No time of day is given; midnight is used",
        remedy: "Enter the time when it is known",
      },
    );
  }
  const at = joinTime(on, hourOf(Number(clock[2]), clock[4]), Number(clock[3]));
  if (at === null) return refuse("There is no such time of day", "Write the time as 14:20");
  return { ...reading, value: { at, precision: precision === "day" ? "minute" : precision } };
}
