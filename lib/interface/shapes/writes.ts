import { z } from "zod";
import { decimal, id } from "@/lib/interface/shapes/values";
import { stockLotFigures } from "@/lib/schema/stockLot";

/** An event as another system tells it; the same rules hold as on the screen. */
export const toldEvent = z.strictObject({
  positionId: id.describe("The place, from the list of units."),
  kind: z.enum(["failure", "no_fault_found", "removal"]),
  happenedAt: z
    .string()
    .regex(
      /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/,
      "Write the day and the time by the site's clock, as 2026-11-30T06:40.",
    )
    .describe("By the clock of the site."),
  downtimeHours: decimal.nullable().default(null).describe("Null is not known."),
  logisticHours: decimal.nullable().default(null).describe("Of these, waiting for an item."),
  spareAtHand: z.boolean().nullable().default(null),
  unitOut: z.enum(["repair", "shelf", "scrap"]).describe("Where the unit that was taken out goes."),
  binOut: z.string().default("").describe("Bin it is put in, when it goes to the shelf."),
  serialIn: z.string().default("").describe("Serial of the unit put in; empty is not read."),
  revisionIn: z.string().default(""),
  stockLotId: id.nullable().default(null).describe("Stock the unit put in was taken from."),
  text: z.string().default(""),
  sure: z.boolean().default(false).describe("Another event within three days at the place is another one."),
});

export const keptEvent = z.strictObject({ eventId: id, reference: z.string() });

/** A stock lot as the caller last read it, and as it should stand. */
export const changedLot = z.strictObject({
  seen: stockLotFigures.describe("As last read; refused when it stands otherwise meanwhile."),
  wanted: stockLotFigures,
});

export const importHead = z.strictObject({
  id,
  register: z.string(),
  fileName: z.string(),
  state: z.enum(["staged", "committed", "undone"]),
  counts: z
    .strictObject({ added: z.int(), changed: z.int(), unchanged: z.int(), refused: z.int() })
    .describe("Things; zero until it is loaded."),
  createdAt: z.iso.datetime(),
  committedAt: z.iso.datetime().nullable(),
  undoneAt: z.iso.datetime().nullable(),
});

export const stagedImport = z.strictObject({ batchId: id });

export const wantedCommit = z.strictObject({
  leftOut: z
    .array(z.int().positive())
    .max(1_000_000)
    .default([])
    .describe("Rows to leave out, as a spreadsheet numbers them."),
});

export const loaded = z.strictObject({
  added: z.int(),
  changed: z.int(),
  unchanged: z.int(),
  refused: z.int().describe("Rows that stayed outside because of an error."),
});

/** A change that has nothing to tell. */
export const done = z.strictObject({ done: z.literal(true) });

/** RFC 9457 problem details, with the fields and what to do. */
export const problem = z.strictObject({
  type: z.string().describe("What kind of problem, as an address of this interface's page."),
  title: z.string(),
  status: z.int(),
  detail: z.string().describe("What is wrong and what to do."),
  fields: z
    .array(z.strictObject({ field: z.string(), got: z.string(), cure: z.string() }))
    .describe("Each field that cannot be used, with what came and what would do."),
});

export type Problem = z.output<typeof problem>;
