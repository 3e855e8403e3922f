import { z } from "zod";

const id = z.uuid();

const customs = z.strictObject({
  decimalMark: z.enum(["point", "comma"]).optional(),
  dateOrder: z.enum(["dayFirst", "monthFirst"]).optional(),
  quantityBasis: z.union([z.enum(["total", "perMachine"]), z.templateLiteral(["sets:", z.int()])]).optional(),
});

function hasRepeats(fields: readonly (string | null)[]): boolean {
  const chosen = fields.filter((field) => field !== null);
  return new Set(chosen).size < chosen.length;
}

/** How a person says the file is to be read; what is left out is found from the file. */
export const readingChoice = z.strictObject({
  sheet: z.string().max(100).optional(),
  encoding: z.enum(["utf-8", "utf-16le", "utf-16be", "windows-1250", "windows-1252"]).optional(),
  separator: z.enum([";", ",", "\t", "|"]).optional(),
  headerRow: z.int().positive().max(1_048_576).optional(),
  headerLines: z.union([z.literal(1), z.literal(2)]).optional(),
});

/** Which column is which field, and what a person said about numbers and dates where the file does not tell. */
export const chooseReading = z.strictObject({
  batchId: id,
  mapping: z
    .record(z.string(), z.string().nullable())
    .refine((mapping) => !hasRepeats(Object.values(mapping)), "A field can be read from one column only."),
  answers: customs,
  /** Without it the file is read as before; with it the columns may be others, and their fields are proposed anew. */
  reading: readingChoice.optional(),
});

/** Takes a staged file over without the rows left out. */
export const commitBatch = z.strictObject({
  batchId: id,
  leftOut: z.array(z.int().positive()).max(1_000_000),
});

/** A file by its number. */
export const whichBatch = z.strictObject({ batchId: id });

/** Takes a committed file back. */
export const undoBatch = z.strictObject({ batchId: id });

/** Drops a staged file nobody took over. */
export const discardBatch = z.strictObject({ batchId: id });

export type ChooseReading = z.output<typeof chooseReading>;
export type CommitBatch = z.output<typeof commitBatch>;
export type WhichBatch = z.output<typeof whichBatch>;
export type UndoBatch = z.output<typeof undoBatch>;
export type DiscardBatch = z.output<typeof discardBatch>;
