import "server-only";
import { randomUUID } from "node:crypto";
import type { Deeded, Transaction } from "@/lib/data/change";
import { SUBJECTS, type SubjectKey, subjectOf, TRIAL } from "@/lib/schema/webhook";

/** Things named in one message; of more it only says how many. */
const MOST_THINGS = 200;

interface News {
  readonly subject: SubjectKey;
  readonly siteId: string | null;
  readonly things: { readonly kind: string; readonly id: string; readonly deed: string }[];
}

/**
 * Writes the messages that tell of a change, in its transaction: there is a message exactly when there is the change.
 *
 * A message names what changed and carries no figures: who gets it reads them with a key of its own, so that what it
 * may see is decided then.
 */
export async function queueDeliveries(tx: Transaction, deeds: readonly Deeded[]): Promise<void> {
  const news = newsOf(deeds);
  if (news.length === 0) return;
  const hooks = await tx.webhook.findMany({
    where: { disabledAt: null, subjects: { hasSome: news.map(({ subject }) => subject) } },
    select: { id: true, subjects: true, siteId: true },
    orderBy: { id: "asc" },
  });
  const messages = hooks.flatMap(({ id: webhookId, subjects, siteId }) =>
    news
      .filter((one) => subjects.includes(one.subject) && (siteId === null || siteId === one.siteId))
      .map((one) => ({ webhookId, ...messageOf(one) })),
  );
  if (messages.length === 0) return;
  await tx.webhookDelivery.createMany({ data: messages });
  for (const webhookId of new Set(messages.map((message) => message.webhookId)))
    await queueSending(tx, webhookId);
}

/** Asks that what waits for a webhook be sent; a pause after a failure lasts on unless it is to be now. */
export async function queueSending(tx: Transaction, webhookId: string, when?: "now"): Promise<void> {
  const mode = when === "now" ? "replace" : "preserve_run_at";
  await tx.$executeRaw`
    SELECT graphile_worker.add_job('sendWebhook', json_build_object('webhookId', ${webhookId}::text),
      queue_name := 'webhook:' || ${webhookId}::text, job_key := 'webhook:' || ${webhookId}::text,
      job_key_mode := ${mode}::text)`;
}

/** A message that only tries the way. */
export function trialMessage() {
  return bodyOf(TRIAL, { siteId: null, things: [], read: null });
}

/** One piece of news for each kind of change and site. */
function newsOf(deeds: readonly Deeded[]): News[] {
  const byKind = new Map<string, News>();
  for (const { deed, entity, entityId, siteId = null } of deeds) {
    const subject = subjectOf({ deed, entity });
    if (subject === null) continue;
    const key = `${subject} ${siteId}`;
    const news = byKind.get(key) ?? { subject, siteId, things: [] };
    news.things.push({ kind: entity, id: entityId, deed });
    byKind.set(key, news);
  }
  return [...byKind.values()];
}

function messageOf({ subject, siteId, things }: News) {
  return bodyOf(subject, { siteId, things, read: SUBJECTS[subject].read });
}

function bodyOf(subject: string, { siteId, things, read }: Omit<News, "subject"> & { read: string | null }) {
  const id = randomUUID();
  const named = things.slice(0, MOST_THINGS);
  const told = { id, subject, at: new Date().toISOString(), siteId, things: named };
  return { id, subject, body: JSON.stringify({ ...told, more: things.length - named.length, read }) };
}
