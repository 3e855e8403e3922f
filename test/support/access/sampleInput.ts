import type { z } from "zod";

/** Values by the name of the field they are for. */
export type Known = Readonly<Record<string, unknown>>;

/** Tried in turn where nothing is known of a field: the first its schema takes. */
const CANDIDATES: readonly unknown[] = [
  ...[
    "2026-11-30",
    "10.00",
    "of a test",
    "EUR",
    "PLN",
    "2026-10",
    "2026-11-30T10:00",
    "10",
    "C2",
    "+A99",
    "",
  ],
  ...["00000000-0000-7000-8000-000000000000", "https://mes.plant.example/in", "somebody@plant.example"],
  ...["cost-missing", 1, 10, 2027, 0, true, null, {}, undefined],
];

interface Definition {
  readonly type: string;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly innerType?: z.ZodType;
  readonly element?: z.ZodType;
  readonly in?: z.ZodType;
}

/** A form with these fields. */
export function formOf(fields: Readonly<Record<string, string>>): FormData {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  return form;
}

/**
 * Something a schema takes, made of what is known by name, so that an action comes as far as looking for its row.
 *
 * @throws {Error} where nothing fits; such a field is given by name.
 */
export function sampleInput(schema: z.ZodType, known: Known, name = "input"): unknown {
  if (name in known && takes(schema, known[name])) return known[name];
  const { type, shape, innerType, element, in: before } = schema.def as unknown as Definition;
  if (shape)
    return Object.fromEntries(
      Object.entries(shape).map(([field, inner]) => [field, sampleInput(inner, known, field)]),
    );
  if (element) return [sampleInput(element, known, singular(name))];
  if (before && type === "pipe") return textOf(schema) ?? sampleInput(before, known, name);
  if (innerType)
    return sampleInner(innerType, known, { name, without: type === "nullable" ? null : undefined });
  const found = [...optionsOf(schema), ...CANDIDATES].find((value) => takes(schema, value));
  if (found !== undefined || takes(schema, undefined)) return found;
  throw new Error(`nothing fits the field ${name} of type ${type}`);
}

/** A text may be read by the first part of a pipe and refused by the next, so the whole is asked. */
const textOf = (pipe: z.ZodType) =>
  CANDIDATES.find((value) => typeof value === "string" && takes(pipe, value));

/** What may be left out is left out where nothing fits. */
function sampleInner(
  inner: z.ZodType,
  known: Known,
  { name, without }: { readonly name: string; readonly without: null | undefined },
): unknown {
  try {
    return sampleInput(inner, known, name);
  } catch {
    return without;
  }
}

/** A check of the schema itself may stumble over what is no value of its kind at all. */
function takes(schema: z.ZodType, value: unknown): boolean {
  try {
    return schema.safeParse(value).success;
  } catch {
    return false;
  }
}

const singular = (name: string) => name.replace(/s$/, "");

function optionsOf(schema: z.ZodType): readonly unknown[] {
  const { entries, values } = schema.def as {
    entries?: Record<string, unknown>;
    values?: readonly unknown[];
  };
  return entries ? Object.values(entries) : (values ?? []);
}
