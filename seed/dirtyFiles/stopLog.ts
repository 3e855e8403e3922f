import { dayNumber } from "@/seed/dirtyFiles/dayNumber";
import type { Spoil } from "@/seed/dirtyFiles/spoil";

const MINUTES_A_DAY = 1440;

function fractionOf(at: string): string {
  const minutes = Number(at.slice(11, 13)) * 60 + Number(at.slice(14, 16));
  return (dayNumber(at.slice(0, 10)) + minutes / MINUTES_A_DAY).toFixed(6);
}

/** What spoils a stop log: units, times, words of other languages, classes under other names. */
export const STOP_LOG_SPOILS: readonly Spoil[] = [
  { row: 0, field: "downtimeHours", problem: 7, write: () => "95 min", means: 95 / 60 },
  { row: 1, field: "downtimeHours", problem: 7, write: (hours) => `${hours} h` },
  { row: 2, field: "itemClass", problem: 21, write: () => "Servo amp", means: "drive" },
  { row: 3, field: "itemClass", problem: 21, write: () => "Amplifier", means: "drive" },
  { row: 4, field: "kind", problem: 18, write: () => "Umrichter getauscht", means: "removal" },
  { row: 5, field: "kind", problem: 18, write: () => "wymiana", means: "removal" },
  { row: 6, field: "kind", problem: 18, write: () => "cambio", means: "removal" },
  { row: 7, field: "downtimeHours", problem: 19, write: () => "999 h", means: null },
  { row: 8, field: "happenedAt", problem: 6, write: fractionOf },
  { row: 9, field: "happenedAt", problem: 6, write: (at) => at.replace("T", " ") },
  { row: 10, field: "happenedAt", problem: 6, write: () => "Q3 2026", means: "2026-07-01T00:00" },
  { row: 11, field: "reference", problem: 20, write: () => "XXX", refuses: true },
  { row: 12, field: "spareAtHand", problem: 18, write: () => "tak", means: true },
  { row: 13, field: "spareAtHand", problem: 18, write: () => "nein", means: false },
  { row: 14, field: "downtimeHours", problem: 11, write: () => "#VALUE!", means: null },
  {
    row: 15,
    field: "text",
    problem: 11,
    write: () => "@SUM(1+1)*cmd|' /C x'!A0",
    means: null,
  },
  { row: 16, field: "downtimeHours", problem: 19, write: () => "-2", refuses: true },
  { row: 17, field: "partNumber", problem: 1, write: (number) => number.replaceAll("-", " ").toLowerCase() },
];
