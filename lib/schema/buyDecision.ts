import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

const year = z
  .int("Write a year.")
  .min(2000, "Write a year from 2000 on.")
  .max(2099, "Write a year up to 2099.");
const words = (most: number, missing: string) =>
  z.string().trim().min(1, missing).max(most, `Use at most ${most} characters.`);

/** What a sheet is worked out for. */
export const buyChoice = z.strictObject({
  sharing: z.enum(["part", "family", "site"]),
  repaired: z.boolean(),
  slipYears: z.union([z.literal(0), z.literal(1), z.literal(2)]),
  /** A level of service for every part; null follows the costs. */
  level: z.number().min(0.5, "At least 50 %.").max(0.9999, "At most 99.99 %.").nullable(),
  /** Supposed retrofit years by line code. */
  planYears: z.record(z.string().max(40), year),
});

/** A choice as it stands in an address; what cannot be read is the sheet's first choice. */
export function readBuyChoice(text: string | null): BuyChoice {
  try {
    return buyChoice.parse(JSON.parse(text ?? ""));
  } catch {
    return FIRST_CHOICE;
  }
}

/** A decision to buy, as a person puts it. */
export const keepDecision = z.strictObject({
  familyId: z.uuid(),
  choice: buyChoice,
  /** What the figures were computed on when the person saw them. */
  dataVersion: z.int(),
  /** The decision that stood when the person saw the sheet; null is none. */
  supersedes: z.uuid().nullable(),
  quantities: z
    .array(
      z.strictObject({
        ...{ partId: z.uuid(), siteId: z.uuid() },
        quantity: z.int("Write whole pieces.").min(0, "Write 0 or more.").max(100_000, "At most 100000."),
      }),
    )
    .max(2000),
  orderBy: z.union([
    z.literal("").transform(() => null),
    z.string().refine(isIsoDate, "Write a day that exists."),
  ]),
  names: words(300, "Name who decided."),
  reason: words(2000, "Say why it is this many."),
});

export type BuyChoice = z.output<typeof buyChoice>;
export type KeepDecision = z.output<typeof keepDecision>;
export type TypedDecision = z.input<typeof keepDecision>;

export const FIRST_CHOICE: BuyChoice = {
  ...{ sharing: "part", repaired: true, slipYears: 0, level: null },
  planYears: {},
};
