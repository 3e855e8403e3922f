import "server-only";
import { type Actor, readActor } from "@/lib/access/actor";
import { type Deed, narrowGrants } from "@/lib/access/policy";
import { hashOf } from "@/lib/access/secret";
import { database } from "@/lib/data/client";
import { ALLOWANCE, KEY_SHAPE } from "@/lib/schema/accessKey";

/** Who knocks with a key: its person as far as the key lets through, nobody, or somebody who asks too often. */
export type Knock =
  | { readonly kind: "actor"; readonly actor: Actor }
  | { readonly kind: "nobody" }
  | { readonly kind: "tooOften"; readonly waitSeconds: number };

interface KeyRow {
  readonly id: string;
  readonly userId: string;
  readonly name: string;
  readonly deeds: Deed[];
  readonly siteIds: string[] | null;
  readonly has: number;
}

/**
 * Who asks by the `Authorization` header of a request.
 *
 * A key that is unknown, revoked or expired, and one whose person's account is closed, are all nobody. What is let
 * through is what key and person may both at this moment. Each request takes one of the key's allowance, which the
 * database keeps, so that a restart or another process forgives nothing.
 */
export async function actorOfKey(authorization: string | null): Promise<Knock> {
  const token = KEY_SHAPE.exec(authorization ?? "")?.[1];
  const key = token && (await takeOne(hashOf(token)));
  if (!key) return { kind: "nobody" };
  if (key.has < 1) return { kind: "tooOften", waitSeconds: Math.ceil((1 - key.has) / ALLOWANCE.perSecond) };
  const person = await readActor(key.userId);
  if (!person) return { kind: "nobody" };
  const { id, name, deeds, siteIds } = key;
  // Amounts are shown to a key where they are shown to its person.
  const grants = narrowGrants(person.grants, { deeds: [...deeds, "money:read"], siteIds });
  return { kind: "actor", actor: { ...person, grants, key: { id, name } } };
}

/**
 * Counts one request of a key that is good; undefined for any other.
 *
 * The lock lets a long write by the same key go on beside it: its kept answer refers to the key, no more.
 */
async function takeOne(tokenHash: string): Promise<KeyRow | undefined> {
  const [row] = await database().$queryRaw<KeyRow[]>`
    WITH was AS (
      SELECT "id", least(${ALLOWANCE.most}::float8, "allowance" + ${ALLOWANCE.perSecond}::float8
        * greatest(0, extract(epoch FROM clock_timestamp() - "countedAt"))::float8) AS "has"
      FROM "AccessKey"
      WHERE "tokenHash" = ${tokenHash} AND "revokedAt" IS NULL AND "expiresAt" > now()
      FOR NO KEY UPDATE
    )
    UPDATE "AccessKey" k SET "allowance" = was."has" - (was."has" >= 1)::int, "countedAt" = clock_timestamp(),
      "lastUsedAt" = now()
    FROM was WHERE k."id" = was."id"
    RETURNING k."id"::text, k."userId", k."name", k."deeds", k."siteIds", was."has"`;
  return row;
}
