import "server-only";
import { z } from "zod";
import type { Role } from "@/lib/access/policy";
import type { Transaction } from "@/lib/data/change";
import { presentDatabase } from "@/lib/data/client";
import { ROLES } from "@/lib/schema/people";

/** Setting that names the roles whose holders must have a second factor beside their password. */
export const FACTOR_RULE = "secondFactorFor";

const stored = z.array(z.enum(ROLES)).catch([]);

/** The roles that must have a second factor, in the order of the list of roles; none unless somebody says so. */
export async function rolesWithFactor(db: Pick<Transaction, "setting"> = presentDatabase()): Promise<Role[]> {
  const setting = await db.setting.findUnique({
    where: { key: FACTOR_RULE },
    select: { value: true },
  });
  const named = stored.parse(setting?.value);
  return ROLES.filter((role) => named.includes(role));
}

/** Whether somebody signs in by a password here; who comes by the company's sign-in alone is as safe as that makes it. */
export async function hasPassword(userId: string): Promise<boolean> {
  return (await presentDatabase().account.count({ where: { userId, providerId: "credential" } })) > 0;
}
