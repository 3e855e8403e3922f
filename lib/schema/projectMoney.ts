import { z } from "zod";
import { isCurrency } from "@/lib/kernel/currency";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { costClasses } from "@/lib/schema/costClass";
import { typedNumber } from "@/lib/schema/typedNumber";

export const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30.");

/** An amount as it is typed; how many places its currency has is checked where the currency is known. */
const amount = typedNumber.pipe(
  z.string().regex(/^-?\d{1,12}(\.\d{1,4})?$/, "Write an amount such as 610000."),
);
export const positive = amount.refine((text) => Number(text) > 0, "Write an amount above 0.");
const notNegative = amount.refine((text) => Number(text) >= 0, "Write 0 or an amount above it.");
const notZero = amount.refine((text) => Number(text) !== 0, "Write an amount other than 0.");
export const words = (most: number, missing: string) =>
  z.string().trim().min(1, missing).max(most, `Use at most ${most} characters.`);

const currency = z.string().refine(isCurrency, "Write a code of ISO 4217, such as EUR.");
const costClass = z.enum(costClasses);
const onceEach = (list: readonly { readonly costClass: string }[]) =>
  new Set(list.map((one) => one.costClass)).size === list.length;
const ONCE = "Name each class once.";

export const addCost = z
  .strictObject({
    projectId: z.uuid(),
    kind: z.enum(["committed", "actual"]),
    /** In `currency`. */
    amount: positive,
    /** Null is the project's. */
    currency: currency.nullable(),
    spentOn: day,
    text: words(200, "Say what the money is for."),
    reference: words(60, "Write the number in the ledger or order book."),
    costClass: costClass.nullable(),
    /** Order an invoice is for; null is not known. */
    orderReference: z.string().trim().max(60, "Use at most 60 characters.").nullable(),
  })
  .refine(({ kind, orderReference }) => kind === "actual" || orderReference === null, {
    path: ["orderReference"],
    message: "Only a payment is for an order; an order has a number of its own.",
  });

export const removeCost = z.strictObject({ projectId: z.uuid(), costId: z.uuid() });

/** The original budget by class, said once. */
export const splitBudget = z.strictObject({
  projectId: z.uuid(),
  items: z
    .array(z.strictObject({ costClass, amount: notNegative }))
    .min(1)
    .refine(onceEach, ONCE),
});

/** What a class still needs: what the person saw, and what should stand instead; null is not stated. */
export const stateRest = z.strictObject({
  projectId: z.uuid(),
  costClass,
  seen: notNegative.nullable(),
  wanted: notNegative.nullable(),
});

export const askChange = z.strictObject({
  projectId: z.uuid(),
  what: words(120, "Say what is to change."),
  why: words(600, "Say why."),
  source: z.enum(["contingency", "new_money"]),
  amounts: z
    .array(z.strictObject({ costClass, amount: notZero }))
    .min(1, "Name the class and the money.")
    .refine(onceEach, ONCE),
});

export const decideChange = z
  .strictObject({
    projectId: z.uuid(),
    changeId: z.uuid(),
    version: z.int().positive(),
    /** `asked` opens a decision again. */
    state: z.enum(["asked", "approved", "declined"]),
    why: z.string().trim().max(400, "Use at most 400 characters."),
  })
  .refine(({ state, why }) => state !== "declined" || why !== "", {
    path: ["why"],
    message: "Say why it is declined.",
  });

export const withdrawChange = z.strictObject({
  projectId: z.uuid(),
  changeId: z.uuid(),
  version: z.int().positive(),
});

const rate = typedNumber
  .pipe(
    z.string().regex(/^\d{1,11}(\.\d{1,6})?$/, "Write units of the currency for one euro, such as 11.30."),
  )
  .refine((text) => Number(text) > 0, "Write a rate above 0.");

/** The rate of a month: what the person saw (null is none), and what should stand instead (null takes it away). */
export const setMonthRate = z.strictObject({
  currency: currency.refine((code) => code !== "EUR", "The euro is what rates are counted in."),
  month: z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/, "Write a month, as 2026-11."),
  seen: rate.nullable(),
  wanted: z.strictObject({ perEuro: rate, source: words(120, "Say where the rate comes from.") }).nullable(),
});

/** A file of orders and invoices, or pasted text, read again and taken over as a whole. */
export const takeBackCosts = z.strictObject({ projectId: z.uuid(), importId: z.uuid() });

export type AddCost = z.output<typeof addCost>;
export type RemoveCost = z.output<typeof removeCost>;
export type SplitBudget = z.output<typeof splitBudget>;
export type StateRest = z.output<typeof stateRest>;
export type AskChange = z.output<typeof askChange>;
export type DecideChange = z.output<typeof decideChange>;
export type WithdrawChange = z.output<typeof withdrawChange>;
export type SetMonthRate = z.output<typeof setMonthRate>;
export type TakeBackCosts = z.output<typeof takeBackCosts>;
