import { z } from "zod";

const hours = z
  .string()
  .trim()
  .regex(/^(\d{1,5}([.,]\d{1,2})?)?$/, "Write hours such as 3.5, or leave it empty.")
  .transform((text) => (text === "" ? null : Number(text.replace(",", "."))));

const words = (most: number) => z.string().trim().max(most, `Use at most ${most} characters.`);

/** A unit that left its place, as told at the machine. */
export const captureEvent = z
  .strictObject({
    positionId: z.uuid(),
    kind: z.enum(["failure", "no_fault_found", "removal"]),
    /** On the site's own clock. */
    happenedAt: z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, "Write the day and the time."),
    downtimeHours: hours,
    /** Of these, waiting for an item. */
    logisticHours: hours,
    spareAtHand: z.enum(["", "yes", "no"]).transform((said) => (said === "" ? null : said === "yes")),
    /** Where the unit that was taken out goes. */
    unitOut: z.enum(["repair", "shelf", "scrap"]),
    /** Bin it is put in, when it goes to the shelf. */
    binOut: words(40),
    /** Serial of the unit put in; empty is not read. */
    serialIn: words(60),
    revisionIn: words(20),
    /** Stock the unit put in was taken from; empty is none of the recorded ones. */
    lotId: z.union([z.uuid(), z.literal("")]).transform((id) => (id === "" ? null : id)),
    text: words(400),
    /** The person has seen the events close by and means another one. */
    sure: z.boolean(),
  })
  .refine(({ downtimeHours, logisticHours }) => (logisticHours ?? 0) <= (downtimeHours ?? Infinity), {
    path: ["logisticHours"],
    message: "The waiting cannot be longer than the stop.",
  })
  .refine(({ unitOut, binOut }) => unitOut !== "shelf" || binOut !== "", {
    path: ["binOut"],
    message: "Say which bin it lies in.",
  });

export const undoEvent = z.strictObject({ eventId: z.uuid() });

/** What a capture did besides the event, kept with its audit entry so that it can be taken back. */
export const captureSteps = z.object({
  ended: z.uuid().nullable(),
  placed: z.uuid().nullable(),
  unitMade: z.uuid().nullable(),
  taken: z.uuid().nullable(),
  given: z.uuid().nullable(),
  repair: z.uuid().nullable(),
});

export type CaptureEvent = z.output<typeof captureEvent>;
export type TypedEvent = z.input<typeof captureEvent>;
export type UndoEvent = z.output<typeof undoEvent>;
export type CaptureSteps = z.output<typeof captureSteps>;
