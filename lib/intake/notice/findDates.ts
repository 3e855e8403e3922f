import { countOf, DATE_WORDS, unitOf } from "@/lib/intake/notice/dateWords";
import type { DateReading, FoundDate, NoticeDateKind, RelativeDate } from "@/lib/intake/notice/noticeDate";
import { type DatePrecision, readDate } from "@/lib/intake/readDate";
import { addDays, addMonths, type IsoDate } from "@/lib/kernel/isoDate";

interface Mention {
  readonly at: number;
  readonly end: number;
  readonly written: string;
  readonly says: FoundDate["says"];
}

const MONTH = "(?:\\p{L}{3,9}\\.?)";
const ORDINAL = "(?:st|nd|rd|th|\\.)?";
const WRITTEN = new RegExp(
  [
    "\\d{4}[-/.]\\d{1,2}[-/.]\\d{1,2}",
    "\\d{1,2}\\. ?\\d{1,2}\\. ?\\d{4}",
    "(?<![\\d.])\\d{1,2}\\.\\d{1,2}\\.\\d{2}(?![\\d.]*\\d)",
    "\\d{1,2}[/-]\\d{1,2}[/-](?:\\d{4}|\\d{2})",
    `\\d{1,2}${ORDINAL} (?:of )?${MONTH},? \\d{4}`,
    `${MONTH} \\d{1,2}${ORDINAL},? \\d{4}`,
    `(?:(?:the )?end of |Ende )?${MONTH} \\d{4}(?![-/.]?\\d)`,
    "(?:(?:the )?end of )?(?:Q[1-4][ /.-]?\\d{4}|\\d{4}[ /-]?Q[1-4])",
    "(?:week|CW|KW) ?\\d{1,2}[ /.-]\\d{4}",
  ]
    .map((shape) => `(?:${shape})`)
    .join("|"),
  "giu",
);
const RELATIVE =
  /(\d{1,3}|\p{L}+)[\s-]+(?:calendar )?(days?|weeks?|months?|years?|Tage?n?|Wochen?|Monaten?|Monate?|Jahre?n?)\s+(after|from|following|before|nach|vor)\s+(?:(?:the|this|our|its|of|date|day|der|dem|dieser|diesem|maker's)\s+)*(notice|notification|publication|announcement|bulletin|letter|Abkündigung|Mitteilung|(?:last|final)[- ](?:time[- ])?(?:orders?|buy)|(?:last|final)[- ](?:time[- ])?(?:ship\w*|deliver\w*)|letzte[rn]? Bestell\w*|letzte[rn]? Liefer\w*)/giu;

const LAST_OF: Readonly<Record<DatePrecision, (first: IsoDate) => IsoDate>> = {
  day: (on) => on,
  week: (on) => addDays(on, 6),
  month: (on) => addDays(addMonths(on, 1), -1),
  quarter: (on) => addDays(addMonths(on, 3), -1),
  year: (on) => addDays(addMonths(on, 12), -1),
};

/** A written date's ways to be read: day and month may be swapped, a month has a first and a last day. */
function readingsOfText(written: string): DateReading[] {
  const [, toEnd, bare = ""] = /^((?:the )?end of |Ende )?(.*)$/iu.exec(written) ?? [];
  const plain = bare.replace(/(\d)(?:st|nd|rd|th)\b/gi, "$1").replace(/(\d\.?) of /i, "$1 ");
  const readings = (["dayFirst", "monthFirst"] as const).flatMap((order): DateReading[] => {
    const read = readDate(plain, order);
    if (read.state !== "value") return [];
    const { on, precision } = read.value;
    const last = LAST_OF[precision](on);
    if (precision === "day")
      return [{ on, how: order === "dayFirst" ? "day before month" : "month before day" }];
    if (toEnd !== undefined) return [{ on: last, how: `end of the ${precision}` }];
    return [
      { on, how: `first day of the ${precision}` },
      { on: last, how: `last day of the ${precision}` },
    ];
  });
  const distinct = readings.filter(({ on }, i) => readings.findIndex((one) => one.on === on) === i);
  return distinct.length === 1 ? distinct.map(({ on }) => ({ on, how: "as written" })) : distinct;
}

function writtenDates(text: string): Mention[] {
  return [...text.matchAll(WRITTEN)].flatMap((match): Mention[] => {
    const readings = readingsOfText(match[0]);
    const place = { at: match.index, end: match.index + match[0].length, written: match[0] };
    return readings.length === 0 ? [] : [{ ...place, says: { readings } }];
  });
}

function baseOf(word: string): NoticeDateKind {
  if (/order|buy|Bestell/iu.test(word)) return "lastOrderOn";
  return /ship|deliver|Liefer/iu.test(word) ? "lastShipOn" : "noticeOn";
}

function relativeDates(text: string): Mention[] {
  return [...text.matchAll(RELATIVE)].flatMap((match): Mention[] => {
    const [written, amount = "", unit = "", side = "", word = ""] = match;
    const count = countOf(amount);
    if (count === null) return [];
    const before = /before|vor/iu.test(side);
    const says: RelativeDate = { count: before ? -count : count, unit: unitOf(unit), base: baseOf(word) };
    return [{ at: match.index, end: match.index + written.length, written, says }];
  });
}

/** Where sentences and labelled lines begin: a date belongs to words of its own sentence. */
function sentenceStarts(text: string): number[] {
  const ends = text.matchAll(/\n\s*\n|(?<!\d)[.!?](?=\s)|;|\n(?=[^\n:]{1,60}:)/gu);
  return [0, ...[...ends].map(({ index, 0: mark }) => index + mark.length)];
}

interface Word {
  readonly kind: NoticeDateKind;
  readonly at: number;
}

function wordsOf(text: string): Word[] {
  return DATE_WORDS.flatMap(({ kind, words }) =>
    [...text.matchAll(words)].map(({ index }): Word => ({ kind, at: index })),
  ).sort((a, b) => a.at - b.at);
}

/** The kind named last before the date in its sentence, else first after it. */
function kindOf(
  { at, end }: Mention,
  words: readonly Word[],
  starts: readonly number[],
): NoticeDateKind | null {
  const from = starts.findLast((start) => start <= at) ?? 0;
  const until = starts.find((start) => start > at) ?? Infinity;
  const own = words.filter((word) => word.at >= from && word.at < until);
  const before = own.findLast((word) => word.at < at);
  return (before ?? own.find((word) => word.at >= end))?.kind ?? null;
}

/**
 * Dates of a discontinuance notice's text, each with the ways it can be read and which of the notice's days it
 * seems to be. Everything is a proposal; the words beside the date decide, in English and German.
 */
export function findDates(text: string): FoundDate[] {
  const relative = relativeDates(text);
  // The words a span counts from do not name the day itself.
  const blank = (whole: string, { at, end }: Mention) =>
    whole.slice(0, at) + " ".repeat(end - at) + whole.slice(end);
  const rest = relative.reduce(blank, text);
  const mentions = [...relative, ...writtenDates(rest)].sort((a, b) => a.at - b.at);
  const [words, starts] = [wordsOf(rest), sentenceStarts(text)];
  return mentions.map((mention) => ({
    ...{
      kind: kindOf(mention, words, starts),
      written: mention.written.replace(/\s+/g, " "),
      says: mention.says,
    },
  }));
}
