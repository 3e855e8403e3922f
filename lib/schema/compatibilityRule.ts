import { z } from "zod";
import { err, ok, type Result } from "@/lib/kernel/result";

const name = z.string().trim().min(1, "Write a name.").max(80, "At most 80 characters.");
const level = z
  .string()
  .trim()
  .regex(/^\d{1,3}(\.\d{1,6})*( (SP|HF) \d{1,6})?$/i, "Write a level such as 24, 24.011 or 24 SP 2.");
const revision = z
  .string()
  .trim()
  .regex(/^[A-Za-z]\d{0,3}$/, "Write a hardware letter, or a letter and level such as C3.");
const percent = z.number("Write a number from 1 to 100.").min(1, "At least 1 %.").max(100, "At most 100 %.");

/** A controller a rule accepts: from a level on, or (null) at any. */
const acceptedController = z.strictObject({ model: name, level: level.nullable() });
const acceptedControllers = z
  .array(acceptedController)
  .min(1, "Name at least one controller.")
  .refine((list) => new Set(list.map(({ model }) => model)).size === list.length, "Name each model once.");

const FITS = ["fits", "adapter", "sizing"] as const;
const fit = z.enum(FITS, "Choose what holds.");

/** What each kind of rule asks for. */
export const ruleTerms = {
  /** Drives of these families run on these controllers only. */
  controller_floor: z.strictObject({
    families: z.array(name).min(1, "Name at least one family."),
    controllers: acceptedControllers,
  }),
  /** A controller model never goes beyond a level. */
  ceiling: z.strictObject({ model: name, level }),
  /** Raising a model to a level multiplies the memory it uses. */
  memory_growth: z
    .strictObject({
      ...{ model: name, level },
      factor: z.number("Write a number from 1 to 5.").min(1, "At least 1.").max(5, "At most 5."),
      ...{ cautionPercent: percent, blockedPercent: percent },
    })
    .refine(({ cautionPercent, blockedPercent }) => cautionPercent <= blockedPercent, {
      message: "Caution must not begin above blocked.",
      path: ["cautionPercent"],
    }),
  /** From a level on, a bus card older than a hardware letter is not run, and the racks behind it are cut off. */
  card_lost: z.strictObject({ level, card: name, letter: revision, racks: name }),
  /** A motor family on a drive family, up to a power (null is any); beyond it the motor must be sized anew. */
  motor_match: z.strictObject({
    ...{ motor: name, drive: name, fit },
    upToKw: z
      .number("Write a number above 0.")
      .positive("Write a number above 0.")
      .max(1000, "At most 1000 kW.")
      .nullable(),
  }),
  /** A kind of position feedback on a drive family. */
  feedback_match: z.strictObject({ feedback: name, drive: name, fit }),
  /** Drives of a family from a hardware revision on run on these controllers only. */
  hardware_revision: z.strictObject({ family: name, revision, controllers: acceptedControllers }),
  /** The axes of a ring are converted together. */
  ring_whole: z.strictObject({}),
  /** A controller model drives at most so many axes while its hardware is older, or its level lower (null is any). */
  axis_ceiling: z.strictObject({
    model: name,
    olderThan: revision.nullable(),
    belowLevel: level.nullable(),
    axes: z.int("Write a whole number from 1 to 1000.").min(1, "At least 1.").max(1000, "At most 1000."),
  }),
} as const;

export type RuleKind = keyof typeof ruleTerms;
export type RuleTerms = { readonly [K in RuleKind]: z.output<(typeof ruleTerms)[K]> };
export type AcceptedController = z.output<typeof acceptedController>;
export type Fit = z.output<typeof fit>;

export const RULE_KINDS = Object.keys(ruleTerms) as [RuleKind, ...RuleKind[]];

/** Reads the terms of a kind; a problem inside a list is told at the list. */
export function readRuleTerms<K extends RuleKind>(
  kind: K,
  terms: unknown,
): Result<RuleTerms[K], Readonly<Record<string, string>>> {
  const read = ruleTerms[kind].safeParse(terms);
  if (read.success) return ok(read.data as RuleTerms[K]);
  const fields: Record<string, string> = {};
  for (const { path, message } of read.error.issues) fields[String(path[0] ?? "terms")] ??= message;
  return err(fields);
}

const EVIDENCE = ["measured", "documented", "inferred", "assumed"] as const;

const changeShape = {
  code: z
    .string()
    .trim()
    .regex(/^[A-Z]{1,4}\d{1,3}$/, "Write one to four capitals and a number, such as R8."),
  /** Version the person saw; 0 when the code is new. */
  seen: z.int().min(0),
  kind: z.enum(RULE_KINDS),
  terms: z.unknown(),
};

/** A rule as it would be: to see what it moves. */
export const proposedRule = z.strictObject({ ...changeShape, retired: z.boolean() });

/** A new version of a rule: what it asks for, and who says so. */
export const changedRule = z.strictObject({
  ...changeShape,
  retired: z.boolean(),
  note: z.string().trim().min(3, "Say in a few words what the rule means.").max(500),
  source: z.string().trim().min(3, "Say where it comes from, or that it has no source.").max(300),
  evidence: z.enum(EVIDENCE, "Choose how well it is known."),
});

export type ProposedRule = z.output<typeof proposedRule>;
export type ChangedRule = z.output<typeof changedRule>;
