import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { stockState } from "@/lib/schema/stockLot";
import { readWhole } from "@/lib/schema/whole";

const words = (most: number) => z.string().trim().max(most, `Use at most ${most} characters.`);
const aDay = z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30.");

/** A lot as the person saw it: nothing is written over what somebody changed since. */
const seenLot = {
  lotId: z.uuid(),
  seen: z.strictObject({
    state: stockState,
    quantity: z.number().int().nullable(),
    lastPoweredOn: z.string().nullable(),
  }),
};

/** Care given to all pieces of a lot. */
export const recordCare = z.strictObject({
  ...seenLot,
  doneOn: aDay,
  doneBy: words(80).min(1, "Write who did it."),
  failed: readWhole("pieces", 100_000).transform((pieces) => pieces ?? 0),
  /** They ran under load: unproven pieces become usable. */
  tested: z.boolean(),
  note: words(300),
});

export const undoCare = z.strictObject({ careId: z.uuid() });

const itemClass = z.enum([
  "drive",
  "motor",
  "controller",
  "power_supply",
  "io",
  "hmi",
  "converter",
  "network_card",
]);

/** How often a class needs care; empty months need none. What was seen is what stood on the page. */
export const setCareInterval = z.strictObject({
  itemClass,
  kind: z.enum(["power_up", "battery"]),
  everyMonths: readWhole("months", 240).refine(
    (months) => months !== 0,
    "Write 1 or more, or leave it empty.",
  ),
  seen: z.strictObject({
    kind: z.enum(["power_up", "battery"]),
    everyMonths: z.number().int().nullable(),
  }),
});

const pieces = readWhole("pieces", 100_000).pipe(
  z.number("Write how many pieces.").positive("Write at least 1 piece."),
);
const why = words(200).min(3, "Write why, in a few words.");

/** Puts pieces of a lot on hold. */
export const holdPieces = z.strictObject({ ...seenLot, pieces, reason: why });

/** Lets pieces on hold go. */
export const releasePieces = z.strictObject({
  ...seenLot,
  pieces,
  releaseAs: z.enum(["usable", "unproven", "beyond_repair"], "Choose what they are."),
  reason: why,
});

export type RecordCare = z.output<typeof recordCare>;
export type UndoCare = z.output<typeof undoCare>;
export type SetCareInterval = z.output<typeof setCareInterval>;
export type HoldPieces = z.output<typeof holdPieces>;
export type ReleasePieces = z.output<typeof releasePieces>;
export type SeenLot = Pick<HoldPieces, "lotId" | "seen">;
