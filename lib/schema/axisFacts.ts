import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { why } from "@/lib/schema/why";

/** How an axis finds its position after switching on. */
export const HOMING_METHODS = [
  "to_switch",
  "to_marker",
  "to_switch_then_marker",
  "to_end_stop",
  "absolute_encoder",
  "none",
] as const;
export type HomingMethod = (typeof HOMING_METHODS)[number];

const FARTHEST = 1_000_000;

const words = (most: number) =>
  z.string().trim().min(1, "Write a word, or leave it empty.").max(most, `At most ${most} characters.`);
const metres = z
  .number("Write metres, such as 12.5.")
  .min(0, "A length is 0 or more metres.")
  .max(1000, "At most 1000 metres.");
const place = z
  .number("Write a number in the unit of travel, such as -5 or 350.")
  .min(-FARTHEST, `At least -${FARTHEST}.`)
  .max(FARTHEST, `At most ${FARTHEST}.`);
const way = z
  .number("Write a number in the unit of travel, such as 350.")
  .min(0, "A travel is 0 or more.")
  .max(FARTHEST, `At most ${FARTHEST}.`);
const evidence = z.enum(["measured", "documented", "inferred", "assumed"]);
const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-09-30.");

/** What is known of an axis beside its drive and motor; null is not known. Lengths in metres. */
const facts = z.strictObject({
  powerCable: words(80).nullable(),
  powerCableLength: metres.nullable(),
  powerCableInChain: z.boolean().nullable(),
  powerCableEvidence: evidence.nullable(),
  powerCableReadOn: day.nullable(),
  feedbackCable: words(80).nullable(),
  feedbackCableLength: metres.nullable(),
  feedbackCableInChain: z.boolean().nullable(),
  feedbackCableEvidence: evidence.nullable(),
  feedbackCableReadOn: day.nullable(),
  /** What travel, ends and home offset are counted in: mm, deg. */
  travelUnit: words(20).nullable(),
  travel: way.nullable(),
  hardLow: place.nullable(),
  hardHigh: place.nullable(),
  softLow: place.nullable(),
  softHigh: place.nullable(),
  travelEvidence: evidence.nullable(),
  travelReadOn: day.nullable(),
  homing: z.enum(HOMING_METHODS).nullable(),
  homeOffset: place.nullable(),
  homingEvidence: evidence.nullable(),
  homingReadOn: day.nullable(),
});

export type AxisFacts = z.output<typeof facts>;

/** Groups of facts that are read together, and so share their evidence and day. */
export const FACT_GROUPS = {
  powerCable: ["powerCable", "powerCableLength", "powerCableInChain"],
  feedbackCable: ["feedbackCable", "feedbackCableLength", "feedbackCableInChain"],
  travel: ["travel", "hardLow", "hardHigh", "softLow", "softHigh"],
  homing: ["homing", "homeOffset"],
} as const satisfies Record<string, readonly (keyof AxisFacts)[]>;
export type FactGroup = keyof typeof FACT_GROUPS;
export const factGroups = Object.keys(FACT_GROUPS) as FactGroup[];

/** Whether anything of a group is known. */
export function isKnown(facts: AxisFacts, group: FactGroup): boolean {
  return FACT_GROUPS[group].some((field) => facts[field] !== null);
}

const IN_TRAVEL_UNITS = ["travel", "hardLow", "hardHigh", "softLow", "softHigh", "homeOffset"] as const;
const ENDS = [
  ["hardLow", "hardHigh"],
  ["softLow", "softHigh"],
] as const;

const factsThatHold = facts.superRefine((all, context) => {
  const refuse = (field: keyof AxisFacts, message: string) =>
    context.addIssue({ code: "custom", path: [field], message });
  for (const [low, high] of ENDS)
    if ((all[low] ?? Number.NEGATIVE_INFINITY) > (all[high] ?? Number.POSITIVE_INFINITY))
      refuse(high, `The upper end lies below the lower one, ${all[low]}.`);
  if (all.travelUnit === null && IN_TRAVEL_UNITS.some((field) => all[field] !== null))
    refuse("travelUnit", "Say what the travel is counted in, such as mm or deg.");
  for (const group of factGroups)
    if (isKnown(all, group) && all[`${group}Evidence`] === null)
      refuse(`${group}Evidence`, "Say how well it is known.");
});

/** A change of what is known of an axis: what the person saw, and what should stand instead. */
export const changeAxisFacts = z.strictObject({
  axisId: z.uuid(),
  seen: facts,
  wanted: factsThatHold,
  why,
});
export type ChangeAxisFacts = z.output<typeof changeAxisFacts>;
