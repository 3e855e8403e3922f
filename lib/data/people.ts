import "server-only";
import { randomUUID } from "node:crypto";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { everyGrant, type StoredGrant } from "@/lib/access/grants";
import { hashPassword } from "@/lib/access/passwordHash";
import { scopeOf } from "@/lib/access/policy";
import { refusedPassword } from "@/lib/access/refusedPassword";
import { change, type Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddPerson, CloseAccount, PersonGrant, SetGrants } from "@/lib/schema/people";

export interface Person {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  readonly closed: boolean;
  /** Those that ended included. */
  readonly grants: readonly PersonGrant[];
}

const notAllowed: Refusal = {
  code: "forbidden",
  reason: "Only an administrator of all sites says who may do what.",
};
const noSuchPerson: Refusal = { code: "missing", reason: "There is no such person." };
const lastAdmin: Refusal = {
  code: "conflict",
  reason: "This is the last administrator of all sites. Make somebody else one first; nothing was changed.",
};

/** Everybody with an account; empty for who may not know. */
export async function readPeople(actor: Actor): Promise<Person[]> {
  if (!rulesPeople(actor)) return [];
  const users = await database().user.findMany({
    orderBy: { name: "asc" },
    select: {
      id: true,
      name: true,
      email: true,
      banned: true,
      grants: everyGrant,
    },
  });
  return users.map(({ id, banned, grants, ...user }) => ({
    ...{ ...user, userId: id, closed: banned === true, grants: grants.map(plainGrant) },
  }));
}

function plainGrant({ endsOn, without, ...grant }: StoredGrant): PersonGrant {
  return {
    ...grant,
    without: without as PersonGrant["without"],
    endsOn: endsOn?.toISOString().slice(0, 10) ?? null,
  };
}

/** Roles as rows of a person. */
function grantRows(userId: string, grants: readonly PersonGrant[]) {
  return grants.map(({ endsOn, ...grant }) => ({
    ...{ ...grant, userId, endsOn: endsOn === null ? null : new Date(`${endsOn}T00:00:00Z`) },
  }));
}

/** Makes an account with its roles; a person a copy brought without a password is given one. */
export async function addNewPerson(
  actor: Actor,
  input: AddPerson,
): Promise<Result<{ userId: string }, Refusal>> {
  if (!rulesPeople(actor)) return err(notAllowed);
  const why = await refusedPassword(input.password, input);
  if (why !== null) return err({ code: "invalid", reason: why, fields: { password: why } });
  const password = await hashPassword(input.password);
  return change(actor, async (tx, record) => {
    const { name, email, grants } = input;
    const known = await tx.user.findUnique({
      where: { email },
      select: { id: true, accounts: { take: 1, select: { id: true } } },
    });
    if (known && known.accounts.length > 0) return err(taken(email));
    const { id } = await tx.user.upsert({
      where: { email },
      create: { id: randomUUID(), name, email, emailVerified: true },
      update: { name, banned: false },
      select: { id: true },
    });
    await tx.grant.deleteMany({ where: { userId: id } });
    await tx.account.create({
      data: { id: randomUUID(), accountId: id, providerId: "credential", userId: id, password },
    });
    await tx.grant.createMany({ data: grantRows(id, grants) });
    record({ deed: "people:add", entity: "User", entityId: id, after: { name, email, grants } });
    return ok({ userId: id });
  });
}

/** Sets what a person may do where. */
export async function setPersonGrants(
  actor: Actor,
  { userId, grants }: SetGrants,
): Promise<Result<null, Refusal>> {
  if (!rulesPeople(actor)) return err(notAllowed);
  return change(actor, async (tx, record) => {
    const before = (await tx.grant.findMany({ where: { userId }, ...everyGrant })).map(plainGrant);
    if (!(await tx.user.findUnique({ where: { id: userId }, select: { id: true } })))
      return err(noSuchPerson);
    await tx.grant.deleteMany({ where: { userId } });
    await tx.grant.createMany({ data: grantRows(userId, grants) });
    if (!(await somebodyRules(tx))) return err(lastAdmin);
    record({ deed: "people:grants", entity: "User", entityId: userId, before, after: grants });
    return ok(null);
  });
}

/** Closes an account, so that its sessions end and nobody signs in with it, or opens it again. */
export async function closePersonAccount(
  actor: Actor,
  { userId, closed }: CloseAccount,
): Promise<Result<null, Refusal>> {
  if (!rulesPeople(actor)) return err(notAllowed);
  return change(actor, async (tx, record) => {
    const { count } = await tx.user.updateMany({ where: { id: userId }, data: { banned: closed } });
    if (count === 0) return err(noSuchPerson);
    if (closed) await tx.session.deleteMany({ where: { userId } });
    if (!(await somebodyRules(tx))) return err(lastAdmin);
    record({
      deed: closed ? "people:close" : "people:open",
      entity: "User",
      entityId: userId,
      after: { closed },
    });
    return ok(null);
  });
}

function rulesPeople(actor: Actor): boolean {
  return scopeOf(actor.grants, "people:write") === "all";
}

function taken(email: string): Refusal {
  const reason = `Somebody with the address ${email} has an account already.`;
  return { code: "conflict", reason, fields: { email: reason } };
}

/** Whether an open account of an administrator of all sites is left; the rows are locked against a race. */
async function somebodyRules(tx: Transaction): Promise<boolean> {
  const rulers = await tx.$queryRaw<{ id: string }[]>`
    SELECT u."id" FROM "User" u JOIN "Grant" g ON g."userId" = u."id"
    WHERE g."role" = 'admin' AND g."siteId" IS NULL AND g."endsOn" IS NULL AND u."banned" IS NOT TRUE
    FOR UPDATE OF u`;
  return rulers.length > 0;
}
