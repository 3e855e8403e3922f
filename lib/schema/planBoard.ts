import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30.");
const name = z.string().trim().min(1, "Give the plan a name.").max(120, "Use at most 120 characters.");
const version = z.int().positive();
const key = z.string().min(1).max(120);

/** A new plan over the years with a budget. */
export const makeBoard = z.strictObject({ name, asOf: day });

/** A way of a line put into a slot; slot null takes it out. `version` is the plan's as the person saw it. */
export const placeWay = z.strictObject({
  planId: z.uuid(),
  version,
  lineId: z.uuid(),
  option: key,
  slot: key.nullable(),
});

/** Several ways at once: what a run of the solver, or the ranking, found. What is placed of pinned lines stays. */
export const fillBoard = z.strictObject({
  planId: z.uuid(),
  version,
  choices: z.array(z.strictObject({ lineId: z.uuid(), optionId: key, slotId: key })).max(2000),
  /** Puts back what stood there before a fill, on lines pinned in as well. */
  back: z.boolean().default(false),
});

/** A decision against the solver or the ranking, with its reason; "none" takes it back. */
export const pinLine = z
  .strictObject({
    planId: z.uuid(),
    version,
    lineId: z.uuid(),
    pin: z.enum(["in", "out", "none"]),
    reason: z.string().trim().max(300, "Use at most 300 characters."),
  })
  .refine(({ pin, reason }) => pin === "none" || reason !== "", {
    message: "Say why: it stands in the capital request.",
    path: ["reason"],
  });

export const whichBoard = z.strictObject({ planId: z.uuid(), version });

export type MakeBoard = z.output<typeof makeBoard>;
export type PlaceWay = z.output<typeof placeWay>;
export type FillBoard = z.output<typeof fillBoard>;
export type PinLine = z.output<typeof pinLine>;
export type WhichBoard = z.output<typeof whichBoard>;
