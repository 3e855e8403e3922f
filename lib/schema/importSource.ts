import { z } from "zod";

const name = z.string().trim().min(1, "Give the system a name.").max(80, "Use at most 80 characters.");

/** Says which system a staged file comes from: one on record, a new one, or none. */
export const chooseSource = z.strictObject({
  batchId: z.uuid(),
  source: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("none") }),
    z.strictObject({ kind: z.literal("known"), sourceId: z.uuid() }),
    z.strictObject({ kind: z.literal("new"), name, siteId: z.uuid().nullable() }),
  ]),
});

/** Teaches what a source means by a word. */
export const teachWord = z.strictObject({
  sourceId: z.uuid(),
  kind: z.enum(["line", "machine", "choice", "text"]),
  within: z.string().max(200),
  written: z.string().trim().min(1).max(200),
  meaning: z.string().trim().min(1, "Choose what it means.").max(200),
});

export const forgetWord = z.strictObject({ wordId: z.uuid() });

/** Sets the words and values a source writes for nothing known; null is the product's own list. */
export const setNullWords = z.strictObject({
  sourceId: z.uuid(),
  register: z.string().max(40),
  /** The version the person saw. */
  version: z.int().positive(),
  nullWords: z.array(z.string().trim().min(1).max(60)).max(200).nullable(),
});

export type ChooseSource = z.output<typeof chooseSource>;
export type TeachWord = z.output<typeof teachWord>;
export type ForgetWord = z.output<typeof forgetWord>;
export type SetNullWords = z.output<typeof setNullWords>;
