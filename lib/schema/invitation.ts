import { z } from "zod";
import { email, grantList } from "@/lib/schema/people";

/** Days an invitation may hold. */
export const INVITATION_DAYS = [3, 7, 14] as const;

/** Invites somebody: who, with which roles, and until when the link opens. */
export const invitePerson = z.strictObject({
  name: z.string().trim().min(1, "Write a name.").max(120, "Use at most 120 characters."),
  email,
  grants: grantList.min(1, "Give at least one role."),
  days: z.literal(INVITATION_DAYS, "Choose how long the link opens."),
});

/** A link for somebody who has an account and lost the password, or the second factor too. */
export const linkPassword = z.strictObject({
  userId: z.string().min(1).max(100),
  days: z.literal(INVITATION_DAYS, "Choose how long the link opens."),
  dropsFactor: z.boolean(),
});

export const withdrawInvitation = z.strictObject({ invitationId: z.uuid() });

/** What the invited hand in; no password is the company's own sign-in. */
export const acceptInvitation = z.strictObject({
  token: z.string().min(1).max(200),
  password: z
    .string()
    .min(12, "Use at least 12 characters.")
    .max(128, "Use at most 128 characters.")
    .nullable(),
});

export type InvitePerson = z.output<typeof invitePerson>;
export type LinkPassword = z.output<typeof linkPassword>;
export type WithdrawInvitation = z.output<typeof withdrawInvitation>;
export type AcceptInvitation = z.output<typeof acceptInvitation>;
