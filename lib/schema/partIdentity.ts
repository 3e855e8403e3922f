import { z } from "zod";

const reason = z.string().trim().min(1, "Say how you know.").max(400, "Use at most 400 characters.");

/** Two parts that are one. `seen` is what the preview counted, so that nobody merges what was not looked at. */
export const mergeTwo = z
  .strictObject({ keptId: z.uuid(), otherId: z.uuid(), reason, seen: z.string().max(200) })
  .refine(({ keptId, otherId }) => keptId !== otherId, "Name two parts.");

export const unmergeOne = z.strictObject({ mergeId: z.uuid() });

/** What a person says of a number that files write. */
export const settleNumber = z
  .strictObject({
    written: z.string().trim().min(1).max(200),
    maker: z.string().trim().max(200),
    verdict: z.enum(["same", "other", "later"]),
    /** The part it is, or is not; null is none of those on record. */
    partId: z.uuid().nullable(),
    /** The site whose storeroom calls the part so; null is everywhere. */
    siteCode: z.string().trim().max(40).nullable(),
    reason: z.string().trim().max(400, "Use at most 400 characters."),
  })
  .refine(({ verdict, partId }) => verdict !== "same" || partId !== null, {
    message: "Choose the part it is.",
    path: ["partId"],
  })
  .refine(({ verdict, reason }) => verdict !== "same" || reason !== "", {
    message: "Say how you know.",
    path: ["reason"],
  });

/** Takes back that a number is another one of a part, or that it is not. */
export const takeNumberBack = z.strictObject({ id: z.uuid(), kind: z.enum(["alias", "verdict"]) });

export type MergeTwo = z.output<typeof mergeTwo>;
export type UnmergeOne = z.output<typeof unmergeOne>;
export type SettleNumber = z.output<typeof settleNumber>;
export type TakeNumberBack = z.output<typeof takeNumberBack>;
