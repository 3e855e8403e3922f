import "server-only";
import { randomUUID } from "node:crypto";
import type { Refusal } from "@/lib/access/action";
import { hashPassword } from "@/lib/access/passwordHash";
import { refusedPassword } from "@/lib/access/refusedPassword";
import { hashOf } from "@/lib/access/secret";
import { forgetWrong } from "@/lib/access/signInPause";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { companySignIn } from "@/lib/env";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AcceptInvitation } from "@/lib/schema/invitation";
import type { PersonGrant } from "@/lib/schema/people";

/** One answer for a link that is unknown, used, withdrawn or ended, so that none can be told from another. */
const refused: Refusal = {
  code: "forbidden",
  reason: "This link opens nothing: it was used, withdrawn, has ended or is mistyped. Ask for a new one.",
};

/**
 * Makes the account of somebody who was invited, or sets the new password of somebody who lost theirs, and spends the
 * link. Without a password the company's own sign-in is the way in. The password is hashed before the link is looked at,
 * so that a wrong link takes as long as a right one.
 */
export async function acceptInvitation({
  token,
  password,
}: AcceptInvitation): Promise<Result<null, Refusal>> {
  const hashed = await hashPassword(password ?? randomUUID());
  if (password === null && companySignIn() === null) return err(refused);
  const why = password === null ? null : await refusedPassword(password, await personOf(token));
  if (why !== null) return err({ code: "invalid", reason: why, fields: { password: why } });
  const given = password === null ? null : hashed;
  return database().$transaction(async (tx) => {
    // A link for a new password is not spent by who gives none.
    const invitation = await spend(tx, hashOf(token), given === null ? { userId: null } : {});
    if (!invitation) return err(refused);
    const { userId, dropsFactor } = invitation;
    const isDone =
      userId === null ? await join(tx, invitation, given) : await renew(tx, { userId, dropsFactor, hashed });
    return isDone ? ok(null) : err(refused);
  });
}

interface Invited {
  readonly email: string;
  readonly name: string;
  readonly grants: unknown;
}

/** Makes the account of the invited with its roles; false where the address has one by now. */
async function join(tx: Transaction, invited: Invited, hashed: string | null): Promise<boolean> {
  const { email, name } = invited;
  if ((await tx.account.count({ where: { user: { email } } })) > 0) return false;
  const { id: userId } = await tx.user.upsert({
    where: { email },
    create: { id: randomUUID(), name, email, emailVerified: true },
    update: { name, banned: false },
    select: { id: true },
  });
  const grants = invited.grants as PersonGrant[];
  await tx.grant.deleteMany({ where: { userId } });
  await tx.grant.createMany({
    data: grants.map((grant) => ({ ...grant, userId, endsOn: dayOf(grant.endsOn) })),
  });
  if (hashed !== null)
    await tx.account.create({
      data: { id: randomUUID(), accountId: userId, providerId: "credential", userId, password: hashed },
    });
  await tx.auditEntry.create({
    data: { userId, deed: "people:join", entity: "User", entityId: userId, after: { name, email, grants } },
  });
  return true;
}

interface Renewal {
  readonly userId: string;
  readonly dropsFactor: boolean;
  readonly hashed: string;
}

/** Gives somebody who is there a new password, ends every session and lets the address rest no longer. */
async function renew(tx: Transaction, { userId, dropsFactor, hashed }: Renewal): Promise<boolean> {
  const user = await tx.user.findFirst({
    where: { id: userId, banned: { not: true } },
    select: { email: true },
  });
  if (!user) return false;
  const own = { userId, providerId: "credential" };
  const { count } = await tx.account.updateMany({ where: own, data: { password: hashed } });
  if (count === 0)
    await tx.account.create({ data: { ...own, id: randomUUID(), accountId: userId, password: hashed } });
  await tx.session.deleteMany({ where: { userId } });
  if (dropsFactor) {
    await tx.twoFactor.deleteMany({ where: { userId } });
    await tx.user.update({ where: { id: userId }, data: { twoFactorEnabled: false } });
  }
  await forgetWrong(user.email);
  await tx.auditEntry.create({
    data: { userId, deed: "people:renewed", entity: "User", entityId: userId, after: { dropsFactor } },
  });
  return true;
}

/** Whom a link is for; nobody where it opens nothing, so that the same passwords are refused. */
async function personOf(token: string): Promise<{ readonly email: string; readonly name: string }> {
  const invitation = await database().accountInvitation.findFirst({
    where: { tokenHash: hashOf(token), ...holding() },
    select: { email: true, name: true },
  });
  return invitation ?? { email: "", name: "" };
}

const holding = () => ({ usedAt: null, withdrawnAt: null, expiresAt: { gt: new Date() } });

/** The invitation of a link that holds, spent by this very call; of two at once one finds nothing. */
async function spend(tx: Transaction, tokenHash: string, of: { readonly userId?: null }) {
  const { count } = await tx.accountInvitation.updateMany({
    where: { tokenHash, ...of, ...holding() },
    data: { usedAt: new Date() },
  });
  return count === 0 ? null : tx.accountInvitation.findUnique({ where: { tokenHash } });
}

const dayOf = (day: string | null) => (day === null ? null : new Date(`${day}T00:00:00Z`));
