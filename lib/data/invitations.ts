import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { mayAt, scopeOf } from "@/lib/access/policy";
import { newSecret } from "@/lib/access/secret";
import { change, type Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import type { ReadyMail } from "@/lib/data/group/readyMail";
import { authUrl, smtpUrl } from "@/lib/env";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { InvitePerson, LinkPassword, WithdrawInvitation } from "@/lib/schema/invitation";
import type { PersonGrant } from "@/lib/schema/people";
import { invitationMail, newPasswordMail } from "@/lib/view/invitationMail";

/** An invitation as it is listed; its secret is nowhere. Instants are RFC 3339. */
export interface InvitationRow {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly grants: readonly PersonGrant[];
  /** Whether it gives somebody who is there a new password. */
  readonly renews: boolean;
  readonly invitedBy: string;
  readonly expiresAt: string;
  readonly mailed: boolean;
  readonly state: "open" | "used" | "withdrawn" | "ended";
}

const DAY_MS = 86_400_000;

const notAllowed: Refusal = {
  code: "forbidden",
  reason:
    "An administrator of all sites invites with any role; who runs a project invites contractors into it. Nothing was sent.",
};
const missing: Refusal = {
  code: "missing",
  reason: "There is no such open invitation that you may withdraw.",
};

const nobody: Refusal = {
  code: "missing",
  reason: "There is no such open account. An account that is closed is opened first.",
};

const rulesPeople = (actor: Actor) => scopeOf(actor.grants, "people:write") === "all";

/** The invitations, the newest first; empty for who does not rule the accounts. */
export async function readInvitations(actor: Actor): Promise<InvitationRow[]> {
  if (!rulesPeople(actor)) return [];
  const rows = await database().accountInvitation.findMany({ orderBy: { id: "desc" }, take: 200 });
  const now = Date.now();
  return rows.map(({ id, name, email, grants, invitedBy, ...row }) => ({
    ...{ id, name, email, invitedBy, grants: grants as unknown as PersonGrant[] },
    renews: row.userId !== null,
    ...{ expiresAt: row.expiresAt.toISOString(), mailed: row.mailedAt !== null, state: stateOf(row, now) },
  }));
}

interface Standing {
  readonly usedAt: Date | null;
  readonly withdrawnAt: Date | null;
  readonly expiresAt: Date;
}

function stateOf({ usedAt, withdrawnAt, expiresAt }: Standing, now: number): InvitationRow["state"] {
  if (usedAt !== null) return "used";
  if (withdrawnAt !== null) return "withdrawn";
  return expiresAt.getTime() <= now ? "ended" : "open";
}

/** How a mail leaves; without a mail server nothing does, and the link is told by hand. */
type Deliver = (mail: ReadyMail) => Promise<unknown>;

export interface Invited {
  /** The one-time link, told this once. */
  readonly link: string;
  readonly mailed: boolean;
}

/** Invites somebody by a one-time link, of which only the hash is kept, and by mail where a server is set. */
export async function inviteSomebody(
  actor: Actor,
  { name, email, grants, days }: InvitePerson,
  deliver: Deliver,
): Promise<Result<Invited, Refusal>> {
  const { token, tokenHash } = newSecret();
  const made = await change(actor, async (tx, record) => {
    if (!rulesPeople(actor) && !(await runsProjects(tx, actor, grants))) return err(notAllowed);
    if (rulesPeople(actor) && (await hasAccount(tx, email))) return err(taken(email));
    const expiresAt = new Date(Date.now() + days * DAY_MS);
    const { id } = await tx.accountInvitation.create({
      data: { ...{ tokenHash, email, name, grants, expiresAt }, invitedBy: actor.name },
      select: { id: true },
    });
    record({
      ...{ deed: "people:invite", entity: "AccountInvitation", entityId: id },
      after: { name, email, grants, days },
    });
    return ok({ id });
  });
  if (!made.ok) return made;
  const link = linkOf(token);
  const letter = invitationMail({ link, days, from: actor.name });
  return ok({ link, mailed: await mailTo(made.value.id, { to: email, ...letter }, deliver) });
}

const linkOf = (token: string) => `${authUrl()}/invitation?token=${token}`;

/**
 * Makes a one-time link by which somebody who has an account sets a new password, in the place of any made before; with
 * it a second factor that is lost is put off. Until it is followed the old password holds.
 */
export async function linkNewPassword(
  actor: Actor,
  { userId, days, dropsFactor }: LinkPassword,
  deliver: Deliver,
): Promise<Result<Invited, Refusal>> {
  const { token, tokenHash } = newSecret();
  const made = await change(actor, async (tx, record) => {
    if (!rulesPeople(actor)) return err(notAllowed);
    const user = await tx.user.findFirst({
      where: { id: userId, banned: { not: true } },
      select: { name: true, email: true },
    });
    if (!user) return err(nobody);
    await tx.accountInvitation.updateMany({
      where: { userId, usedAt: null, withdrawnAt: null },
      data: { withdrawnAt: new Date() },
    });
    const expiresAt = new Date(Date.now() + days * DAY_MS);
    const { id } = await tx.accountInvitation.create({
      data: { ...{ tokenHash, ...user, userId, dropsFactor, expiresAt }, grants: [], invitedBy: actor.name },
      select: { id: true },
    });
    record({ deed: "people:renew", entity: "User", entityId: userId, after: { days, dropsFactor } });
    return ok({ id, email: user.email });
  });
  if (!made.ok) return made;
  const link = linkOf(token);
  const letter = newPasswordMail({ link, days, from: actor.name });
  return ok({ link, mailed: await mailTo(made.value.id, { to: made.value.email, ...letter }, deliver) });
}

/** Whether every role is a contractor's in a project the actor runs, with no amounts the actor does not see. */
async function runsProjects(tx: Transaction, actor: Actor, grants: readonly PersonGrant[]): Promise<boolean> {
  const ids = grants.flatMap(({ projectId }) => projectId ?? []);
  if (ids.length !== grants.length) return false;
  const found = await tx.project.findMany({ where: { id: { in: ids } }, select: { id: true, siteId: true } });
  const sites = new Map(found.map(({ id, siteId }) => [id, siteId]));
  return grants.every(({ projectId, without }) => {
    const siteId = sites.get(projectId ?? "") ?? "";
    const shows = without.includes("money:read") || mayAt(actor.grants, "money:read", siteId);
    return shows && mayAt(actor.grants, "project:write", siteId);
  });
}

async function hasAccount(tx: Transaction, email: string): Promise<boolean> {
  return (await tx.user.count({ where: { email, accounts: { some: {} } } })) > 0;
}

/** Told only to who sees all accounts anyway. */
function taken(email: string): Refusal {
  const reason = `Somebody with the address ${email} has an account already.`;
  return { code: "conflict", reason, fields: { email: reason } };
}

/** Whether the mail left; the link holds either way, for it is shown. */
async function mailTo(id: string, mail: Omit<ReadyMail, "id">, deliver: Deliver): Promise<boolean> {
  if (smtpUrl() === null) return false;
  const left = await deliver({ id, ...mail }).then(
    () => true,
    () => false,
  );
  if (left) await database().accountInvitation.update({ where: { id }, data: { mailedAt: new Date() } });
  return left;
}

/** Withdraws an invitation nobody has used: its link opens nothing any more. */
export function withdrawOne(
  actor: Actor,
  { invitationId }: WithdrawInvitation,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    if (!rulesPeople(actor)) return err(missing);
    const { count } = await tx.accountInvitation.updateMany({
      where: { id: invitationId, usedAt: null, withdrawnAt: null },
      data: { withdrawnAt: new Date() },
    });
    if (count === 0) return err(missing);
    record({ deed: "people:uninvite", entity: "AccountInvitation", entityId: invitationId });
    return ok(null);
  });
}
