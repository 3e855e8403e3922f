import { z } from "zod";
import { TRANSFER_STEPS } from "@/lib/schema/transferSteps";

const pieces = z
  .number("Write how many pieces.")
  .int("Write a whole number of pieces.")
  .min(1, "Write 1 or more pieces.")
  .max(10_000, "Write at most 10000 pieces.");

/** Asks a site for pieces of one of its lots, for another site. */
export const askTransfer = z.strictObject({ lotId: z.uuid(), toSiteId: z.uuid(), pieces });

/** A step of a transfer; `bin` where pieces are put when received, `reason` why they are refused. */
export const stepTransfer = z
  .strictObject({
    transferId: z.uuid(),
    step: z.enum(TRANSFER_STEPS),
    reason: z.string().trim().max(400, "Write at most 400 characters.").default(""),
    bin: z.string().trim().max(60, "Write at most 60 characters.").default(""),
  })
  .refine(({ step, reason }) => step !== "refuse" || reason !== "", {
    path: ["reason"],
    message: "Say why the pieces stay, so that the other site can act on it.",
  })
  .refine(({ step, bin }) => step !== "receive" || bin !== "", {
    path: ["bin"],
    message: "Write the bin the pieces lie in now.",
  });

export type AskTransfer = z.output<typeof askTransfer>;
export type StepTransfer = z.output<typeof stepTransfer>;
