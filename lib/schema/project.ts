import { z } from "zod";
import { day, positive } from "@/lib/schema/projectMoney";

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

export type SetMilestone = z.output<typeof setMilestone>;
export type ChangeProject = z.output<typeof changeProject>;
export type RemoveProject = z.output<typeof removeProject>;
