import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { typedNumber } from "@/lib/schema/typedNumber";

const words = (most: number) => z.string().trim().max(most, `Use at most ${most} characters.`);
const aDay = z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30.");
const maybeDay = z
  .union([z.literal(""), aDay], "Write a day that exists, as 2026-11-30.")
  .transform((text) => (text === "" ? null : text));
const orNull = (most: number) => words(most).transform((text) => (text === "" ? null : text));

/** Decimal text as typed, with a point or a comma. */
const amount = typedNumber
  .pipe(
    z
      .string()
      .regex(/^(\d{1,10}(\.\d{1,2})?)?$/, "Write an amount such as 480 or 480.50, or leave it empty."),
  )
  .transform((text) => (text === "" ? null : text));

/** What may be corrected while a unit is out. */
const outFields = {
  repairer: orNull(80),
  fault: orNull(300),
  /** Empty is not promised; then the part's usual turn-around stands. */
  dueOn: maybeDay,
};

/** Sends a unit out: a piece of a recorded lot, or one that lies in none. */
export const sendUnit = z
  .strictObject({
    ...outFields,
    lotId: z.union([z.uuid(), z.literal("")]).transform((id) => (id === "" ? null : id)),
    siteId: z.union([z.uuid(), z.literal("")]),
    plate: words(60),
    serial: orNull(60),
    reference: words(40),
    sentOn: aDay,
  })
  .refine(({ lotId, siteId }) => lotId !== null || siteId !== "", {
    path: ["siteId"],
    message: "Choose the site, or the lot it is taken from.",
  })
  .refine(({ lotId, plate }) => lotId !== null || plate !== "", {
    path: ["plate"],
    message: "Write the number on the plate, or choose the lot it is taken from.",
  })
  .refine(({ sentOn, dueOn }) => dueOn === null || dueOn >= sentOn, {
    path: ["dueOn"],
    message: "It cannot be promised for before it was sent.",
  });

const order = { orderId: z.uuid(), version: z.int().positive() };

export const changeRepair = z.strictObject({ ...order, ...outFields });

/** A unit that came back, and where it goes; "none" goes nowhere. */
export const receiveUnit = z
  .strictObject({
    ...order,
    returnedOn: aDay,
    finding: z.enum(["repaired", "no fault found", "beyond repair"], "Choose what was found."),
    bookAs: z.enum(["usable", "unproven", "beyond_repair", "none"], "Choose what it is booked as."),
    bin: words(40),
    revision: words(20),
    cost: amount,
    costCurrency: z.string().regex(/^([A-Z]{3})?$/, "Write the currency as EUR or PLN."),
    warrantyUntilOn: maybeDay,
    note: orNull(300),
  })
  .refine(({ finding, bookAs }) => (finding === "beyond repair") === /^(beyond_repair|none)$/.test(bookAs), {
    path: ["bookAs"],
    message: "A unit beyond repair is no spare; a repaired one is booked as usable or unproven.",
  })
  .refine(({ bookAs, bin }) => bookAs === "none" || bin !== "", {
    path: ["bin"],
    message: "Say which bin it lies in.",
  })
  .refine(({ cost, costCurrency }) => cost === null || costCurrency !== "", {
    path: ["costCurrency"],
    message: "Say in which currency.",
  });

export const undoRepair = z.strictObject(order);

export type SendUnit = z.output<typeof sendUnit>;
export type ChangeRepair = z.output<typeof changeRepair>;
export type ReceiveUnit = z.output<typeof receiveUnit>;
export type UndoRepair = z.output<typeof undoRepair>;
