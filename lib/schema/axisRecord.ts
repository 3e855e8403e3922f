import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { typedNumber } from "@/lib/schema/typedNumber";

const NUMBER = /^[+-]?\d{1,12}(\.\d{1,9})?$/;
const ask = "Write a number such as 12.5.";

/** A measured value as typed, with a decimal point or comma; empty is not measured. */
const value = typedNumber
  .refine((text) => text === "" || NUMBER.test(text), ask)
  .transform((text) => (text === "" ? null : Number(text)));

/** Readings of one thing, parted by spaces or semicolons. */
const readings = z
  .string()
  .transform((text) => text.split(/[\s;]+/).filter((part) => part !== ""))
  .pipe(z.array(typedNumber))
  .refine((parts) => parts.every((part) => NUMBER.test(part)), {
    message: "Write numbers parted by spaces, such as 0.01 0.02.",
  })
  .refine((parts) => parts.length <= 50, { message: "Write at most 50 readings." })
  .transform((parts) => parts.map(Number));

const words = (most: number) => z.string().trim().max(most, `Use at most ${most} characters.`);

export const axisEntry = z.strictObject({
  asFound: value,
  limit: value.refine((limit) => limit === null || limit >= 0, "A limit cannot be negative."),
  asLeft: readings,
  confirmed: z.enum(["", "yes", "no"]).transform((said) => (said === "" ? null : said === "yes")),
  notApplicable: words(200),
  instrument: words(80),
  by: words(80),
  witness: words(80),
  on: z
    .string()
    .refine((day) => day === "" || isIsoDate(day), "Write a day that exists, as 2026-11-30.")
    .transform((day) => (day === "" ? null : day)),
});

const place = { projectId: z.uuid(), axisId: z.uuid() };

/** One check of a record; the version is the one the person saw, 0 for none. */
export const setAxisEntry = z.strictObject({
  ...place,
  checkId: z.string().max(40),
  version: z.int().nonnegative(),
  entry: axisEntry,
});

/** Accepts the axis, or takes the acceptance back. */
export const acceptAxis = z.strictObject({ ...place, accepted: z.boolean() });

/** A check as a form holds it. */
export type TypedEntry = z.input<typeof axisEntry>;
export type SetAxisEntry = z.output<typeof setAxisEntry>;
export type AcceptAxis = z.output<typeof acceptAxis>;
