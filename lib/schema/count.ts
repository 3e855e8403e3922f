import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { stockState } from "@/lib/schema/stockLot";
import { readWhole } from "@/lib/schema/whole";

const words = (most: number) => z.string().trim().max(most, `Use at most ${most} characters.`);

const day = z
  .string()
  .refine((text) => text === "" || isIsoDate(text), "Write a day that exists, as 2026-11-30.")
  .transform((text) => (text === "" ? null : text));

/** What is written of one line of a sheet; empty pieces are not counted yet. */
export const countEntry = z.strictObject({
  found: readWhole("pieces", 100_000),
  state: stockState,
  lastPoweredOn: day,
  tested: z.enum(["", "yes", "no"]).transform((said) => (said === "" ? null : said === "yes")),
  originUnknown: z.boolean(),
  holdReason: words(200),
  note: words(200),
});

/** Opens a sheet for a site, or for its bins that begin so. */
export const openCount = z.strictObject({
  siteId: z.uuid("Choose a site."),
  bins: words(40),
  blind: z.boolean(),
  limitEuro: readWhole("euro", 10_000_000).refine((limit) => limit !== null, "Write a limit, 0 or more."),
});

const count = { countId: z.uuid() };

/** One line; the version is the one the person saw. */
export const setCountLine = z.strictObject({
  ...count,
  lineId: z.uuid(),
  version: z.int().positive(),
  entry: countEntry,
});

/** Pieces found that no line of the sheet names. */
export const addCountLine = z.strictObject({
  ...count,
  plate: words(60).min(1, "Write the number on the plate, or what it is."),
  bin: words(40).min(1, "Say where it lies."),
  revision: words(20),
  entry: countEntry.refine(({ found }) => found !== null && found > 0, {
    path: ["found"],
    message: "Write how many you found, at least 1.",
  }),
});

export const dropCountLine = z.strictObject({ ...count, lineId: z.uuid(), version: z.int().positive() });

/** Approves or posts a count as it was seen: the sum of its lines' versions. */
export const settleCount = z.strictObject({ ...count, seen: z.int().nonnegative() });

export const oneCount = z.strictObject(count);

export type TypedCount = z.input<typeof countEntry>;
export type CountEntry = z.output<typeof countEntry>;
export type OpenCount = z.output<typeof openCount>;
export type SetCountLine = z.output<typeof setCountLine>;
export type AddCountLine = z.output<typeof addCountLine>;
export type DropCountLine = z.output<typeof dropCountLine>;
export type SettleCount = z.output<typeof settleCount>;
export type OneCount = z.output<typeof oneCount>;
