import { z } from "zod";

/** What a person says of two records of events. */
export const settlePair = z
  .strictObject({
    /** The record that counts. */
    keptId: z.uuid(),
    otherId: z.uuid(),
    verdict: z.enum(["same", "different"]),
    reason: z.string().trim().min(1, "Say how you know.").max(400, "Use at most 400 characters."),
  })
  .refine(({ keptId, otherId }) => keptId !== otherId, "Name two records.");

export const partPair = z.strictObject({ matchId: z.uuid() });

export type SettlePair = z.output<typeof settlePair>;
export type PartPair = z.output<typeof partPair>;
