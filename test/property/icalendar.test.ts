import fc from "fast-check";
import ICAL from "ical.js";
import { expect, test } from "vitest";
import { addDays } from "@/lib/kernel/isoDate";
import { type CalendarDay, icalendar } from "@/lib/view/icalendar";

const head = { name: "Ebbline, dates ahead; VEL", madeAt: "2026-11-30T04:05:06.789Z" };

/** Text as people write it: any characters but control ones, which a calendar cannot hold. */
const text = fc
  .string({ unit: "binary", maxLength: 300 })
  .filter((made) => [...made].every((c) => c === "\n" || (c >= " " && c !== "\u007f")));

const days = fc.array(
  fc.record({
    uid: fc.uuid().map((id) => `${id}@ebbline`),
    day: fc.integer({ min: 0, max: 40_000 }).map((n) => addDays("2000-01-01", n)),
    summary: text,
    description: text,
    url: fc.constant("https://ebbline.example/lines/VEL-01"),
    category: fc.constantFrom("Safety", "Last order"),
  }),
  { maxLength: 6 },
);

const plain = (made: string) => made.replace(/\r\n?/g, "\n");

/** What the parser of another house (ical.js) reads out of a calendar. */
function readBack(calendar: string): Omit<CalendarDay, "category">[] {
  const root = new ICAL.Component(ICAL.parse(calendar));
  return root.getAllSubcomponents("vevent").map((component) => {
    const event = new ICAL.Event(component);
    expect(event.startDate.isDate).toBe(true);
    return {
      uid: event.uid,
      day: event.startDate.toString(),
      summary: event.summary,
      description: event.description,
      url: String(component.getFirstPropertyValue("url")),
    };
  });
}

test("an independent parser reads back every day with every character", () => {
  fc.assert(
    fc.property(days, (made) => {
      const wanted = made.map(({ category: _category, summary, description, ...rest }) => ({
        ...rest,
        summary: plain(summary),
        description: plain(description),
      }));
      expect(readBack(icalendar(made, head))).toEqual(wanted);
    }),
    { numRuns: 200, seed: 20261125 },
  );
});

test("no line is longer than 75 octets, each ends in CR LF, and none is cut within a character", () => {
  fc.assert(
    fc.property(days, (made) => {
      const calendar = icalendar(made, head);
      expect(calendar.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
      for (const line of calendar.split("\r\n")) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      expect(Buffer.from(calendar).toString("utf8")).toBe(calendar);
    }),
    { numRuns: 200, seed: 20261125 },
  );
});

test("the head names the calendar and how often to look again", () => {
  const calendar = icalendar([], head);
  const root = new ICAL.Component(ICAL.parse(calendar));
  // The parser does not know this newer property as text and leaves its marks in.
  expect(root.getFirstPropertyValue("name")).toBe("Ebbline\\, dates ahead\\; VEL");
  expect(String(root.getFirstPropertyValue("refresh-interval"))).toBe("PT12H");
  expect(root.getFirstPropertyValue("version")).toBe("2.0");
});

test("a day ends where the next begins, and the stamp is the second it was made", () => {
  const one = {
    uid: "a@ebbline",
    day: "2027-04-30",
    summary: "s",
    description: "d",
    url: "https://x.example",
    category: "c",
  };
  const calendar = icalendar([one], head);
  expect(calendar).toContain("DTSTART;VALUE=DATE:20270430\r\nDTEND;VALUE=DATE:20270501\r\n");
  expect(calendar).toContain("DTSTAMP:20261130T040506Z\r\n");
});
