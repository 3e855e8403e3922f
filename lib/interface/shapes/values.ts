import { z } from "zod";
import { SUPPLY_STAGES } from "@/lib/lifecycle/supplyStage";

export const id = z.uuid().describe("Stays the same for the life of the thing.");
export const day = z.iso.date().describe("Calendar day, ISO 8601.");
export const instant = z.iso.datetime().describe("Instant in UTC, RFC 3339.");

/** A number kept exactly: text, so that no reader turns it into a binary fraction. */
export const decimal = z
  .string()
  .regex(/^-?\d+(\.\d+)?$/)
  .describe("Exact decimal number as text.");

export const money = z
  .strictObject({ amount: decimal, currency: z.string().regex(/^[A-Z]{3}$/) })
  .describe("Amount with its ISO 4217 currency.");

export const span = z
  .strictObject({ mean: z.number(), low: z.number(), high: z.number() })
  .describe("Estimate with its 5 % and 95 % points.");

export const evidence = z
  .enum(["measured", "documented", "inferred", "assumed"])
  .describe("How well the value is known.");

export const itemClass = z.enum([
  "drive",
  "motor",
  "controller",
  "power_supply",
  "io",
  "hmi",
  "converter",
  "network_card",
]);

export const stage = z
  .enum(SUPPLY_STAGES)
  .describe("How the part can still be had on the day, seen by the buyer.");
