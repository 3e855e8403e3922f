import type { FieldValue } from "@/lib/intake/readCell";
import { findField, type Register } from "@/lib/intake/registers";

/** Something about a row that a person should see or mend. `column` is the file's header, or null for the whole row. */
export type Problem = {
  column: string | null;
  field: string | null;
  found: string;
  problem: string;
  remedy: string;
  severity: "error" | "warning";
};

export type Values = Readonly<Record<string, FieldValue>>;

type Finder = (register: Register, values: Values) => Omit<Problem, "column">[];

function labelOf(register: Register, key: string): string {
  return findField(register, key)?.label ?? key;
}

function isFilled(values: Values, key: string): boolean {
  return (values[key] ?? null) !== null;
}

function quote(value: FieldValue | undefined): string {
  return value === undefined || value === null || typeof value === "object" ? "" : String(value);
}

const findNoneGiven: Finder = (register, values) =>
  register.oneOf
    .filter((keys) => !keys.some((key) => isFilled(values, key)))
    .map((keys) => ({
      field: keys[0] ?? null,
      found: "",
      problem: `Neither ${keys.map((key) => `“${labelOf(register, key)}”`).join(" nor ")} is given`,
      remedy: "Fill at least one of them",
      severity: "error",
    }));

const findLonely: Finder = (register, values) =>
  register.together
    .filter(([one, other]) => isFilled(values, one) && !isFilled(values, other))
    .map(([one, other]) => ({
      field: other,
      found: "",
      problem: `“${labelOf(register, one)}” is given without “${labelOf(register, other)}”`,
      remedy: `Fill “${labelOf(register, other)}” as well`,
      severity: "error",
    }));

function falls(low: FieldValue | undefined, high: FieldValue | undefined): boolean {
  if (typeof low === "number" && typeof high === "number") return high < low;
  return typeof low === "string" && typeof high === "string" && high < low;
}

const findFalling: Finder = (register, values) => [
  ...register.ascending.flatMap((keys) =>
    fallsAlong(register, values, keys).map((found) => ({
      ...found,
      remedy: "Check both against the source",
      severity: "warning" as const,
    })),
  ),
  ...register.ordered.flatMap((keys) =>
    fallsAlong(register, values, keys).map((found) => ({
      ...found,
      remedy: "Change the two about, or correct the one that is wrong",
      severity: "error" as const,
    })),
  ),
];

function fallsAlong(register: Register, values: Values, keys: readonly string[]) {
  const filled = keys.filter((key) => isFilled(values, key));
  return filled.slice(1).flatMap((key, index) => {
    const before = filled[index] ?? key;
    if (!falls(values[before], values[key])) return [];
    return [
      {
        field: key,
        found: quote(values[key]),
        problem: `“${labelOf(register, key)}” lies below “${labelOf(register, before)}” (${quote(values[before])})`,
      },
    ];
  });
}

const findUnfilled: Finder = (register, values) =>
  register.fields
    .filter((field) => field.required && !isFilled(values, field.key))
    .map((field) => ({
      field: field.key,
      found: "",
      problem: `“${field.label}” is empty`,
      remedy: `Fill the cell, for example with ${field.example}`,
      severity: "error",
    }));

/** Checks what must hold between the cells of one row. */
export function checkRow(register: Register, values: Values): Omit<Problem, "column">[] {
  return [findUnfilled, findNoneGiven, findLonely, findFalling].flatMap((find) => find(register, values));
}
