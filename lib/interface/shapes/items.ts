import { z } from "zod";
import {
  day,
  decimal,
  evidence,
  id,
  instant,
  itemClass,
  money,
  span,
  stage,
} from "@/lib/interface/shapes/values";
import { stockState } from "@/lib/schema/stockLot";

export const part = z.strictObject({
  id,
  maker: z.string(),
  number: z.string().describe("Base number without the revision."),
  description: z.string(),
  itemClass,
  familyId: id.nullable(),
  price: money.nullable(),
  pricedOn: day.nullable(),
  leadWeeks: decimal.nullable().describe("Order to receipt, typical."),
  figures: z
    .strictObject({
      stage,
      installed: z.int().describe("Units in the group."),
      book: z.int().nullable().describe("Pieces on the books of the group; null is not counted."),
      usable: z.number().describe("Of these expected to work when needed."),
      noSpare: span.describe("Chance that a failure finds no spare, mean over the horizon of the score."),
      usedUpOn: day.nullable().describe("Day by which in 8 of 10 cases no spare is left; null is later."),
    })
    .nullable()
    .describe("Estimates of the evaluation; null where the part is installed nowhere and held nowhere."),
});

export const supplyDate = z
  .strictObject({
    id,
    partId: id.nullable(),
    familyId: id.nullable().describe("Said of every part of a family."),
    noticeOn: day.nullable(),
    lastOrderOn: day.nullable(),
    lastShipOn: day.nullable(),
    repairUntilOn: day.nullable(),
    orderByOn: day.nullable(),
    source: z.string(),
    checkedOn: day,
    recordedOn: day,
    evidence,
  })
  .describe("One sourced statement; a newer one stands beside an older one.");

export const stockLot = z.strictObject({
  id,
  siteId: id,
  partId: id,
  bin: z.string(),
  revision: z.string(),
  state: stockState,
  quantity: z.int().nullable().describe("Null is not counted, never none."),
  lastPoweredOn: day.nullable(),
  countedOn: day.nullable(),
  reservedFor: z.string().nullable(),
  originUnknown: z.boolean(),
  testedOn: day.nullable(),
  evidence,
});

export const event = z.strictObject({
  id,
  siteId: id,
  lineId: id.nullable(),
  machineId: id.nullable(),
  positionId: id.nullable(),
  partId: id.nullable(),
  itemClass: itemClass.nullable(),
  kind: z.enum(["failure", "no_fault_found", "removal"]),
  happenedAt: instant,
  downtimeHours: decimal.nullable(),
  logisticHours: decimal.nullable().describe("Of these, waiting for an item."),
  spareAtHand: z.boolean().nullable(),
  source: z.string(),
  reference: z.string(),
  text: z.string().nullable(),
  setAside: z.string().nullable().describe("Why it does not count; null counts."),
});

export const repair = z.strictObject({
  id,
  siteId: id,
  partId: id,
  reference: z.string(),
  serial: z.string().nullable(),
  repairer: z.string().nullable(),
  sentOn: day,
  dueOn: day.nullable(),
  returnedOn: day.nullable().describe("Null is still away."),
  finding: z.string().nullable(),
  cost: money.nullable(),
  warrantyUntilOn: day.nullable(),
});

export const project = z.strictObject({
  id,
  siteId: id,
  lineId: id,
  code: z.string(),
  name: z.string(),
  status: z.enum(["funded", "in_work", "proving", "accepted", "closed", "parked"]),
  budget: money.describe("As it stood at the start."),
  forecast: money.nullable().describe("What its lead expects; null is not stated."),
  startsOn: day.nullable(),
  endsOn: day.nullable(),
  version: z.int(),
});
