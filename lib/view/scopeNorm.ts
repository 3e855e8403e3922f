import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";

/** A norm as a row: its name, unit and one or three values. */
export interface NormRow {
  readonly key: string;
  readonly name: string;
  readonly unit: string;
  readonly values: readonly number[];
}

const SPANS: Readonly<Record<keyof ScopeNorms["spans"], readonly [name: string, unit: string]>> = {
  hourlyRate: ["Hourly rate", "EUR/h"],
  surveyPerAxis: ["Survey, by axis", "h"],
  surveyPerMachine: ["Survey, by machine", "h"],
  engineeringPerAxis: ["Engineering, by axis", "h"],
  engineeringPerMachine: ["Engineering, by machine", "h"],
  conversionPerController: ["Program conversion, by swapped controller", "h"],
  raisePerController: ["Raising firmware, by controller", "h"],
  panelPerAxis: ["Panel work, by axis", "h"],
  installPerAxis: ["Taking out and fitting, by axis", "h"],
  commissioningPerAxis: ["Commissioning, by axis", "h"],
  validationPerMachine: ["Safety validation, by machine", "h"],
  backupPerController: ["Copies of programs, by controller", "h"],
  carePerAxis: ["Fans, batteries, fibre ends, by axis", "h"],
  drive: ["Drive without a price on record", "EUR"],
  motor: ["Motor", "EUR"],
  adapter: ["Feedback adapter", "EUR"],
  cablesPerAxis: ["Cable set, by axis", "EUR"],
  controller: ["Controller with licences", "EUR"],
  ioRack: ["I/O rack", "EUR"],
  hmi: ["Operator panel", "EUR"],
  contingency: ["Contingency", "share"],
  releasedUsable: ["Removed units that pass their test", "share"],
};

const PLAIN: Readonly<Record<keyof ScopeNorms["plain"], readonly [name: string, unit: string]>> = {
  crews: ["Crews at the same time", "crews"],
  personsPerCrew: ["Persons in a crew", "persons"],
  hoursPerDay: ["Hours of a working day in a window", "h"],
  windowShare: ["Share of a window that may be planned", "share"],
  purchaseWeeks: ["Quote, approval and order", "weeks"],
  transportWeeks: ["Transport and customs", "weeks"],
  incomingWeeks: ["Receiving, testing and setting up", "weeks"],
};

/** The norms as they leave for somebody to whom amounts are not shown: hours, weeks and shares, nothing costs anything. */
export function normsWithoutAmounts(norms: ScopeNorms): ScopeNorms {
  const free = Object.entries(norms.spans).map(([key, span]) => [
    key,
    isAmount(SPANS[key as keyof ScopeNorms["spans"]][1]) ? [0, 0, 0] : span,
  ]);
  return { ...norms, spans: Object.fromEntries(free) as unknown as ScopeNorms["spans"] };
}

/** Whether a norm of this unit is an amount of money. */
export const isAmount = (unit: string): boolean => unit.startsWith("EUR");

/** The norms as rows, those with three values first. */
export function normRows({ spans, plain }: ScopeNorms): NormRow[] {
  const rowsOf = <K extends string>(
    words: Readonly<Record<K, readonly [string, string]>>,
    values: Readonly<Record<K, number | readonly number[]>>,
  ) =>
    (Object.keys(words) as K[]).map((key): NormRow => {
      const [name, unit] = words[key];
      const value = values[key];
      return { key, name, unit, values: typeof value === "number" ? [value] : value };
    });
  return [...rowsOf(SPANS, spans), ...rowsOf(PLAIN, plain)];
}
