import { hashPassword } from "better-auth/crypto";
import type { DemoAccount } from "@/seed/accounts";
import { seedId } from "@/seed/seedId";

/** Rows of the three tables that make a sign-in. */
export interface AccountTables {
  readonly User: readonly Record<string, unknown>[];
  readonly Account: readonly Record<string, unknown>[];
  readonly Grant: readonly Record<string, unknown>[];
}

/**
 * Rows of the accounts, their passwords hashed at the library's own cost: they are printed at every start, and nobody need guess them.
 *
 * An account of a site the scenario does not have gets no grant for it.
 *
 * @param siteIds Id of each site of the scenario, by code. @param at Instant the accounts are made, RFC 3339.
 */
export async function accountRows(
  accounts: readonly DemoAccount[],
  siteIds: ReadonlyMap<string, string>,
  at: string,
): Promise<AccountTables> {
  const passwords = await Promise.all(accounts.map(({ password }) => hashPassword(password)));
  const userId = (email: string) => seedId("User", email);
  return {
    User: accounts.map(({ name, email }) => ({
      id: userId(email),
      name,
      email,
      emailVerified: true,
      createdAt: at,
      updatedAt: at,
    })),
    Account: accounts.map(({ email }, i) => ({
      id: seedId("Account", email),
      accountId: userId(email),
      providerId: "credential",
      userId: userId(email),
      password: passwords[i],
      createdAt: at,
      updatedAt: at,
    })),
    Grant: accounts.flatMap(({ email, role, sites }) => {
      const places = sites === "all" ? [null] : sites.flatMap((code) => siteIds.get(code) ?? []);
      return places.map((siteId) => ({
        id: seedId("Grant", `${email}/${role}/${siteId ?? "all"}`),
        userId: userId(email),
        role,
        siteId,
      }));
    }),
  };
}
