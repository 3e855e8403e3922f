import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { seenTransfers } from "@/lib/data/transferChange";
import { stepsOpen } from "@/lib/schema/transferSteps";
import type { SeenTransfer } from "@/lib/view/transfer";

const CLOSED_SHOWN = 30;

const site = { select: { code: true, timeZone: true } } as const;

/**
 * Transfers with an end at the actor's sites, of one part or of all: the open ones, and the last that are closed.
 *
 * @param partId Null for all parts.
 */
export async function readTransfers(actor: Actor, partId: string | null): Promise<SeenTransfer[]> {
  if (partId !== null && !z.uuid().safeParse(partId).success) return [];
  const own = { ...seenTransfers(actor), ...(partId === null ? {} : { partId }) };
  const include = {
    ...{ fromSite: site, toSite: site, part: { select: { number: true } } },
    steps: { orderBy: [{ at: "asc" as const }, { id: "asc" as const }] },
  };
  const open = ["proposed", "agreed", "sent"] as const;
  const [running, closed] = await Promise.all([
    database().transfer.findMany({
      where: { ...own, state: { in: [...open] } },
      include,
      orderBy: { id: "desc" },
    }),
    database().transfer.findMany({
      where: { ...own, state: { notIn: [...open] } },
      ...{ include, orderBy: { id: "desc" }, take: CLOSED_SHOWN },
    }),
  ]);
  return [...running, ...closed].map((row): SeenTransfer => {
    const { id, bin, revision, pieces, state, refusal } = row;
    const may = {
      giver: mayAt(actor.grants, "stock:write", row.fromSiteId),
      taker: mayAt(actor.grants, "stock:write", row.toSiteId),
    };
    return {
      ...{ id, partId: row.partId, bin, revision, pieces, state, refusal, number: row.part.number },
      ...{ fromSite: row.fromSite.code, toSite: row.toSite.code, timeZone: row.fromSite.timeZone },
      steps: row.steps.map(({ at, back, by, note, state: to }) => ({
        ...{ state: to, back, by, note },
        at: at.toISOString(),
      })),
      may: stepsOpen(state, may),
    };
  });
}

/** Pieces that lie on no shelf because they are under way, by part, with an end at the actor's sites. */
export async function readUnderWay(actor: Actor): Promise<ReadonlyMap<string, number>> {
  const rows = await database().transfer.groupBy({
    by: ["partId"],
    where: { ...seenTransfers(actor), state: "sent" },
    _sum: { pieces: true },
  });
  return new Map(rows.map(({ partId, _sum }) => [partId, _sum.pieces ?? 0]));
}
