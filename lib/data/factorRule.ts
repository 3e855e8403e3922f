import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { FACTOR_RULE, rolesWithFactor } from "@/lib/access/factorRule";
import { type Role, scopeOf } from "@/lib/access/policy";
import { change } from "@/lib/data/change";
import { hasSecondFactor } from "@/lib/data/sessions";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { SetFactorRule } from "@/lib/schema/people";

const notAllowed: Refusal = {
  code: "forbidden",
  reason: "Only an administrator of all sites says who must have a second factor.",
};
const changed: Refusal = {
  code: "conflict",
  reason: "Somebody else changed this meanwhile; the page now shows theirs. Nothing was changed.",
};
const ownFirst: Refusal = {
  code: "conflict",
  reason: "Set up your own second factor first, on your account page: this would shut you out until you do.",
};

const rulesPeople = (actor: Actor) => scopeOf(actor.grants, "people:write") === "all";

/** The roles that must have a second factor; empty for who does not rule the accounts. */
export async function readRequiredFactor(actor: Actor): Promise<Role[]> {
  return rulesPeople(actor) ? rolesWithFactor() : [];
}

/**
 * Says whose role asks for a second factor. Who lacks one and signs in by a password has no rights until it is set up.
 */
export async function setRequiredFactor(
  actor: Actor,
  { roles, seen }: SetFactorRule,
): Promise<Result<null, Refusal>> {
  if (!rulesPeople(actor)) return err(notAllowed);
  const isOwn = actor.grants.some(({ role }) => roles.includes(role));
  if (isOwn && !(await hasSecondFactor(actor))) return err(ownFirst);
  return change(actor, async (tx, record) => {
    await tx.$queryRaw`SELECT FROM "Setting" WHERE "key" = ${FACTOR_RULE} FOR UPDATE`;
    const before = await rolesWithFactor(tx);
    if (before.join() !== [...seen].join()) return err(changed);
    const value = [...roles];
    await tx.setting.upsert({
      where: { key: FACTOR_RULE },
      create: { key: FACTOR_RULE, value },
      update: { value, changedAt: new Date() },
    });
    record({
      ...{ deed: "people:factor", entity: "Setting", entityId: FACTOR_RULE, beside: true },
      ...{ before: { roles: before }, after: { roles: value } },
    });
    return ok(null);
  });
}
