import "server-only";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Prisma } from "@/prisma/generated/client";

/** A stored day as written in an answer. */
export const dayOf = (date: Date): IsoDate => date.toISOString().slice(0, 10);

/** The same where it may not be known. */
export const dayOrNull = (date: Date | null): IsoDate | null => date && dayOf(date);

type Stored = Prisma.Decimal | null;

/** An exact number as text. */
export const decimalOrNull = (value: Stored): string | null => value?.toFixed() ?? null;

/** An amount with its currency; null where either is not known. */
export function moneyOrNull(amount: Stored, currency: string | null) {
  return amount === null || currency === null ? null : { amount: amount.toFixed(), currency };
}
