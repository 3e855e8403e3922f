import { z } from "zod";

const id = z.uuid();

const customs = z.strictObject({
  decimalMark: z.enum(["point", "comma"]).optional(),
  dateOrder: z.enum(["dayFirst", "monthFirst"]).optional(),
});

function hasRepeats(fields: readonly (string | null)[]): boolean {
  const chosen = fields.filter((field) => field !== null);
  return new Set(chosen).size < chosen.length;
}

/** Which column is which field, and what a person said about numbers and dates where the file does not tell. */
export const chooseReading = z.strictObject({
  batchId: id,
  mapping: z
    .record(z.string(), z.string().nullable())
    .refine((mapping) => !hasRepeats(Object.values(mapping)), "A field can be read from one column only."),
  answers: customs,
});

/** Takes a staged file over without the rows left out. */
export const commitBatch = z.strictObject({
  batchId: id,
  leftOut: z.array(z.int().positive()).max(1_000_000),
});

/** Takes a committed file back. */
export const undoBatch = z.strictObject({ batchId: id });

/** Drops a staged file nobody took over. */
export const discardBatch = z.strictObject({ batchId: id });

export type ChooseReading = z.output<typeof chooseReading>;
export type CommitBatch = z.output<typeof commitBatch>;
export type UndoBatch = z.output<typeof undoBatch>;
export type DiscardBatch = z.output<typeof discardBatch>;
