import "server-only";
import { signature, webhookSecret } from "@/lib/access/webhookSecret";
import { database } from "@/lib/data/client";
import { queueSending } from "@/lib/data/interface/queueDeliveries";
import type { Webhook, WebhookDelivery } from "@/prisma/generated/client";

/** A message on its way. */
export interface Outgoing {
  readonly address: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
}

/** What came back: an HTTP status with the beginning of its text, or (null) why nothing did. */
export interface Answered {
  readonly status: number | null;
  readonly answer: string;
}

export type Send = (message: Outgoing) => Promise<Answered>;

/** Seconds to wait after the first, the second … failure; after the last one the message is given up. */
export const PAUSES = [10, 30, 120, 600, 1800, 3600, 7200, 14_400, 28_800] as const;

/** How long a message that arrived is kept to be looked at. */
const KEPT_DAYS = 30;

/** How long one turn may take, so that other work of the queue is not kept waiting. */
const TURN_MS = 15_000;

/**
 * Sends what waits for a webhook, in order: none before the one ahead of it arrived or was given up.
 *
 * A failure ends the turn and asks for another one after a pause. The last failure gives the message up and takes the
 * webhook out of use with a note; what waits behind it stays and goes once somebody puts it in use again. A message
 * may arrive twice when its answer was lost, with the same id each time.
 */
export async function sendWaiting(webhookId: string, send: Send): Promise<void> {
  const end = Date.now() + TURN_MS;
  for (;;) {
    const hook = await database().webhook.findUnique({ where: { id: webhookId, disabledAt: null } });
    const delivery = hook && (await nextOf(webhookId));
    if (!hook || !delivery) return;
    if (!(await sendOne(hook, delivery, send))) return;
    if (Date.now() > end) return queueSending(database(), webhookId);
  }
}

function nextOf(webhookId: string) {
  return database().webhookDelivery.findFirst({
    where: { webhookId, state: "waiting" },
    orderBy: { sequence: "asc" },
  });
}

/** @returns Whether it arrived. */
async function sendOne(hook: Webhook, delivery: WebhookDelivery, send: Send): Promise<boolean> {
  const { id, body } = delivery;
  const answered = await send({ address: hook.address, headers: headersOf(hook, delivery), body });
  const { status, answer } = answered;
  const arrived = status !== null && status >= 200 && status < 300;
  const tries = delivery.tries + 1;
  const pause = PAUSES[tries - 1];
  const state = arrived ? "delivered" : pause === undefined ? "given_up" : "waiting";
  await database().$transaction(async (tx) => {
    const tried = { tries, status, answer: printable(answer), triedAt: new Date() };
    await tx.webhookDelivery.update({ where: { id }, data: { state, ...tried } });
    if (arrived)
      await tx.$executeRaw`
        DELETE FROM "WebhookDelivery" WHERE "webhookId" = ${hook.id}::uuid AND "state" = 'delivered'
          AND "createdAt" < now() - make_interval(days => ${KEPT_DAYS}::int)`;
    if (state === "given_up") {
      const disabledReason = `A message failed ${tries} times, the last time with: ${outcome(answered)}`;
      await tx.webhook.updateMany({
        where: { id: hook.id, disabledAt: null },
        data: { disabledAt: new Date(), disabledReason, version: { increment: 1 } },
      });
    }
    if (state === "waiting" && pause !== undefined)
      await tx.$executeRaw`
        SELECT graphile_worker.add_job('sendWebhook', json_build_object('webhookId', ${hook.id}::text),
          queue_name := 'webhook:' || ${hook.id}::text, job_key := 'webhook:' || ${hook.id}::text,
          run_at := now() + make_interval(secs => ${pause}::int))`;
  });
  return arrived;
}

function headersOf(hook: Webhook, { id, subject, body }: WebhookDelivery): Record<string, string> {
  const time = Math.floor(Date.now() / 1000);
  const isFormerGood = hook.formerUntil !== null && hook.formerUntil.getTime() > Date.now();
  const generations = isFormerGood ? [hook.generation, hook.generation - 1] : [hook.generation];
  const signatures = generations.map(
    (generation) => `v1=${signature(webhookSecret(hook.id, generation), { id, time, body })}`,
  );
  return {
    "Content-Type": "application/json; charset=utf-8",
    "User-Agent": "Ebbline",
    "Ebbline-Message": id,
    "Ebbline-Subject": subject,
    "Ebbline-Time": String(time),
    "Ebbline-Signature": signatures.join(","),
  };
}

const outcome = ({ status, answer }: Answered) =>
  status === null ? printable(answer) : `status ${status}. ${printable(answer)}`;

/** PostgreSQL keeps no NUL in a text. */
const printable = (text: string) => text.replaceAll("\0", "");
