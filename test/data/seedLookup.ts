import { showcase } from "@/seed/scenarios/showcase/showcase";

export const company = showcase();
export const D0 = "2026-11-30";

export const codeOfSite = new Map(company.Site.map(({ id, code }) => [id, code]));
export const codeOfLine = new Map(company.Line.map(({ id, code }) => [id, code]));
export const part = new Map(company.Part.map((row) => [row.id, row]));
export const machine = new Map(company.Machine.map((row) => [row.id, row]));
export const controller = new Map(company.Controller.map((row) => [row.id, row]));
export const position = new Map(company.Position.map((row) => [row.id, row]));
const family = new Map(company.Family.map((row) => [row.id, row.name]));

export const lineOfMachine = (id: string) => codeOfLine.get(machine.get(id)?.lineId ?? "") ?? "";
export const familyOfPart = (id: string | null) =>
  id === null ? "unknown" : (family.get(part.get(id)?.familyId ?? "") ?? "none");

export function countBy<T>(
  rows: readonly T[],
  keyOf: (row: T) => string | undefined,
): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const row of rows) {
    const key = keyOf(row) ?? "none";
    counts[key] = (counts[key] ?? 0) + 1;
  }
  return counts;
}
