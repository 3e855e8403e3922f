import { z } from "zod";
import { day, decimal, evidence, id, itemClass, money, span, stage } from "@/lib/interface/shapes/values";

export const site = z.strictObject({
  id,
  code: z.string(),
  name: z.string(),
  country: z.string().describe("ISO 3166-1 alpha-2."),
  timeZone: z.string().describe("IANA zone; events of the site are told by its clock."),
  currency: z.string().describe("ISO 4217; costs of the site are kept in it."),
});

const figures = z
  .strictObject({
    stopLoss: span.nullable().describe("EUR a year; null where the cost of an hour is not known."),
    baseLoss: z.number().nullable().describe("Part of it with a spare at hand, EUR a year."),
    shortageLoss: z.number().nullable().describe("Part of it without a spare, EUR a year."),
    unknownLoss: z.number().nullable().describe("What of it comes from not knowing, EUR a year."),
    score: z.number().describe("0 to 100."),
    scoreParts: z.strictObject({ stage: z.number(), spares: z.number(), repair: z.number() }),
    rankByLoss: z.int().nullable().describe("Place among all lines of the group, from 1."),
    rankByScore: z.int(),
    rankSpan: z
      .strictObject({ low: z.number(), mid: z.number(), high: z.number() })
      .nullable()
      .describe("5 %, 50 % and 95 % points of the place by loss."),
    stopsPerYear: z.number(),
    sparesUsedUpOn: day.nullable().describe("Day by which in 8 of 10 cases they are; null is later."),
    worstStage: stage,
    assumed: z.array(z.string()).describe("What was assumed because nothing was recorded."),
  })
  .describe("Estimates of the evaluation, not records.");

export const line = z.strictObject({
  id,
  siteId: id,
  code: z.string(),
  name: z.string(),
  inServiceYear: z.int().nullable(),
  shiftsPerWeek: z.int().nullable(),
  costPerHour: money.nullable().describe("Of a stop; null is not known."),
  costEvidence: evidence,
  bufferHours: decimal.nullable(),
  figures: figures.nullable().describe("Null where the line was not evaluated."),
});

export const machine = z.strictObject({
  id,
  siteId: id,
  lineId: id,
  code: z.string(),
  name: z.string(),
  inServiceYear: z.int().nullable(),
  controllerId: id.nullable(),
  standbyGroup: z.string().nullable().describe("Machines with one mark stand in for each other."),
});

export const axis = z.strictObject({
  id,
  siteId: id,
  machineId: id,
  code: z.string(),
  name: z.string().nullable(),
  inServiceYear: z.int().nullable(),
  networkId: id.nullable(),
  nodeAddress: z.int().nullable(),
  ringOrder: z.int().nullable(),
  feedback: z.string().nullable(),
  travel: decimal.nullable(),
  travelUnit: z.string().nullable(),
  evidence,
});

export const unit = z
  .strictObject({
    id,
    positionId: id.describe("The place to name when an event is recorded."),
    siteId: id,
    lineId: id,
    machineId: id,
    axisId: id.nullable(),
    designation: z.string(),
    itemClass,
    partId: id.nullable().describe("Null is not identified."),
    serial: z.string().nullable().describe("Of the unit that stands there; null is not read."),
    revision: z.string().nullable(),
    since: day.nullable().describe("Null is before records began."),
    evidence,
  })
  .describe("A place that holds one item, and what stands in it now.");

export const evaluation = z.strictObject({
  asOf: day,
  dataVersion: z.int(),
  engine: z.string(),
  assumptions: z.strictObject({ kind: z.string(), version: z.int() }),
  lines: z.int().describe("Lines evaluated in the group."),
  groupLoss: span.nullable().describe("Stop loss of all lines, EUR a year; null unless all sites are yours."),
  siteLosses: z.array(z.strictObject({ siteCode: z.string(), stopLoss: span })),
});
