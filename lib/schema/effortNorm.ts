import { z } from "zod";

/** Hours one piece of mending takes; empty goes back to common practice. What was seen is the version on the page. */
export const setEffortNorm = z.strictObject({
  gap: z.string().regex(/^[a-z-]{1,40}$/),
  hours: z
    .string()
    .trim()
    .refine(
      (text) => text === "" || /^\d{1,3}([.,]\d{1,2})?$/.test(text),
      "Write hours as 0.5, or leave it empty.",
    )
    .transform((text) => (text === "" ? null : Number(text.replace(",", "."))))
    .refine((hours) => hours === null || hours > 0, "Write more than 0 hours."),
  /** Null is nobody had set it. */
  seen: z.number().int().nullable(),
});

export type SetEffortNorm = z.output<typeof setEffortNorm>;
