import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30.");
const words = (most: number, missing: string) =>
  z.string().trim().min(1, missing).max(most, `Use at most ${most} characters.`);
const version = z.int().positive();
const days = z.int("Write whole working days.").min(1, "At least 1 working day.").max(2000);
const link = z.strictObject({ id: z.uuid(), lag: z.int().min(0).max(2000) });

/** Another plan: the tasks that change, why, and the number of the last plan the person saw (0 for none). */
export const replan = z.strictObject({
  projectId: z.uuid(),
  seen: z.int().nonnegative(),
  reason: words(400, "Say why the plan changes."),
  tasks: z.array(z.strictObject({ id: z.uuid(), days, notBefore: day.nullable() })).max(500),
});

const happened = z.strictObject({ startedOn: day.nullable(), finishedOn: day.nullable() });

/** When a task really began and ended: what the person saw, and what should stand instead. */
export const markTask = z.strictObject({
  projectId: z.uuid(),
  taskId: z.uuid(),
  seen: happened,
  wanted: happened,
});

const said = {
  code: z
    .string()
    .trim()
    .regex(/^[A-Za-z0-9-]{1,12}$/, "Use 1 to 12 letters, digits or hyphens, such as W2."),
  name: words(200, "Say what is done."),
  inWindow: z.boolean(),
  who: z.string().trim().max(80, "Use at most 80 characters."),
  crews: z.int().min(0).max(99).nullable(),
  engineers: z.number().min(0).max(99).nullable(),
  milestoneId: z.uuid().nullable(),
  after: z.array(link).max(50),
};

/** A new task; it is placed at once and planned with the next plan. */
export const addTask = z.strictObject({ projectId: z.uuid(), days, ...said });

/** What a task is; its days change with the plan. */
export const changeTask = z.strictObject({ projectId: z.uuid(), taskId: z.uuid(), version, ...said });

export const removeTask = z.strictObject({ projectId: z.uuid(), taskId: z.uuid(), version });

/** Says that an item of a gate holds, or that it does not. */
export const setGateItem = z.strictObject({
  projectId: z.uuid(),
  itemId: z.uuid(),
  seen: z.boolean(),
  done: z.boolean(),
});

/** Decides a gate, or opens it again. */
export const decideGate = z
  .strictObject({
    projectId: z.uuid(),
    gateId: z.uuid(),
    version,
    decision: z.enum(["open", "passed", "held"]),
    reason: z.string().trim().max(400, "Use at most 400 characters."),
  })
  .refine(({ decision, reason }) => decision !== "held" || reason !== "", {
    path: ["reason"],
    message: "Say why it is held.",
  });

export const addGateItem = z.strictObject({
  projectId: z.uuid(),
  gateId: z.uuid(),
  text: words(200, "Say what has to be true."),
  who: z.string().trim().max(80, "Use at most 80 characters."),
});

export type MakeReplan = z.output<typeof replan>;
export type MarkTask = z.output<typeof markTask>;
export type AddTask = z.output<typeof addTask>;
export type ChangeTask = z.output<typeof changeTask>;
export type RemoveTask = z.output<typeof removeTask>;
export type SetGateItem = z.output<typeof setGateItem>;
export type DecideGate = z.output<typeof decideGate>;
export type AddGateItem = z.output<typeof addGateItem>;
