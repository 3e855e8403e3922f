import { z } from "zod";
import { stockState } from "@/lib/schema/stockLot";

/** What of a lot a change by hand may move; days as text. */
const lotSide = z.strictObject({
  state: stockState,
  quantity: z.number().int().nullable(),
  lastPoweredOn: z.string().nullable(),
  countedOn: z.string().nullable(),
  originUnknown: z.boolean(),
  testedOn: z.string().nullable(),
  note: z.string().nullable(),
});

/** One lot before and after a change, kept with what changed it so that it can be taken back. */
export const lotStep = z.strictObject({
  lotId: z.uuid(),
  partId: z.uuid(),
  /** Null is made by the change. */
  before: lotSide.nullable(),
  after: lotSide,
});

/** Everything a change did to the shelf: the lots it moved and the holds it set. */
export const shelfSteps = z.strictObject({ lots: z.array(lotStep), holds: z.array(z.uuid()) });

export type LotSide = z.output<typeof lotSide>;
export type ShelfSteps = z.output<typeof shelfSteps>;
export type LotStep = z.output<typeof lotStep>;
