import { z } from "zod";

const reason = z.string().trim().max(300, "Use at most 300 characters.");

/** What somebody decides of a finding, told by its mark: what it is about and what both sides said. */
export const settleSighting = z
  .strictObject({
    siteId: z.uuid(),
    mark: z.string().min(1).max(20_000),
    answer: z.enum(["taken", "kept", "retired"]),
    reason,
  })
  .refine(({ answer, reason: why }) => answer === "taken" || why.length >= 3, {
    path: ["reason"],
    message: "Write why, in a few words.",
  });

export const takeVerdictBack = z.strictObject({ verdictId: z.uuid() });

/** Takes a machine out of service from a day on; what was seen is the day on the page, null in service. */
export const retireMachine = z.strictObject({
  machineId: z.uuid(),
  reason: reason.min(3, "Write why, in a few words."),
  seen: z.null(),
});

/** Puts a machine back into service. */
export const restoreMachine = z.strictObject({ machineId: z.uuid(), seen: z.string() });

export type SettleSighting = z.output<typeof settleSighting>;
export type TakeVerdictBack = z.output<typeof takeVerdictBack>;
export type RetireMachine = z.output<typeof retireMachine>;
export type RestoreMachine = z.output<typeof restoreMachine>;
