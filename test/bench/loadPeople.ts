import { createHmac, randomBytes, randomUUID } from "node:crypto";
import { database } from "@/lib/data/client";

/** People of all sites, each signed in once, and the one row the floor's page reads. */
export interface LoadPeople {
  /** A session cookie for each. */
  readonly cookies: readonly string[];
  readonly webhookId: string;
  /** Takes sessions and the row away again; the people stay, as whoever changed something must. */
  remove(): Promise<void>;
}

const DAY_MS = 86_400_000;

/**
 * Writes the people with a session each, as the sign-in would leave them: passwords are slow on purpose, and the sign-in
 * allows few a minute from one address.
 */
export async function addPeople(count: number, secret: string): Promise<LoadPeople> {
  const people = Array.from({ length: count }, (_, i) => ({
    ...{ id: randomUUID(), name: `Person ${i + 1}` },
    token: randomBytes(24).toString("hex"),
  }));
  const ids = people.map(({ id }) => id);
  await database().user.createMany({
    data: people.map(({ id, name }) => ({ id, name, email: `${id}@load.example` })),
  });
  await database().grant.createMany({
    data: ids.map((userId) => ({ userId, role: "admin" as const, siteId: null })),
  });
  await database().session.createMany({
    data: people.map(({ id, token }) => ({
      ...{ id: randomUUID(), userId: id, token },
      expiresAt: new Date(Date.now() + DAY_MS),
    })),
  });
  const webhook = await database().webhook.create({
    data: {
      ...{ name: "Of the bench", address: "https://load.example/", subjects: [], createdBy: ids[0] ?? "" },
      ...{ disabledAt: new Date(), disabledReason: "Only looked at" },
    },
  });
  return {
    cookies: people.map(({ token }) => `better-auth.session_token=${signed(token, secret)}`),
    webhookId: webhook.id,
    remove: async () => {
      await database().webhook.delete({ where: { id: webhook.id } });
      await database().session.deleteMany({ where: { userId: { in: ids } } });
    },
  };
}

/** A cookie's value as the sign-in library signs it: HMAC-SHA-256 in base64 after a dot. */
function signed(token: string, secret: string): string {
  return encodeURIComponent(`${token}.${createHmac("sha256", secret).update(token).digest("base64")}`);
}
