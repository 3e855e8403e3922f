import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { type Deed, mayAt, maySomewhere, scopeOf } from "@/lib/access/policy";
import { newSecret } from "@/lib/access/secret";
import { change } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { err, ok, type Result } from "@/lib/kernel/result";
import { ALLOWANCE, KEY_START, type MakeAccessKey, type RevokeAccessKey } from "@/lib/schema/accessKey";

/** A key as it is listed; its secret is nowhere. Instants are RFC 3339. */
export interface AccessKeyRow {
  readonly id: string;
  readonly name: string;
  readonly person: string;
  readonly isOwn: boolean;
  readonly ending: string;
  readonly deeds: readonly Deed[];
  readonly siteIds: readonly string[] | null;
  readonly createdAt: string;
  readonly expiresAt: string;
  readonly lastUsedAt: string | null;
  readonly state: "good" | "expired" | "revoked" | "account closed";
}

const DAY_MS = 86_400_000;
const MOST_KEYS = 50;

const missing: Refusal = { code: "missing", reason: "There is no such access key that you may revoke." };
const tooMany: Refusal = {
  code: "impossible",
  reason: `You have ${MOST_KEYS} keys that work. Revoke one nobody uses first.`,
};

/** Whose keys a person sees and revokes: everybody's for an administrator of all sites, else the own ones. */
const seenBy = (actor: Actor) =>
  scopeOf(actor.grants, "people:write") === "all" ? {} : { userId: actor.userId };

/** The access keys the person may see, the newest first. */
export async function readAccessKeys(actor: Actor): Promise<AccessKeyRow[]> {
  const rows = await database().accessKey.findMany({
    where: seenBy(actor),
    orderBy: { id: "desc" },
    include: { user: { select: { name: true, banned: true } } },
  });
  const now = Date.now();
  return rows.map((row) => ({
    ...{ id: row.id, name: row.name, person: row.user.name, isOwn: row.userId === actor.userId },
    ...{ ending: row.ending, deeds: row.deeds as Deed[], siteIds: row.siteIds as string[] | null },
    createdAt: row.createdAt.toISOString(),
    expiresAt: row.expiresAt.toISOString(),
    lastUsedAt: row.lastUsedAt?.toISOString() ?? null,
    state: stateOf(row, now),
  }));
}

interface Standing {
  readonly revokedAt: Date | null;
  readonly expiresAt: Date;
  readonly user: { readonly banned: boolean | null };
}

function stateOf({ revokedAt, expiresAt, user }: Standing, now: number): AccessKeyRow["state"] {
  if (revokedAt !== null) return "revoked";
  if (expiresAt.getTime() <= now) return "expired";
  return user.banned === true ? "account closed" : "good";
}

/** Makes a key in the person's own name. The secret is told this once and not kept. */
export async function makeKey(
  actor: Actor,
  { name, deeds, siteIds, days }: MakeAccessKey,
): Promise<Result<{ token: string; name: string }, Refusal>> {
  const beyond = deeds.find((deed) =>
    siteIds === null
      ? !maySomewhere(actor.grants, deed)
      : siteIds.some((siteId) => !mayAt(actor.grants, deed, siteId)),
  );
  if (beyond) return err(beyondYou);
  const { token, tokenHash } = newSecret(KEY_START);
  return change(actor, async (tx, record) => {
    const good = { userId: actor.userId, revokedAt: null, expiresAt: { gt: new Date() } };
    if ((await tx.accessKey.count({ where: good })) >= MOST_KEYS) return err(tooMany);
    const key = await tx.accessKey.create({
      data: {
        ...{ userId: actor.userId, name, deeds, tokenHash, ending: token.slice(-4) },
        ...(siteIds === null ? {} : { siteIds }),
        expiresAt: new Date(Date.now() + days * DAY_MS),
        allowance: ALLOWANCE.most,
      },
      select: { id: true },
    });
    record({
      ...{ deed: "key:make", entity: "AccessKey", entityId: key.id },
      after: { name, deeds, siteIds, days },
    });
    return ok({ token, name });
  });
}

const beyondYou: Refusal = {
  code: "forbidden",
  reason: "A key cannot do more than you may. Choose fewer things or other sites; nothing was made.",
};

/** Revokes a key: its next request is refused. */
export async function revokeKey(actor: Actor, { keyId }: RevokeAccessKey): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const mine = { id: keyId, ...seenBy(actor) };
    const key = await tx.accessKey.findFirst({ where: mine, select: { name: true } });
    if (!key) return err(missing);
    const { count } = await tx.accessKey.updateMany({
      where: { ...mine, revokedAt: null },
      data: { revokedAt: new Date() },
    });
    if (count > 0)
      record({ deed: "key:revoke", entity: "AccessKey", entityId: keyId, before: { name: key.name } });
    return ok(null);
  });
}
