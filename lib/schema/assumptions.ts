import { z } from "zod";
import { why } from "@/lib/schema/why";

/** Least and most a value may be; the same bounds stand in the schema and at the field of the form. */
export interface AssumptionRange {
  readonly least: number;
  readonly most: number;
}

/** Bounds of the values, wide enough for any plant and narrow enough to catch a slipped point or unit. */
export const assumptionRanges = {
  removalRate: { least: 0.0001, most: 5 },
  rateUnitYears: { least: 1, most: 1000 },
  share: { least: 0, most: 1 },
  noFaultFoundShare: { least: 0, most: 0.95 },
  medianHours: { least: 0.1, most: 1000 },
  sourceHours: { least: 0.1, most: 5000 },
  spread: { least: 0.05, most: 2 },
  stops: { least: 0.5, most: 500 },
  leadYears: { least: 0.005, most: 5 },
  transferHours: { least: 0, most: 1000 },
  tolerableBeyondBuffer: { least: 0.1, most: 1000 },
  months: { least: 12, most: 120 },
  pieces: { least: 0, most: 1000 },
  discountRate: { least: 0, most: 0.5 },
} as const satisfies Readonly<Record<string, AssumptionRange>>;

/** What is said of a value outside its bounds. */
export function rangeSentence({ least, most }: AssumptionRange): string {
  return `Write a number from ${least} to ${most}.`;
}

const within = (range: AssumptionRange) =>
  z.number(rangeSentence(range)).min(range.least, rangeSentence(range)).max(range.most, rangeSentence(range));

const ranges = assumptionRanges;
const share = within(ranges.share);
const MEDIAN = "The median must be from 0.1 to 1000 hours.";
const withSpare = z.strictObject({
  mu: z
    .number(MEDIAN)
    .min(Math.log(ranges.medianHours.least) - 1e-9, MEDIAN)
    .max(Math.log(ranges.medianHours.most) + 1e-9, MEDIAN),
  sigma: within(ranges.spread),
  weight: within(ranges.stops),
});
const ladderStep = z.strictObject({
  source: z.string().min(1),
  availability: share,
  hours: within(ranges.sourceHours),
  needs: z.enum(["orders", "repair"]).exactOptional(),
});
const ladder = z
  .array(ladderStep)
  .min(1, "There must be at least one source.")
  .refine((steps) => steps.at(-1)?.availability === 1, "The last source must be certain: availability 1.");
const storageBand = z.strictObject({ untilYears: z.number().positive().nullable(), works: share });
const storage = z
  .array(storageBand)
  .refine((bands) => bands.at(-1)?.untilYears === null, "The last band must have no end.")
  .refine(
    (bands) =>
      bands.every(({ untilYears }, i) => {
        const before = i === 0 ? 0 : bands[i - 1]?.untilYears;
        return untilYears === null ? i === bands.length - 1 : untilYears > (before ?? untilYears);
      }),
    "The bands must stand in order, shortest first.",
  )
  .refine(
    (bands) => bands.every(({ works }, i) => i === 0 || works <= (bands[i - 1]?.works ?? 1)),
    "Longer storage cannot make a piece likelier to work: the chances must not rise.",
  );

const ofClass = z.strictObject({
  removalRate: within(ranges.removalRate),
  rateUnitYears: within(ranges.rateUnitYears),
  noFaultFoundShare: within(ranges.noFaultFoundShare),
  withSpare,
  ladder,
  withoutSpare: z.strictObject({ sigma: within(ranges.spread), weight: within(ranges.stops) }),
  leadYears: within(ranges.leadYears),
  storage,
  unknownStorageWorks: share,
});

/** Every assumption of the evaluation, each within its bounds. */
export const assumptionValues = z.strictObject({
  classes: z.strictObject({
    ...{ drive: ofClass, motor: ofClass, controller: ofClass, power_supply: ofClass },
    ...{ io: ofClass, hmi: ofClass, converter: ofClass, network_card: ofClass },
  }),
  transferHours: within(ranges.transferHours),
  unprovenWorks: share,
  removedUntestedWorks: share,
  releaseWorks: share,
  repairWorks: share,
  weights: z
    .strictObject({ stage: share, spares: share, repair: share })
    .refine(
      ({ stage, spares, repair }) => Math.abs(stage + spares + repair - 1) < 1e-9,
      "The three weights must sum to 1.",
    ),
  tolerableBeyondBuffer: within(ranges.tolerableBeyondBuffer),
  horizonMonths: z.int().min(1),
  months: z.int().min(ranges.months.least).max(ranges.months.most),
  unidentifiedNoSpare: share,
  undatedOrderable: share,
  costSpread: z.strictObject({
    ...{ measured: within(ranges.spread), documented: within(ranges.spread) },
    ...{ inferred: within(ranges.spread), assumed: within(ranges.spread) },
  }),
  uncountedMost: within(ranges.pieces).int("Write a whole number."),
  discountRate: within(ranges.discountRate),
});

export const ASSUMPTION_KINDS = ["careful", "likely", "bold", "own"] as const;

/** Which version of which set. */
export const assumptionChoice = z.strictObject({
  kind: z.enum(ASSUMPTION_KINDS),
  version: z.int().min(1),
});

/** Takes a version into use. */
export const chosenAssumptions = assumptionChoice.extend({ why });

/** A new version of the own set: what changes, from which version, and who answers for it. */
export const ownAssumptions = z.strictObject({
  /** Version the person saw; 0 when there was none. */
  seen: z.int().min(0),
  /** Path of a value to its new number. */
  changes: z.record(z.string().max(120), z.number("Write a number.")),
  note: z.string().trim().min(3, "Say where the value comes from, or that it has no source.").max(500),
  owner: z.string().trim().min(2, "Name who answers for the value.").max(120),
});

export type AssumptionChoice = z.output<typeof assumptionChoice>;
export type ChosenAssumptions = z.output<typeof chosenAssumptions>;
export type OwnAssumptions = z.output<typeof ownAssumptions>;
