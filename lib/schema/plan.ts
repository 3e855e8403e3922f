import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { typedNumber } from "@/lib/schema/typedNumber";
import { why } from "@/lib/schema/why";

const amount = typedNumber.pipe(
  z
    .string()
    .regex(
      /^\d{1,12}(\.\d{1,2})?$/,
      "Write an amount with at most two places, such as 1900000 or 250000.50.",
    ),
);
const code = z.string().regex(/^[A-Za-z0-9-]{1,20}$/);
const codes = z.array(code).max(500);
const version = z.int().positive();

/** A cut to be kept as a plan: what was chosen, and the data it was seen on. */
export const keepPlan = z.strictObject({
  name: z.string().trim().min(1, "Give the plan a name.").max(120, "Use at most 120 characters."),
  year: z.int().min(2000, "Write a year such as 2027.").max(2099, "Write a year such as 2027."),
  budget: amount,
  by: z.enum(["loss", "score"]),
  fill: z.boolean(),
  pinnedIn: codes,
  pinnedOut: codes,
  /** EUR by line code, instead of the estimate. */
  costs: z.record(code, amount),
  asOf: z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30."),
  dataVersion: z.int().nonnegative(),
});

/** A step of a plan that its planners take. */
export const movePlan = z.strictObject({
  planId: z.uuid(),
  version,
  to: z.enum(["put_forward", "draft"]),
  why,
});

/** A step of a plan that an approver takes; back to put_forward takes the decision back. */
export const decidePlan = z.strictObject({
  planId: z.uuid(),
  version,
  to: z.enum(["funded", "declined", "put_forward"]),
  why,
});

export const deletePlan = z.strictObject({ planId: z.uuid(), version });

/** A project for a funded line of a plan. */
export const startProject = z.strictObject({ planLineId: z.uuid() });

export type KeepPlan = z.output<typeof keepPlan>;
export type MovePlan = z.output<typeof movePlan>;
export type DecidePlan = z.output<typeof decidePlan>;
export type DeletePlan = z.output<typeof deletePlan>;
export type StartProject = z.output<typeof startProject>;
