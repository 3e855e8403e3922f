import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { why } from "@/lib/schema/why";

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30.").nullable();

export const stockState = z.enum(
  ["usable", "unproven", "wrong_revision", "on_hold", "reserved", "removed_untested", "beyond_repair"],
  "Choose the state.",
);

/** The figures of a stock lot as they stand in the store; null is not known. */
export const stockLotFigures = z.strictObject({
  state: stockState,
  quantity: z
    .number("Write a whole number of pieces, or leave it empty.")
    .int("Write a whole number of pieces.")
    .min(0, "Write 0 or more pieces.")
    .max(100_000, "Write at most 100000 pieces.")
    .nullable(),
  lastPoweredOn: day,
  countedOn: day,
});

const lotThatHolds = stockLotFigures.refine((lot) => lot.quantity !== null || lot.countedOn === null, {
  path: ["quantity"],
  message: "A counted lot has a number of pieces; without one, leave the day of the count empty.",
});

/** A change of a stock lot: what the person saw, and what should stand instead. */
export const changeStockLot = z.strictObject({
  lotId: z.uuid(),
  seen: stockLotFigures,
  wanted: lotThatHolds,
  why,
});

export type ChangeStockLot = z.output<typeof changeStockLot>;
