import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

/** The day a snapshot is to be of. */
export const takeSnapshot = z.strictObject({
  asOf: z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30."),
});
