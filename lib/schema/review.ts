import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2027-09-30.");
const words = (most: number, missing: string) =>
  z.string().trim().min(1, missing).max(most, `Use at most ${most} characters.`);

const review = { reviewId: z.uuid() };

export const openReview = z.strictObject({ siteId: z.uuid("Choose a site.") });
export const dropReview = z.strictObject(review);
/** Freezes what is shown; the data version is that of the page the meeting looked at. */
export const closeReview = z.strictObject({ ...review, dataVersion: z.int().nonnegative() });

/** What is written on a topic; the version is the one the person saw, 0 for none. */
export const setReviewNote = z.strictObject({
  ...review,
  topic: z.enum(["attendees", "worse", "dates", "shelf", "decisions"]),
  version: z.int().nonnegative(),
  text: z.string().max(1_200, "Use at most 1200 characters."),
});

const action = z.strictObject({
  text: words(300, "Say what is to be done."),
  partId: z.uuid().nullable(),
  lineId: z.uuid().nullable(),
  ownerId: z.string().min(1, "Choose who does it.").max(64),
  dueOn: day,
});

const whichAction = { actionId: z.uuid(), version: z.int().positive() };

export const addAction = action.extend({ siteId: z.uuid("Choose a site.") });
export const changeAction = action.extend(whichAction);
/** Settles an action or opens it again; only a dropped one has a reason. */
export const settleAction = z
  .strictObject({
    ...whichAction,
    state: z.enum(["open", "done", "dropped"]),
    reason: z.string().trim().max(300, "Use at most 300 characters.").nullable(),
  })
  .refine(({ state, reason }) => (state === "dropped") === (reason !== null && reason !== ""), {
    message: "Say why it is dropped.",
    path: ["reason"],
  });
export const removeAction = z.strictObject(whichAction);

const buy = {
  quantity: z
    .int("Write a whole number of pieces.")
    .min(1, "Write at least 1.")
    .max(100_000, "At most 100000."),
  reason: words(300, "Say why it is bought."),
};

const whichBuy = { buyId: z.uuid(), version: z.int().positive() };

export const addBuy = z.strictObject({ ...review, partId: z.uuid("Choose a part."), ...buy });
export const changeBuy = z.strictObject({ ...whichBuy, ...buy });
export const removeBuy = z.strictObject(whichBuy);

export type OpenReview = z.output<typeof openReview>;
export type DropReview = z.output<typeof dropReview>;
export type CloseReview = z.output<typeof closeReview>;
export type SetReviewNote = z.output<typeof setReviewNote>;
export type AddAction = z.output<typeof addAction>;
export type ChangeAction = z.output<typeof changeAction>;
export type SettleAction = z.output<typeof settleAction>;
export type RemoveAction = z.output<typeof removeAction>;
export type AddBuy = z.output<typeof addBuy>;
export type ChangeBuy = z.output<typeof changeBuy>;
export type RemoveBuy = z.output<typeof removeBuy>;
