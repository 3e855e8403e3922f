import { z } from "zod";

/** What an access key may be let do; people and plans stay with people. */
export const KEY_DEEDS = ["read", "event:write", "stock:write", "register:import"] as const;

/** Requests a key may make at once, and how many come back each second. */
export const ALLOWANCE = { most: 300, perSecond: 10 } as const;

/** How a key begins, so that it is known for what it is wherever it turns up. */
export const KEY_START = "ebb_";

/** An `Authorization` header with a key; the key is its first group. */
export const KEY_SHAPE = /^Bearer +(ebb_[\w-]{43})$/i;

export const KEY_DAYS = [30, 90, 365] as const;

/** A key to be made: what it is for, what it may, where, and for how long. */
export const makeAccessKey = z.strictObject({
  name: z.string().trim().min(1, "Say which system it is for.").max(80, "Use at most 80 characters."),
  deeds: z
    .array(z.enum(KEY_DEEDS))
    .min(1, "Choose at least one thing it may do.")
    .refine((deeds) => new Set(deeds).size === deeds.length, "Name each thing once."),
  /** Null is every site its person may. */
  siteIds: z.array(z.uuid()).min(1, "Choose at least one site, or all of them.").max(1000).nullable(),
  days: z.literal(KEY_DAYS, "Choose how long it holds."),
});

export const revokeAccessKey = z.strictObject({ keyId: z.uuid() });

export type MakeAccessKey = z.output<typeof makeAccessKey>;
export type RevokeAccessKey = z.output<typeof revokeAccessKey>;
