import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2027-06-30.");
const words = (most: number, missing: string) =>
  z.string().trim().min(1, missing).max(most, `Use at most ${most} characters.`);

/** Somebody accepts to leave a line as it is until a day. */
export const acceptRisk = z.strictObject({
  lineId: z.uuid(),
  acceptedBy: words(120, "Say who accepts it: a function, not a person's name."),
  until: day,
  reason: words(400, "Say why the line is left as it is."),
});

export const endAcceptance = z.strictObject({ acceptanceId: z.uuid(), version: z.int().positive() });
/** Takes back the end of an acceptance. */
export const reopenAcceptance = endAcceptance;

export type AcceptRisk = z.output<typeof acceptRisk>;
export type EndAcceptance = z.output<typeof endAcceptance>;
