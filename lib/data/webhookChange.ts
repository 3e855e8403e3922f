import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { webhookSecret } from "@/lib/access/webhookSecret";
import { change, type Transaction } from "@/lib/data/change";
import { queueSending, trialMessage } from "@/lib/data/interface/queueDeliveries";
import { rulesWebhooks } from "@/lib/data/webhooks";
import { webhookAllow } from "@/lib/env";
import { reachOf, readAllowed } from "@/lib/jobs/addressGuard";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { MakeWebhook, OfWebhook, ResendDelivery, SwitchWebhook } from "@/lib/schema/webhook";

const notYours: Refusal = {
  code: "forbidden",
  reason: "Only an administrator of all sites says which systems are told of changes.",
};
const missing: Refusal = { code: "missing", reason: "There is no such webhook." };
const moved: Refusal = {
  code: "conflict",
  reason: "This webhook changed since you opened the page. Nothing was changed; load the page again.",
};

/** How long the former secret goes on signing beside the new one. */
const FORMER_MS = 24 * 3_600_000;

/** Registers an address to be told of changes; its secret is told this once. */
export async function makeHook(
  actor: Actor,
  { name, address, subjects, siteId }: MakeWebhook,
): Promise<Result<{ id: string; secret: string }, Refusal>> {
  if (!rulesWebhooks(actor)) return err(notYours);
  const reach = await reachOf(new URL(address), readAllowed(webhookAllow()));
  if ("refused" in reach)
    return err({ code: "invalid", reason: reach.refused, fields: { address: reach.refused } });
  return change(actor, async (tx, record) => {
    if (siteId !== null && (await tx.site.count({ where: { id: siteId } })) === 0)
      return err({ code: "missing", reason: "There is no such site." });
    const data = { name, address, subjects, siteId };
    const hook = await tx.webhook.create({ data: { ...data, createdBy: actor.userId } });
    record({ deed: "webhook:make", entity: "Webhook", entityId: hook.id, after: data });
    return ok({ id: hook.id, secret: webhookSecret(hook.id, hook.generation) });
  });
}

/** Puts a webhook in or out of use; what waits goes when it is in use again. */
export async function switchHook(
  actor: Actor,
  { webhookId, version, inUse }: SwitchWebhook,
): Promise<Result<null, Refusal>> {
  return changeHook(actor, webhookId, async (tx) => {
    const { count } = await tx.webhook.updateMany({
      where: { id: webhookId, version },
      data: inUse
        ? { disabledAt: null, disabledReason: null, version: { increment: 1 } }
        : { disabledAt: new Date(), disabledReason: "By hand.", version: { increment: 1 } },
    });
    if (count === 0) return err(moved);
    if (inUse) await queueSending(tx, webhookId, "now");
    return ok({ deed: inUse ? "webhook:use" : "webhook:rest", value: null });
  });
}

/** Gives a webhook a new secret, told this once; the former one signs beside it for a day. */
export async function renewSecret(
  actor: Actor,
  { webhookId }: OfWebhook,
): Promise<Result<{ secret: string }, Refusal>> {
  return changeHook(actor, webhookId, async (tx) => {
    const { generation } = await tx.webhook.update({
      where: { id: webhookId },
      data: { generation: { increment: 1 }, formerUntil: new Date(Date.now() + FORMER_MS) },
    });
    return ok({ deed: "webhook:secret", value: { secret: webhookSecret(webhookId, generation) } });
  });
}

/** Puts a message that only tries the way behind those that wait. */
export async function tryHook(actor: Actor, { webhookId }: OfWebhook): Promise<Result<null, Refusal>> {
  return changeHook(actor, webhookId, async (tx) => {
    await tx.webhookDelivery.create({ data: { webhookId, ...trialMessage() } });
    await queueSending(tx, webhookId);
    return ok({ deed: "webhook:try", value: null });
  });
}

/** Takes a webhook away, with its messages. */
export async function dropHook(actor: Actor, { webhookId }: OfWebhook): Promise<Result<null, Refusal>> {
  return changeHook(actor, webhookId, async (tx) => {
    await tx.webhook.delete({ where: { id: webhookId } });
    return ok({ deed: "webhook:drop", value: null });
  });
}

/** Sends a message again, with the id it had, in its old place in the order. */
export async function resend(actor: Actor, { deliveryId }: ResendDelivery): Promise<Result<null, Refusal>> {
  if (!rulesWebhooks(actor)) return err(notYours);
  return change(actor, async (tx, record) => {
    const delivery = await tx.webhookDelivery.findUnique({
      where: { id: deliveryId },
      select: { webhookId: true },
    });
    if (!delivery) return err({ code: "missing", reason: "There is no such message." });
    const { webhookId } = delivery;
    await tx.webhookDelivery.update({ where: { id: deliveryId }, data: { state: "waiting", tries: 0 } });
    await queueSending(tx, webhookId, "now");
    record({
      ...{ deed: "webhook:resend", entity: "Webhook", entityId: webhookId },
      after: { deliveryId },
    });
    return ok(null);
  });
}

type Done<T> = Result<{ readonly deed: string; readonly value: T }, Refusal>;

/** A change of a webhook there is, with its audit entry. */
async function changeHook<T>(
  actor: Actor,
  webhookId: string,
  run: (tx: Transaction) => Promise<Done<T>>,
): Promise<Result<T, Refusal>> {
  if (!rulesWebhooks(actor)) return err(notYours);
  return change(actor, async (tx, record) => {
    const hook = await tx.webhook.findUnique({
      where: { id: webhookId },
      select: { name: true, address: true },
    });
    if (!hook) return err(missing);
    const done = await run(tx);
    if (!done.ok) return done;
    record({ deed: done.value.deed, entity: "Webhook", entityId: webhookId, before: hook });
    return ok(done.value.value);
  });
}
