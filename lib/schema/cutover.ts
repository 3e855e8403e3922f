import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { typedNumber } from "@/lib/schema/typedNumber";

const words = (most: number) => z.string().trim().max(most, `Use at most ${most} characters.`);
const must = (most: number, missing: string) => words(most).min(1, missing);
const maybeDay = z
  .union([z.literal(""), z.string().refine(isIsoDate)], "Write a day that exists, as 2026-11-30.")
  .transform((text) => (text === "" ? null : text));

/** Cautions a step of a cutover can carry. */
export const cutoverCautions = [
  "lockout",
  "stored",
  "vertical",
  "first_motion",
  "validation",
  "backup",
] as const;

/** A reading of the site's clock, `2027-01-02T06:00`. */
const clock = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, "Write day and time, as 2027-01-02 06:00.")
  .refine((text) => isIsoDate(text.slice(0, 10)), "Write a day that exists, as 2027-01-02.")
  .refine((text) => text.slice(11) < "24:00" && text.slice(14) < "60", "Write a time such as 06:00.");
const maybeClock = z.union([z.literal(""), clock]).transform((text) => (text === "" ? null : text));

const someHours = typedNumber
  .pipe(z.string().regex(/^\d{1,4}(\.\d{1,2})?$/, "Write hours such as 4 or 4.5."))
  .transform(Number);
const maybeHours = z.union([z.literal("").transform(() => null), someHours]);

const cutoverFields = {
  name: must(80, "Say what people call this cutover."),
  startsAt: clock,
  productionAt: clock,
  restoreHours: maybeHours.refine((hours) => hours !== 0, "Putting the old system back takes time."),
  marginHours: maybeHours,
  restoreTestedOn: maybeDay,
  restoreTestedBy: words(80),
};

interface Times {
  readonly startsAt: string;
  readonly productionAt: string;
  readonly restoreHours: number | null;
  readonly restoreTestedOn: string | null;
  readonly restoreTestedBy: string;
}

function inOrder(given: Times, context: z.RefinementCtx): void {
  const refuse = (field: keyof Times, message: string) =>
    context.addIssue({ code: "custom", path: [field], message });
  if (given.productionAt <= given.startsAt) refuse("productionAt", "Production starts after the cutover.");
  if (given.restoreTestedOn === null) return;
  if (given.restoreTestedBy === "") refuse("restoreTestedBy", "Say who tried it, by function.");
  if (given.restoreHours === null) refuse("restoreHours", "Whoever tried it knows how long it took.");
}

const cutover = { cutoverId: z.uuid(), version: z.int().positive() };

/** `usual`: begin with the usual steps. */
export const addCutover = z
  .strictObject({ projectId: z.uuid(), usual: z.boolean(), ...cutoverFields })
  .superRefine(inOrder);
export const changeCutover = z.strictObject({ ...cutover, ...cutoverFields }).superRefine(inOrder);
export const dropCutover = z.strictObject(cutover);

const stepFields = {
  title: must(160, "Say what is done."),
  afterHours: someHours,
  hours: someHours.refine((hours) => hours > 0, "A step takes time: write more than 0."),
  who: words(80),
  phone: words(40),
  needs: words(200),
  caution: z.union([z.literal(""), z.enum(cutoverCautions)], "Choose a caution of the list."),
};
const step = { stepId: z.uuid(), version: z.int().positive() };

export const addStep = z.strictObject({ cutoverId: z.uuid(), ...stepFields });
export const changeStep = z.strictObject({ ...step, ...stepFields });
export const dropStep = z.strictObject(step);
/** When a step began and ended, by the site's clock; empty is not yet. */
export const clockStep = z
  .strictObject({ ...step, startedAt: maybeClock, endedAt: maybeClock })
  .refine(({ startedAt, endedAt }) => endedAt === null || startedAt !== null, {
    path: ["startedAt"],
    message: "A step that is over began at some time: write when.",
  })
  .refine(({ startedAt, endedAt }) => startedAt === null || endedAt === null || endedAt >= startedAt, {
    path: ["endedAt"],
    message: "It cannot be over before it began.",
  });

export type CutoverCaution = (typeof cutoverCautions)[number];
export type AddCutover = z.output<typeof addCutover>;
export type ChangeCutover = z.output<typeof changeCutover>;
export type DropCutover = z.output<typeof dropCutover>;
export type AddStep = z.output<typeof addStep>;
export type ChangeStep = z.output<typeof changeStep>;
export type DropStep = z.output<typeof dropStep>;
export type ClockStep = z.output<typeof clockStep>;
