import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

export const ROLES = [
  "viewer",
  "technician",
  "planner",
  "engineer",
  "approver",
  "admin",
  "contractor",
] as const;

/** Deeds that can be taken from a person though the role allows them. */
export const TAKEABLE = ["money:read", "event:write"] as const;

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-12-31.");

/** A role at one site, or at all when `siteId` is null; a contractor's in one project and until a day. */
const grant = z
  .strictObject({
    role: z.enum(ROLES),
    siteId: z.uuid().nullable(),
    projectId: z.uuid().nullable().default(null),
    /** What the role allows and this person may not do there. */
    without: z.array(z.enum(TAKEABLE)).max(TAKEABLE.length).default([]),
    /** Last day it holds; null is without end. */
    endsOn: day.nullable().default(null),
  })
  .refine(({ role, projectId }) => (role === "contractor") === (projectId !== null), {
    path: ["projectId"],
    message: "A contractor is given one project, and nobody else is.",
  })
  .refine(({ role, siteId, endsOn }) => role !== "contractor" || (siteId === null && endsOn !== null), {
    path: ["endsOn"],
    message: "Say until which day the contractor works in the project.",
  });

/** Roles to be given, each once. */
export const grantList = z.array(grant).max(100);

/** An address, in small letters. */
export const email = z
  .email("Write an e-mail address, such as name@company.example.")
  .transform((text) => text.toLowerCase());

export const addPerson = z.strictObject({
  name: z.string().trim().min(1, "Write a name.").max(120, "Use at most 120 characters."),
  email,
  password: z.string().min(12, "Use at least 12 characters.").max(128, "Use at most 128 characters."),
  grants: grantList.min(1, "Give at least one role."),
});

export const setGrants = z.strictObject({
  userId: z.string().min(1),
  grants: grantList,
});

export const closeAccount = z.strictObject({ userId: z.string().min(1), closed: z.boolean() });

/** Which roles must have a second factor, and which had to when the person looked. */
export const setFactorRule = z.strictObject({
  roles: z.array(z.enum(ROLES)).max(ROLES.length),
  seen: z.array(z.enum(ROLES)).max(ROLES.length),
});

export type PersonGrant = z.output<typeof grant>;
export type AddPerson = z.output<typeof addPerson>;
export type SetGrants = z.output<typeof setGrants>;
export type SetFactorRule = z.output<typeof setFactorRule>;
export type CloseAccount = z.output<typeof closeAccount>;
