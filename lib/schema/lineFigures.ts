import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { COST_METHODS } from "@/lib/schema/costMethod";
import { typedNumber } from "@/lib/schema/typedNumber";
import { why } from "@/lib/schema/why";

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30.").nullable();

const amount = typedNumber
  .pipe(
    z
      .string()
      .regex(
        /^\d{1,12}(\.\d{1,2})?$/,
        "Write an amount of 0 or more with at most two places, such as 2900.50.",
      ),
  )
  .nullable();

const hours = typedNumber
  .pipe(
    z
      .string()
      .regex(/^\d{1,4}(\.\d{1,2})?$/, "Write hours of 0 or more with at most two places, such as 1.5."),
  )
  .nullable();

const MOST_STEPS = 10;
const MOST_HOURS = 9999;
const MOST_MONEY = 999_999_999_999;

const step = z.strictObject({ afterHours: z.number().nonnegative(), cost: z.number().nonnegative() });
type Step = z.output<typeof step>;

/** At most two places, as the amounts beside it have. */
const isShort = (value: number) => Math.abs(value * 100 - Math.round(value * 100)) < 1e-6;
const inRange = (value: number, most: number) => value > 0 && value <= most && isShort(value);

/** What is wrong with a step, by its field; a step comes after a longer stop than the one before it. */
function stepProblem(one: Step, before: Step | undefined, row: number): [keyof Step, string] | null {
  if (!inRange(one.afterHours, MOST_HOURS))
    return ["afterHours", `Step ${row}: write hours above 0 with at most two places, such as 48.`];
  if (!inRange(one.cost, MOST_MONEY))
    return ["cost", `Step ${row}: write an amount above 0 with at most two places, such as 150000.`];
  if (before && one.afterHours <= before.afterHours)
    return [
      "afterHours",
      `Step ${row}: begins after a longer stop than step ${row - 1}, or drop one of them.`,
    ];
  return null;
}

/** The figures of a line as they stand in the store; null is not known. */
const storedFigures = z.strictObject({
  costPerHour: amount,
  costFixed: amount,
  costSteps: z.array(step).max(MOST_STEPS, `Write at most ${MOST_STEPS} steps.`).readonly(),
  costMethod: z.enum(COST_METHODS).nullable(),
  costOwner: z.string().trim().min(1, "Write a name, or leave it empty.").max(120).nullable(),
  costApprovedOn: day,
  costValidUntil: day,
  costEvidence: z.enum(["measured", "documented", "inferred", "assumed"]),
  bufferHours: hours,
  shiftsPerWeek: z
    .number("Write a whole number from 0 to 21.")
    .int("Write a whole number from 0 to 21.")
    .min(0, "Write a whole number from 0 to 21.")
    .max(21, "A week has 21 shifts of 8 hours at most.")
    .nullable(),
});

const figuresThatHold = storedFigures
  .refine((figures) => figures.costApprovedOn === null || figures.costOwner !== null, {
    path: ["costOwner"],
    message: "An approved cost names who answers for it.",
  })
  .refine((figures) => figures.costApprovedOn === null || figures.costPerHour !== null, {
    path: ["costPerHour"],
    message: "Only a cost that is written down can be approved.",
  })
  .refine(
    ({ costApprovedOn, costValidUntil }) =>
      costApprovedOn === null || costValidUntil === null || costApprovedOn <= costValidUntil,
    { path: ["costValidUntil"], message: "The last valid day cannot lie before the approval." },
  )
  .superRefine(({ costSteps }, context) => {
    costSteps.forEach((one, at) => {
      const problem = stepProblem(one, costSteps[at - 1], at + 1);
      if (problem)
        context.addIssue({ code: "custom", path: ["costSteps", at, problem[0]], message: problem[1] });
    });
  });

/** A change of a line's figures: what the person saw, and what should stand instead. */
export const changeLineFigures = z.strictObject({
  lineId: z.uuid(),
  seen: storedFigures,
  wanted: figuresThatHold,
  why,
});

export type ChangeLineFigures = z.output<typeof changeLineFigures>;
