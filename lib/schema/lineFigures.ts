import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30.").nullable();

const amount = z
  .string()
  .regex(/^\d{1,12}(\.\d{1,2})?$/, "Write an amount of 0 or more with at most two places, such as 2900.50.")
  .nullable();

const hours = z
  .string()
  .regex(/^\d{1,4}(\.\d{1,2})?$/, "Write hours of 0 or more with at most two places, such as 1.5.")
  .nullable();

/** The figures of a line as they stand in the store; null is not known. */
const storedFigures = z.strictObject({
  costPerHour: amount,
  costOwner: z.string().trim().min(1, "Write a name, or leave it empty.").max(120).nullable(),
  costApprovedOn: day,
  costValidUntil: day,
  costEvidence: z.enum(["measured", "documented", "inferred", "assumed"]),
  bufferHours: hours,
  shiftsPerWeek: z
    .number("Write a whole number from 0 to 21.")
    .int("Write a whole number from 0 to 21.")
    .min(0, "Write a whole number from 0 to 21.")
    .max(21, "A week has 21 shifts of 8 hours at most.")
    .nullable(),
});

const figuresThatHold = storedFigures
  .refine((figures) => figures.costApprovedOn === null || figures.costOwner !== null, {
    path: ["costOwner"],
    message: "An approved cost names who answers for it.",
  })
  .refine((figures) => figures.costApprovedOn === null || figures.costPerHour !== null, {
    path: ["costPerHour"],
    message: "Only a cost that is written down can be approved.",
  })
  .refine(
    ({ costApprovedOn, costValidUntil }) =>
      costApprovedOn === null || costValidUntil === null || costApprovedOn <= costValidUntil,
    { path: ["costValidUntil"], message: "The last valid day cannot lie before the approval." },
  );

/** A change of a line's figures: what the person saw, and what should stand instead. */
export const changeLineFigures = z.strictObject({
  lineId: z.uuid(),
  seen: storedFigures,
  wanted: figuresThatHold,
});

export type ChangeLineFigures = z.output<typeof changeLineFigures>;
