import { addDays, type IsoDate } from "@/lib/kernel/isoDate";

/** A whole day in a calendar. */
export interface CalendarDay {
  /** Stays the same as long as it means the same thing, so that a later feed moves the entry and adds none. */
  readonly uid: string;
  readonly day: IsoDate;
  readonly summary: string;
  readonly description: string;
  /** Page that tells more. */
  readonly url: string;
  readonly category: string;
}

interface CalendarHead {
  readonly name: string;
  /** When the feed was made, UTC, RFC 3339. */
  readonly madeAt: string;
}

const MOST_OCTETS = 75;
const encoder = new TextEncoder();

/** TEXT of RFC 5545, 3.3.11. */
function escaped(text: string): string {
  const lines = text.replace(/\r\n?/g, "\n");
  // Control characters are not allowed in a calendar at all.
  const plain = [...lines].filter((c) => c === "\n" || c === "\t" || (c >= " " && c !== "\u007f")).join("");
  return plain.replace(/[\\;,]/g, (mark) => `\\${mark}`).replaceAll("\n", "\\n");
}

/** A content line cut into pieces of at most 75 octets, never within a character (RFC 5545, 3.1). */
function folded(line: string): string {
  const pieces: string[] = [];
  let piece = "";
  let octets = 0;
  for (const character of line) {
    const size = encoder.encode(character).length;
    if (octets + size > MOST_OCTETS) {
      pieces.push(piece);
      piece = " ";
      octets = 1;
    }
    piece += character;
    octets += size;
  }
  return [...pieces, piece].join("\r\n");
}

const compact = (date: IsoDate) => date.replaceAll("-", "");

function entry({ uid, day, summary, description, url, category }: CalendarDay, stamp: string): string[] {
  return [
    "BEGIN:VEVENT",
    `UID:${escaped(uid)}`,
    `DTSTAMP:${stamp}`,
    `DTSTART;VALUE=DATE:${compact(day)}`,
    `DTEND;VALUE=DATE:${compact(addDays(day, 1))}`,
    `SUMMARY:${escaped(summary)}`,
    `DESCRIPTION:${escaped(description)}`,
    `URL:${url}`,
    `CATEGORIES:${escaped(category)}`,
    "TRANSP:TRANSPARENT",
    "END:VEVENT",
  ];
}

/**
 * A calendar of whole days as RFC 5545 text, with the name and the refresh of RFC 7986.
 *
 * Same days and head give the same text.
 */
export function icalendar(days: readonly CalendarDay[], { name, madeAt }: CalendarHead): string {
  const stamp = madeAt.replace(/\.\d+/, "").replace(/[-:]/g, "");
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Ebbline//Dates ahead//EN",
    "CALSCALE:GREGORIAN",
    `NAME:${escaped(name)}`,
    "REFRESH-INTERVAL;VALUE=DURATION:PT12H",
    ...days.flatMap((one) => entry(one, stamp)),
    "END:VCALENDAR",
  ];
  return `${lines.map(folded).join("\r\n")}\r\n`;
}
