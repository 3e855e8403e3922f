import { dayNumber } from "@/seed/dirtyFiles/dayNumber";
import type { Spoil } from "@/seed/dirtyFiles/spoil";
import type { Habits } from "@/seed/registerFiles/habits";

const SIGNS: Readonly<Record<string, (amount: string) => string>> = {
  EUR: (amount) => `${amount} €`,
  PLN: (amount) => `${amount} zł`,
  SEK: (amount) => `${amount} kr`,
  USD: (amount) => `$${amount}`,
  MXN: (amount) => `$${amount}`,
  GBP: (amount) => `£${amount}`,
};

/** An amount with groups of three and two decimals in the site's marks. */
function groupedAmount(amount: string, { decimalMark }: Habits): string {
  const [whole = "", cents = ""] = amount.split(".");
  const mark = decimalMark === "," ? "." : ",";
  return `${whole.replace(/\B(?=(\d{3})+$)/g, mark)}${decimalMark}${cents.padEnd(2, "0")}`;
}

/** What spoils an asset register of a site: costs, dates, firmware, stand-ins. */
export function assetSpoils(habits: Habits, currency: string): Spoil[] {
  const sign = SIGNS[currency] ?? ((amount: string) => `${amount} ${currency}`);
  const quarter = "2027-01-01";
  // Only Unicode has the sign.
  const atLeast = habits.encoding === "utf-8" ? "≥" : ">=";
  return [
    { row: 0, field: "firmware", problem: 15, write: (level) => `v${level}` },
    { row: 1, field: "costPerHour", problem: 5, write: (amount) => groupedAmount(amount, habits) },
    { row: 2, field: "costPerHour", problem: 8, write: sign },
    { row: 3, field: "costApprovedOn", problem: 6, write: (day) => String(dayNumber(day)) },
    { row: 4, field: "costValidUntil", problem: 6, write: () => "Q1 2027", means: quarter },
    { row: 5, field: "memoryPercent", problem: 20, write: () => "n/a", means: null },
    {
      row: 6,
      field: "firmware",
      problem: 15,
      write: (level) => `${atLeast}${level}`,
      means: (level) => `>=${level}`,
    },
    { row: 7, field: "firmware", problem: 15, write: () => "latest", means: null },
    { row: 8, field: "controllerReadOn", problem: 20, write: () => "1900-01-01", means: null },
    {
      row: 8,
      field: "panelLocation",
      problem: 11,
      write: (place) => `<b>${place}</b>`,
      means: (place) => `<b>${place}</b>`,
    },
    { row: 9, field: "machineInServiceYear", problem: 20, write: () => "9999", means: null },
    { row: 10, field: "bufferHours", problem: 7, write: (hours) => `${Number(hours) * 60} min` },
    { row: 11, field: "costPerHour", problem: 11, write: () => "#N/A", means: null },
    { row: 12, field: "controllerReadOn", problem: 20, write: () => "tbd", means: null },
    { row: 13, field: "memoryPercent", problem: 7, write: (share) => `${share} %` },
  ];
}
