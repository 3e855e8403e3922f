import type { Problem, Values } from "@/lib/intake/checkRow";
import type { FieldValue } from "@/lib/intake/readCell";
import { addDays } from "@/lib/kernel/isoDate";

/** What the times of an event's row come to. */
export interface SettledStop {
  readonly values: Readonly<Record<string, FieldValue>>;
  readonly inferred: readonly string[];
  readonly problems: readonly Omit<Problem, "column">[];
}

/** Hours that registers write where nobody knows them: common practice, no source. */
const STAND_IN_HOURS: readonly number[] = [999, 999.9, 999.99, 9999];
/** A stop longer than this is looked at before it is believed: a chosen limit, no source. */
const LONGEST_PLAIN_STOP_H = 720;
/** Difference of two registers' stops that is more than rounding: chosen, no source. */
const STOPS_DIFFER_H = 0.5;

export const ENDS_FIRST = "ends before it starts";

const NOTHING: SettledStop = { values: {}, inferred: [], problems: [] };

/**
 * What start, end and length of a stop say together.
 *
 * An end that is a time of day alone is the next such time after the start, over midnight too. An end before the
 * start keeps the event in quarantine: it is stored with the reason and counts in no figure. A length that stands
 * for "not known" is not known. Times are on the site's own clock; a change of summer time in between is settled
 * by whoever knows the zone (`hoursBetween`).
 */
export function settleStop(given: Values): SettledStop {
  const stop = withoutStandIn(given);
  const values: Values = { ...given, ...stop.values };
  const start = textOf(values.happenedAt);
  const end = endAfter(start, textOf(values.endedAt));
  if (start === null || end === null) return join(stop, longStop(values));
  if (end < start) return join(stop, endsFirst(values, start, end));
  const between = hoursApart(start, end);
  const written = typeof values.downtimeHours === "number" ? values.downtimeHours : null;
  const settled: SettledStop = {
    values: { endedAt: end, ...(written === null ? { downtimeHours: between } : {}) },
    inferred: written === null ? ["downtimeHours"] : [],
    problems: written === null ? [] : differing(written, between),
  };
  return join(stop, settled, longStop({ ...values, ...settled.values }));
}

function join(...parts: readonly SettledStop[]): SettledStop {
  return {
    values: Object.assign({}, ...parts.map((part) => part.values)),
    inferred: parts.flatMap((part) => part.inferred),
    problems: parts.flatMap((part) => part.problems),
  };
}

function textOf(value: FieldValue | undefined): string | null {
  return typeof value === "string" ? value : null;
}

/** An end written as "THH:MM" is the first such time after the start. */
function endAfter(start: string | null, end: string | null): string | null {
  if (end === null || !end.startsWith("T")) return end;
  if (start === null) return null;
  const day = start.slice(0, 10);
  return end >= start.slice(10) ? `${day}${end}` : `${addDays(day, 1)}${end}`;
}

function hoursApart(start: string, end: string): number {
  const hours = (Date.parse(`${end}:00Z`) - Date.parse(`${start}:00Z`)) / 3_600_000;
  return Number(hours.toFixed(2));
}

function withoutStandIn({ downtimeHours }: Values): SettledStop {
  if (typeof downtimeHours !== "number" || !STAND_IN_HOURS.includes(downtimeHours)) return NOTHING;
  return {
    values: { downtimeHours: null },
    inferred: [],
    problems: [
      {
        ...{ field: "downtimeHours", found: String(downtimeHours), severity: "warning" },
        problem: `A stop of ${downtimeHours} h looks like a stand-in; its length is kept as not known`,
        remedy: "Enter the true length, or leave the cell empty",
      },
    ],
  };
}

function endsFirst(values: Values, start: string, end: string): SettledStop {
  return {
    values: { setAside: textOf(values.setAside) ?? ENDS_FIRST, downtimeHours: null, endedAt: null },
    inferred: ["setAside"],
    problems: [
      {
        ...{ field: "endedAt", found: end.replace("T", " "), severity: "warning" },
        problem: `The stop ends before it starts (${start.replace("T", " ")}); the event is kept in quarantine and counts in no figure`,
        remedy: "Correct the times in the register and load the file again",
      },
    ],
  };
}

function differing(written: number, between: number): SettledStop["problems"] {
  if (Math.abs(written - between) <= STOPS_DIFFER_H) return [];
  return [
    {
      ...{ field: "downtimeHours", found: String(written), severity: "warning" },
      problem: `The stop is given as ${written} h, from its start to its end it is ${between} h; what is given is kept`,
      remedy: "Ask which of the two registers is right",
    },
  ];
}

function longStop({ downtimeHours }: Values): SettledStop {
  if (typeof downtimeHours !== "number" || downtimeHours <= LONGEST_PLAIN_STOP_H) return NOTHING;
  return {
    ...NOTHING,
    problems: [
      {
        ...{ field: "downtimeHours", found: String(downtimeHours), severity: "warning" },
        problem: `A stop of ${downtimeHours} h is longer than ${LONGEST_PLAIN_STOP_H / 24} days`,
        remedy: "Check it against the stop log; leave the length empty when nobody knows it",
      },
    ],
  };
}
