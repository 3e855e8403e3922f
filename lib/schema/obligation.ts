import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { why } from "@/lib/schema/why";

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2027-09-30.");
const words = (most: number, missing: string) =>
  z.string().trim().min(1, missing).max(most, `Use at most ${most} characters.`);

/** What a person says of a duty. */
const duty = z.strictObject({
  siteId: z.uuid("Choose a site."),
  lineId: z.uuid("Choose a line, or the whole site.").nullable(),
  kind: z.enum(["safety", "legal"], "Choose safety or legal."),
  title: words(200, "Say what must be done."),
  dueOn: day,
  source: words(300, "Say where the duty comes from: document, clause, file."),
  owner: words(120, "Write a function, or leave it empty.").nullable(),
  evidence: z.enum(["measured", "documented", "inferred", "assumed"]),
});

const which = { obligationId: z.uuid(), version: z.int().positive() };

export const addObligation = duty;
export const changeObligation = duty.extend({ ...which, why });
/** Marks a duty done on a day; null opens it again. */
export const settleObligation = z.strictObject({ ...which, doneOn: day.nullable(), why });
export const removeObligation = z.strictObject({ ...which, why });

export type AddObligation = z.output<typeof addObligation>;
export type ChangeObligation = z.output<typeof changeObligation>;
export type SettleObligation = z.output<typeof settleObligation>;
export type RemoveObligation = z.output<typeof removeObligation>;
