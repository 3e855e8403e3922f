import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { typedNumber } from "@/lib/schema/typedNumber";

/** What a planning figure states. */
export const PLAN_FIGURE_KINDS = [
  "budget",
  "site_cap",
  "reserve",
  "discount",
  "horizon",
  "engineer_weeks",
  "crews",
  "weekend_hours",
  "sign_off_above",
  "sign_off_weeks",
  "worth_per_euro",
  "duty_cost",
  "duty_hours",
  "duty_weeks",
] as const;

export type PlanFigureKind = (typeof PLAN_FIGURE_KINDS)[number];

const SHARES: readonly PlanFigureKind[] = ["site_cap", "reserve", "discount"];
const MONEY: readonly PlanFigureKind[] = ["budget", "sign_off_above", "duty_cost"];

/** Whether a figure is a share, typed in percent. */
export const isShare = (kind: PlanFigureKind): boolean => SHARES.includes(kind);
/** Whether a figure is money and needs a currency. */
export const isMoney = (kind: PlanFigureKind): boolean => MONEY.includes(kind);

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2027-08-02.");
const words = (most: number, missing: string) =>
  z.string().trim().min(1, missing).max(most, `Use at most ${most} characters.`);
const version = z.int().positive();
const number = typedNumber.pipe(
  z.string().regex(/^\d{1,12}(\.\d{1,4})?$/, "Write a number, such as 1900000 or 26.4."),
);
const said = {
  source: words(300, "Say where the figure comes from: letter, contract, minutes."),
  owner: words(120, "Say who answers for it: a function, not a person's name."),
};
const evidence = z.enum(["measured", "documented", "inferred", "assumed"]);

/** Which figure: what it states, where, and for which year. */
const which = z.strictObject({
  kind: z.enum(PLAN_FIGURE_KINDS),
  siteId: z.uuid().nullable(),
  regionId: z.uuid().nullable(),
  obligationId: z.uuid().nullable(),
  year: z.int().min(2000).max(2099).nullable(),
});

/** States a figure; `version` null says that there was none when the person looked. */
export const stateFigure = which
  .extend({
    /** As shown: percent for shares, amounts in the currency. */
    value: number,
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/, "Choose a currency.")
      .nullable(),
    ...said,
    evidence,
    version: version.nullable(),
  })
  .refine(({ kind, value }) => !isShare(kind) || Number(value) <= 100, {
    message: "A share is at most 100 %.",
    path: ["value"],
  })
  .refine(({ kind, currency }) => isMoney(kind) === (currency !== null), {
    message: "Choose a currency.",
    path: ["currency"],
  });

export const withdrawFigure = z.strictObject({ figureId: z.uuid(), version });

/** A shutdown window as a person enters it; `windowId` null is a new one. */
export const saveWindow = z
  .strictObject({
    windowId: z.uuid().nullable(),
    version: version.nullable(),
    siteId: z.uuid("Choose a site."),
    name: words(80, "Give the window a name."),
    startsOn: day,
    endsOn: day,
    usableHours: typedNumber
      .pipe(z.string().regex(/^(\d{1,6}(\.\d)?)?$/, "Write hours such as 140, or leave it empty."))
      .transform((text) => (text === "" ? null : text)),
    note: z.string().trim().max(200, "Use at most 200 characters."),
  })
  .refine(({ startsOn, endsOn }) => endsOn >= startsOn, {
    message: "The last day is before the first.",
    path: ["endsOn"],
  });

export const removeWindow = z.strictObject({ windowId: z.uuid(), version });

export const saveFreeze = z
  .strictObject({
    freezeId: z.uuid().nullable(),
    version: version.nullable(),
    name: words(80, "Give the freeze a name."),
    freezesOn: day,
    coversFrom: day,
    coversTo: day,
    ...said,
  })
  .refine(({ coversFrom, coversTo }) => coversTo >= coversFrom, {
    message: "The last day is before the first.",
    path: ["coversTo"],
  });

export const removeFreeze = z.strictObject({ freezeId: z.uuid(), version });

export const addPrecedence = z
  .strictObject({
    firstId: z.uuid("Choose a line."),
    thenId: z.uuid("Choose a line."),
    reason: words(200, "Say why the one waits for the other."),
    ...said,
  })
  .refine(({ firstId, thenId }) => firstId !== thenId, {
    message: "Choose two lines.",
    path: ["thenId"],
  });

export const removePrecedence = z.strictObject({ precedenceId: z.uuid(), version });

export type StateFigure = z.output<typeof stateFigure>;
export type WithdrawFigure = z.output<typeof withdrawFigure>;
export type SaveWindow = z.output<typeof saveWindow>;
export type RemoveWindow = z.output<typeof removeWindow>;
export type SaveFreeze = z.output<typeof saveFreeze>;
export type RemoveFreeze = z.output<typeof removeFreeze>;
export type AddPrecedence = z.output<typeof addPrecedence>;
export type RemovePrecedence = z.output<typeof removePrecedence>;
