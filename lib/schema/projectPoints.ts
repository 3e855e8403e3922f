import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { typedNumber } from "@/lib/schema/typedNumber";

const words = (most: number) => z.string().trim().max(most, `Use at most ${most} characters.`);
const must = (most: number, missing: string) => words(most).min(1, missing);
const maybeDay = z
  .union([z.literal(""), z.string().refine(isIsoDate)], "Write a day that exists, as 2026-11-30.")
  .transform((text) => (text === "" ? null : text));

const pointFields = {
  what: must(300, "Say what is open."),
  owner: must(80, "Say who does it, by function."),
  dueOn: maybeDay,
  blocks: z.boolean(),
};
const point = { pointId: z.uuid(), version: z.int().positive() };

export const addPoint = z.strictObject({ projectId: z.uuid(), ...pointFields });
export const changePoint = z.strictObject({ ...point, ...pointFields });
/** Done today, or open again. */
export const settlePoint = z.strictObject({ ...point, done: z.boolean() });
export const dropPoint = z.strictObject(point);

/** Percent as typed, with a point or a comma; empty is not estimated. */
const percent = typedNumber
  .pipe(
    z.string().regex(/^((100(\.0)?|\d{1,2}(\.\d)?))?$/, "Write percent from 0 to 100, or leave it empty."),
  )
  .transform((text) => (text === "" ? null : Number(text) / 100));
const amount = typedNumber
  .pipe(z.string().regex(/^(\d{1,12}(\.\d{1,2})?)?$/, "Write an amount such as 120000, or leave it empty."))
  .transform((text) => (text === "" ? null : text));

const riskFields = {
  what: must(300, "Say what may happen."),
  chanceLow: percent,
  chanceHigh: percent,
  effectLow: amount,
  effectHigh: amount,
  action: words(300),
  owner: words(80),
  state: z.enum(["open", "happened", "over"]),
};

interface Ranges {
  readonly chanceLow: number | null;
  readonly chanceHigh: number | null;
  readonly effectLow: string | null;
  readonly effectHigh: string | null;
}

/** A range has both ends, the low one not above the high one. */
function twoEnds(given: Ranges, context: z.RefinementCtx): void {
  const pairs = [
    ["chanceHigh", given.chanceLow, given.chanceHigh],
    ["effectHigh", given.effectLow, given.effectHigh],
  ] as const;
  for (const [field, low, high] of pairs) {
    const refuse = (message: string) => context.addIssue({ code: "custom", path: [field], message });
    if ((low === null) !== (high === null)) refuse("Write both ends of the range, or neither.");
    else if (low !== null && Number(low) > Number(high)) refuse("The low end lies above the high one.");
  }
}

const risk = { riskId: z.uuid(), version: z.int().positive() };

export const addRisk = z.strictObject({ projectId: z.uuid(), ...riskFields }).superRefine(twoEnds);
export const changeRisk = z.strictObject({ ...risk, ...riskFields }).superRefine(twoEnds);
export const dropRisk = z.strictObject(risk);

export type AddPoint = z.output<typeof addPoint>;
export type ChangePoint = z.output<typeof changePoint>;
export type SettlePoint = z.output<typeof settlePoint>;
export type DropPoint = z.output<typeof dropPoint>;
export type AddRisk = z.output<typeof addRisk>;
export type ChangeRisk = z.output<typeof changeRisk>;
export type DropRisk = z.output<typeof dropRisk>;
