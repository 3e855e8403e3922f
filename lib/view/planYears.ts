import type { BuyBasis } from "@/lib/view/lastBuyBasis";

/** A line with units of a family. */
export interface LineWithUnits {
  readonly code: string;
  readonly units: number;
}

/** Lines with units of the family, by code. */
export function lineUnitsOf({ needs }: Pick<BuyBasis, "needs">): LineWithUnits[] {
  const units = new Map<string, number>();
  for (const { lines } of needs)
    for (const line of lines) units.set(line.lineCode, (units.get(line.lineCode) ?? 0) + line.units);
  return [...units]
    .map(([code, all]) => ({ code, units: all }))
    .sort((a, b) => a.code.localeCompare(b.code, "en"));
}

export type PlanYearsByLine = Readonly<Record<string, number>>;

const ROW = /^\s*(\S+?)[\s;,]+(\d{4})\s*$/;
const isYear = (year: number) => year >= 2000 && year <= 2099;

/** One row as a line and its year, or what is wrong with it. */
function readRow(row: string, lines: readonly LineWithUnits[]): { code: string; year: number } | string {
  const [, written, digits] = ROW.exec(row) ?? [];
  if (written === undefined) return `“${row.trim()}” is not a line and a year, such as L-01 2028.`;
  const line = lines.find(({ code }) => code.toLowerCase() === written.toLowerCase());
  if (line === undefined) return `no line ${written} has units of these parts.`;
  const year = Number(digits);
  return isYear(year) ? { code: line.code, year } : `${year} is not a year from 2000 to 2099.`;
}

/**
 * Reads supposed years of retrofit, one line a row: `VEL-01 2028`, also with `;`, `,` or a tab between.
 *
 * @returns The years by line, or what is wrong with the first row that cannot be used.
 */
export function readPlanYears(
  text: string,
  lines: readonly LineWithUnits[],
): { readonly years: PlanYearsByLine; readonly problem: string | null } {
  const years: Record<string, number> = {};
  for (const [i, row] of text.split("\n").entries()) {
    if (row.trim() === "") continue;
    const read = readRow(row, lines);
    if (typeof read === "string") return { years: {}, problem: `Row ${i + 1}: ${read}` };
    years[read.code] = read.year;
  }
  return { years, problem: null };
}

/** The years as rows to edit. */
export function writePlanYears(years: PlanYearsByLine): string {
  return Object.entries(years)
    .map(([code, year]) => `${code} ${year}`)
    .sort()
    .join("\n");
}
