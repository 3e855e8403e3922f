import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30.");
const positive = z
  .string()
  .regex(/^\d{1,12}(\.\d{1,2})?$/, "Write an amount with at most two places, such as 610000.00.")
  .refine((text) => Number(text) > 0, "Write an amount above 0.");
const words = (most: number, missing: string) =>
  z.string().trim().min(1, missing).max(most, `Use at most ${most} characters.`);

export const addCost = z.strictObject({
  projectId: z.uuid(),
  kind: z.enum(["committed", "actual"]),
  amount: positive,
  spentOn: day,
  text: words(200, "Say what the money is for."),
  reference: words(60, "Write the number in the ledger or order book."),
});

export const removeCost = z.strictObject({ projectId: z.uuid(), costId: z.uuid() });

const days = z.strictObject({ dueOn: day.nullable(), doneOn: day.nullable() });

/** A change of a milestone's days: what the person saw, and what should stand instead. */
export const setMilestone = z.strictObject({
  projectId: z.uuid(),
  milestoneId: z.uuid(),
  seen: days,
  wanted: days,
});

export const changeProject = z
  .strictObject({
    projectId: z.uuid(),
    version: z.int().positive(),
    status: z.enum(["funded", "in_work", "proving", "accepted", "closed", "parked"]),
    forecast: positive.nullable(),
    cause: z.string().trim().max(400, "Use at most 400 characters.").nullable(),
    startsOn: day.nullable(),
    endsOn: day.nullable(),
  })
  .refine(({ startsOn, endsOn }) => startsOn === null || endsOn === null || startsOn <= endsOn, {
    path: ["endsOn"],
    message: "The end cannot lie before the start.",
  });

export const removeProject = z.strictObject({ projectId: z.uuid(), version: z.int().positive() });

export type AddCost = z.output<typeof addCost>;
export type RemoveCost = z.output<typeof removeCost>;
export type SetMilestone = z.output<typeof setMilestone>;
export type ChangeProject = z.output<typeof changeProject>;
export type RemoveProject = z.output<typeof removeProject>;
