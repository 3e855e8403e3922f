import { z } from "zod";

export const ROLES = ["viewer", "technician", "planner", "engineer", "approver", "admin"] as const;

/** A role at one site, or at all when `siteId` is null. */
const grant = z.strictObject({ role: z.enum(ROLES), siteId: z.uuid().nullable() });

export const addPerson = z.strictObject({
  name: z.string().trim().min(1, "Write a name.").max(120, "Use at most 120 characters."),
  email: z
    .email("Write an e-mail address, such as name@company.example.")
    .transform((text) => text.toLowerCase()),
  password: z.string().min(12, "Use at least 12 characters.").max(128, "Use at most 128 characters."),
  grants: z.array(grant).min(1, "Give at least one role.").max(100),
});

export const setGrants = z.strictObject({
  userId: z.string().min(1),
  grants: z.array(grant).max(100),
});

export const closeAccount = z.strictObject({ userId: z.string().min(1), closed: z.boolean() });

export type AddPerson = z.output<typeof addPerson>;
export type SetGrants = z.output<typeof setGrants>;
export type CloseAccount = z.output<typeof closeAccount>;
