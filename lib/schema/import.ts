import { z } from "zod";

const id = z.uuid();

const customs = z.strictObject({
  decimalMark: z.enum(["point", "comma"]).optional(),
  dateOrder: z.enum(["dayFirst", "monthFirst"]).optional(),
});

/** Which column is which field, and how the file writes numbers and dates. */
export const chooseReading = z.strictObject({
  batchId: id,
  mapping: z.record(z.string(), z.string().nullable()),
  dialect: z.strictObject({
    decimalMark: z.enum(["point", "comma"]),
    dateOrder: z.enum(["dayFirst", "monthFirst"]),
    columns: z.record(z.string(), customs),
  }),
});

/** Takes a staged file over without the rows left out. */
export const commitBatch = z.strictObject({
  batchId: id,
  leftOut: z.array(z.int().positive()).max(1_000_000),
});

/** Takes a committed file back. */
export const undoBatch = z.strictObject({ batchId: id });

export type ChooseReading = z.output<typeof chooseReading>;
export type CommitBatch = z.output<typeof commitBatch>;
export type UndoBatch = z.output<typeof undoBatch>;
