import "server-only";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";

/** A webhook as it is listed. Instants are RFC 3339. */
export interface WebhookRow {
  readonly id: string;
  readonly name: string;
  readonly address: string;
  readonly subjects: readonly string[];
  readonly siteCode: string | null;
  readonly createdAt: string;
  readonly formerUntil: string | null;
  readonly disabledAt: string | null;
  readonly disabledReason: string | null;
  readonly version: number;
  /** Messages not yet there. */
  readonly waiting: number;
}

export interface DeliveryRow {
  readonly id: string;
  readonly subject: string;
  readonly state: "waiting" | "delivered" | "given_up";
  readonly tries: number;
  readonly createdAt: string;
  readonly triedAt: string | null;
  readonly status: number | null;
  readonly answer: string | null;
  readonly body: string;
}

const MOST_SHOWN = 100;

/** Webhooks tell of every site, so they are an administrator's of all sites. */
export function rulesWebhooks(actor: Actor): boolean {
  return scopeOf(actor.grants, "people:write") === "all";
}

const columns = {
  site: { select: { code: true } },
  _count: { select: { deliveries: { where: { state: "waiting" } } } },
} as const;

/** All webhooks, the first made first; empty for who may not know. */
export async function readWebhooks(actor: Actor): Promise<WebhookRow[]> {
  if (!rulesWebhooks(actor)) return [];
  const rows = await database().webhook.findMany({ orderBy: { id: "asc" }, include: columns });
  return rows.map(rowOf);
}

/** One webhook with its last messages, the newest first; null when there is none for this person. */
export async function readWebhook(
  actor: Actor,
  id: string,
): Promise<{ webhook: WebhookRow; deliveries: DeliveryRow[] } | null> {
  if (!rulesWebhooks(actor)) return null;
  const hook = await database().webhook.findUnique({
    where: { id },
    include: { ...columns, deliveries: { orderBy: { sequence: "desc" }, take: MOST_SHOWN } },
  });
  if (!hook) return null;
  const deliveries = hook.deliveries.map(({ createdAt, triedAt, ...row }) => {
    const { subject, state, tries, status, answer, body } = row;
    const at = { createdAt: createdAt.toISOString(), triedAt: triedAt?.toISOString() ?? null };
    return { ...{ id: row.id, subject, state, tries, status, answer, body }, ...at };
  });
  return { webhook: rowOf(hook), deliveries };
}

interface Stored {
  readonly id: string;
  readonly name: string;
  readonly address: string;
  readonly subjects: string[];
  readonly site: { readonly code: string } | null;
  readonly createdAt: Date;
  readonly formerUntil: Date | null;
  readonly disabledAt: Date | null;
  readonly disabledReason: string | null;
  readonly version: number;
  readonly _count: { readonly deliveries: number };
}

function rowOf(row: Stored): WebhookRow {
  const { id, name, address, subjects, disabledReason, version } = row;
  return {
    ...{ id, name, address, subjects, disabledReason, version },
    siteCode: row.site?.code ?? null,
    createdAt: row.createdAt.toISOString(),
    formerUntil: row.formerUntil?.toISOString() ?? null,
    disabledAt: row.disabledAt?.toISOString() ?? null,
    waiting: row._count.deliveries,
  };
}
