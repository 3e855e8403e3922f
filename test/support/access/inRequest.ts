import { AsyncLocalStorage } from "node:async_hooks";
import { createHmac, randomUUID } from "node:crypto";
import { workAsyncStorage } from "next/dist/server/app-render/work-async-storage.external";
import { workUnitAsyncStorage } from "next/dist/server/app-render/work-unit-async-storage.external";
import { database } from "@/lib/data/client";

/** Key of the session cookies of a test. */
export const TEST_SECRET = "of-a-test-of-who-may-come-in-and-nothing-else";

/**
 * Outside its server the framework keeps no request, so its stores are given real ones here. They are the stores its
 * `headers()` reads, whoever loaded it first.
 */
for (const store of [workAsyncStorage, workUnitAsyncStorage] as unknown as AsyncLocalStorage<unknown>[]) {
  if (store instanceof AsyncLocalStorage) continue;
  const real = new AsyncLocalStorage<unknown>();
  Object.assign(store, { getStore: () => real.getStore(), run: real.run.bind(real) });
}

/** Runs as the server runs a request that brings this cookie; without one as for somebody signed out. */
export function inRequest<T>(cookie: string | null, run: () => Promise<T>): Promise<T> {
  const headers = new Headers(cookie === null ? {} : { cookie });
  const work = { route: "/of-a-test", forceStatic: false };
  const unit = {
    type: "request",
    phase: "render",
    headers,
    cookies: { get: () => undefined, getAll: () => [] },
  };
  return workAsyncStorage.run(work as never, () => workUnitAsyncStorage.run(unit as never, run));
}

/** The cookie of a session of this person, signed as the sign-in signs it. */
export async function cookieOf(userId: string): Promise<string> {
  const token = randomUUID();
  // Fresh enough that the sign-in does not renew it.
  const expiresAt = new Date(Date.now() + 7 * 86_400_000);
  await database().session.create({ data: { id: randomUUID(), token, userId, expiresAt } });
  const signature = createHmac("sha256", TEST_SECRET).update(token).digest("base64");
  return `better-auth.session_token=${encodeURIComponent(`${token}.${signature}`)}`;
}
