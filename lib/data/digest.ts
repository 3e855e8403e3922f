import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { fixedDay } from "@/lib/data/asOf";
import { change } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { queueDigest } from "@/lib/data/group/queueDigest";
import { sites } from "@/lib/data/scope";
import { dataFolder, smtpUrl } from "@/lib/env";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { SetDigest } from "@/lib/schema/digest";
import { DIGEST_TRIES } from "@/lib/view/digestTrace";

const SHOWN = 5;

/** One mail that was asked for, and how far it is. */
export interface DigestTrace {
  readonly id: string;
  /** RFC 3339. */
  readonly askedAt: string;
  readonly sentAt: string | null;
  /** Where it was written, when no mail server is set. */
  readonly file: string | null;
  readonly tries: number;
  /** Why the last try failed. */
  readonly problem: string | null;
}

/** What a person gets by mail every week. */
export interface DigestState {
  /** Null gets none. */
  readonly siteId: string | null;
  readonly mails: readonly DigestTrace[];
  /** Folder the mails are written into; null where a mail server is set. */
  readonly folder: string | null;
  /** The day an installation stands at that does not move with the calendar, so that none goes by itself. */
  readonly standsAt: IsoDate | null;
}

const missing: Refusal = { code: "missing", reason: "There is no such site that you may read." };
const none: Refusal = { code: "impossible", reason: "Choose a site first, then ask for its mail." };
const waiting: Refusal = {
  code: "conflict",
  reason: "One is on its way already; it is tried until it leaves.",
};

/** What the person gets by mail, and what became of the last ones. */
export async function readDigest(actor: Actor): Promise<DigestState> {
  const { userId } = actor;
  const [digest, mails, standsAt] = await Promise.all([
    database().digest.findUnique({ where: { userId }, select: { siteId: true } }),
    database().digestMail.findMany({ where: { userId }, orderBy: { askedAt: "desc" }, take: SHOWN }),
    fixedDay(database()),
  ]);
  return {
    siteId: digest?.siteId ?? null,
    mails: mails.map(({ id, askedAt, sentAt, file, tries, problem }) => ({
      ...{ id, file, tries, problem },
      askedAt: askedAt.toISOString(),
      sentAt: sentAt?.toISOString() ?? null,
    })),
    folder: smtpUrl() === null ? `${dataFolder()}/mails` : null,
    standsAt,
  };
}

/** Starts the weekly mail of a site, moves it to another, or ends it. */
export async function setDigest(actor: Actor, { siteId }: SetDigest): Promise<Result<null, Refusal>> {
  const { userId } = actor;
  return change(actor, async (tx, record) => {
    if (siteId === null) {
      const { count } = await tx.digest.deleteMany({ where: { userId } });
      if (count > 0) record({ deed: "digest:end", entity: "Digest", entityId: userId });
      return ok(null);
    }
    const there = await tx.site.count({ where: { AND: [{ id: siteId }, sites(actor, "read")] } });
    if (there === 0) return err(missing);
    await tx.digest.upsert({ where: { userId }, create: { userId, siteId }, update: { siteId } });
    record({ deed: "digest:set", entity: "Digest", entityId: userId, siteId, after: { siteId } });
    return ok(null);
  });
}

/** Asks for the mail now, once; it is sent by the queue. */
export async function askDigest(actor: Actor): Promise<Result<null, Refusal>> {
  const { userId } = actor;
  return change(actor, async (tx, record) => {
    await tx.$queryRaw`SELECT FROM "Digest" WHERE "userId" = ${userId} FOR UPDATE`;
    if ((await tx.digest.count({ where: { userId } })) === 0) return err(none);
    const underWay = { userId, weekOf: null, sentAt: null, tries: { lt: DIGEST_TRIES } };
    if ((await tx.digestMail.count({ where: underWay })) > 0) return err(waiting);
    const { id } = await tx.digestMail.create({ data: { userId }, select: { id: true } });
    await queueDigest(tx, id);
    record({ deed: "digest:ask", entity: "Digest", entityId: userId });
    return ok(null);
  });
}
