import "server-only";
import type { Actor, OnceRequest } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";

/** How long the name of a request stands for what it came to. */
const ANSWER_DAYS = 7;

/** A request name that was used before for another request. */
export class NameUsedBefore extends Error {
  constructor() {
    super("The name of this request was used before for another one.");
  }
}

/** The same request is still being done. */
export class StillBeingDone extends Error {
  constructor() {
    super("The same request is still being done.");
  }
}

/** How long one waits for the same request sent a moment before; connections are few. */
const PATIENCE = "3s";
const LOCK_NOT_AVAILABLE = "55P03";

/**
 * Takes the name of another system's request for this transaction.
 *
 * Whoever sends the same again meanwhile waits here until it ends, three seconds at most; once it is committed they get
 * what it came to, and when it is undone they do it themselves. So a request has one effect over any number of
 * processes and restarts.
 *
 * @returns What the same request came to before; null when it is to be done now.
 * @throws {NameUsedBefore} when the name was used for another request.
 * @throws {StillBeingDone} when the wait was too long.
 */
export async function claimRequest(
  tx: Transaction,
  { key, request }: Actor,
): Promise<{ readonly value: unknown } | null> {
  if (!key || !request) return null;
  await tx.$executeRaw`
    DELETE FROM "KeptAnswer" WHERE "accessKeyId" = ${key.id}::uuid
      AND "createdAt" < now() - make_interval(days => ${ANSWER_DAYS}::int)`;
  const made = await insertClaim(tx, { id: key.id, ...request });
  if (made === 1) return null;
  const kept = await tx.keptAnswer.findUniqueOrThrow({
    where: { accessKeyId_name: { accessKeyId: key.id, name: request.name } },
  });
  if (kept.requestHash !== request.hash) throw new NameUsedBefore();
  return { value: kept.outcome };
}

interface Claim extends OnceRequest {
  /** Of the key. */
  readonly id: string;
}

/** @returns How many rows it made: none where the name is taken. */
async function insertClaim(tx: Transaction, { id, name, hash }: Claim): Promise<number> {
  await tx.$executeRaw`SELECT set_config('lock_timeout', ${PATIENCE}, true)`;
  try {
    return await tx.$executeRaw`
      INSERT INTO "KeptAnswer" ("accessKeyId", "name", "requestHash")
      VALUES (${id}::uuid, ${name}, ${hash}) ON CONFLICT DO NOTHING`;
  } catch (error) {
    if (isLockTimeout(error)) throw new StillBeingDone();
    throw error;
  } finally {
    await tx.$executeRaw`SELECT set_config('lock_timeout', '0', true)`.catch(() => undefined);
  }
}

function isLockTimeout(error: unknown): boolean {
  return error instanceof Error && "meta" in error && JSON.stringify(error.meta).includes(LOCK_NOT_AVAILABLE);
}

/** Keeps what a claimed request came to, in the transaction of its effect. */
export async function keepAnswer(tx: Transaction, { key, request }: Actor, value: unknown): Promise<void> {
  if (!key || !request) return;
  await tx.$executeRaw`
    UPDATE "KeptAnswer" SET "outcome" = ${JSON.stringify(value)}::jsonb
    WHERE "accessKeyId" = ${key.id}::uuid AND "name" = ${request.name}`;
}

/** Lets go of a claimed request that was refused, so that its name may be used again. */
export async function dropClaim(tx: Transaction, { key, request }: Actor): Promise<void> {
  if (!key || !request) return;
  await tx.keptAnswer.delete({ where: { accessKeyId_name: { accessKeyId: key.id, name: request.name } } });
}
