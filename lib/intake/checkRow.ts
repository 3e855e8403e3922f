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

/**
 * Leaves out of a row what cannot stand without a cell that says nothing (an error of a formula, a stand-in): one broken
 * cell is not worth the rest of the row.
 */
export function leaveOutAlone(
  register: Register,
  values: Values,
  unread: ReadonlySet<string>,
): { readonly values: Values; readonly problems: Omit<Problem, "column">[] } {
  const left: Record<string, FieldValue> = { ...values };
  const problems: Omit<Problem, "column">[] = [];
  for (const [one, other] of register.together) {
    if (!unread.has(other) || !isFilled(left, one) || isFilled(left, other)) continue;
    problems.push({
      ...{ field: one, found: quote(left[one]), severity: "warning" },
      problem: `“${labelOf(register, one)}” was left out, since “${labelOf(register, other)}” beside it is not known`,
      remedy: `Fill “${labelOf(register, other)}” as well`,
    });
    left[one] = null;
  }
  return { values: left, problems };
}

const findUnaccompanied: Finder = (register, values) =>
  (register.expected ?? [])
    .filter(([one, other]) => isFilled(values, one) && !isFilled(values, other))
    .map(([one, other]) => ({
      field: other,
      found: "",
      problem: `“${labelOf(register, one)}” is given without “${labelOf(register, other)}”, so nobody can tell how old it is`,
      remedy: `Fill “${labelOf(register, other)}” when it is known`,
      severity: "warning",
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
  return [findUnfilled, findNoneGiven, findLonely, findUnaccompanied, findFalling].flatMap((find) =>
    find(register, values),
  );
}
