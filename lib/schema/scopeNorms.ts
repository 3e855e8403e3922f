import { z } from "zod";

const ORDER = "Low must not lie above typical, nor typical above high.";
const spanOf = (most: number) =>
  z
    .tuple([z.number().min(0).max(most), z.number().min(0).max(most), z.number().min(0).max(most)])
    .refine(([low, typical, high]) => low <= typical && typical <= high, ORDER);

const hours = spanOf(10_000);
const euro = spanOf(1_000_000);
const share = spanOf(1);
const weeks = z.number().min(0).max(104);

/** Norms of a retrofit: three values each, or one. */
export const scopeNorms = z.strictObject({
  spans: z.strictObject({
    hourlyRate: spanOf(1000),
    ...{ surveyPerAxis: hours, surveyPerMachine: hours, engineeringPerAxis: hours },
    ...{ engineeringPerMachine: hours, conversionPerController: hours, raisePerController: hours },
    ...{ panelPerAxis: hours, installPerAxis: hours, commissioningPerAxis: hours },
    ...{ validationPerMachine: hours, backupPerController: hours, carePerAxis: hours },
    ...{
      drive: euro,
      motor: euro,
      adapter: euro,
      cablesPerAxis: euro,
      controller: euro,
      ioRack: euro,
      hmi: euro,
    },
    ...{ contingency: share, releasedUsable: share },
  }),
  plain: z.strictObject({
    crews: z.int().min(1).max(50),
    personsPerCrew: z.int().min(1).max(50),
    hoursPerDay: z.number().min(1).max(24),
    windowShare: z.number().min(0.1).max(1),
    ...{ purchaseWeeks: weeks, transportWeeks: weeks, incomingWeeks: weeks },
  }),
});

type Values = z.output<typeof scopeNorms>;
export const SPAN_KEYS = Object.keys(scopeNorms.shape.spans.shape) as (keyof Values["spans"])[];
export const PLAIN_KEYS = Object.keys(scopeNorms.shape.plain.shape) as (keyof Values["plain"])[];

/** Another value of one norm; the whole set is checked with it in place. */
export const changeScopeNorm = z.strictObject({
  key: z.enum([...SPAN_KEYS, ...PLAIN_KEYS] as [string, ...string[]]),
  /** When the set the person looked at was written; null is the set the product brings. */
  seen: z.string().nullable(),
  values: z.array(z.number("Write a number.")).min(1).max(3),
});

export type ChangeScopeNorm = z.output<typeof changeScopeNorm>;
