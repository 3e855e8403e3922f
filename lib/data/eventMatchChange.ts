import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { PartPair, SettlePair } from "@/lib/schema/eventMatch";
import { FILLED_FIELDS, type FilledField } from "@/lib/view/eventPair";
import type { Event, Prisma } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There are no such two records that you may settle." };
const settled: Refusal = {
  code: "conflict",
  reason: "One of the two was settled or set aside meanwhile. Nothing was changed; load the page again.",
};
const gone: Refusal = { code: "missing", reason: "There is no such pair that you may part." };

/**
 * Keeps what a person said of two records.
 *
 * One event: the other record is set aside, and the one that counts takes over what it lacked. Two events: neither
 * changes, and they are not asked about again.
 */
export async function settleEvents(
  actor: Actor,
  { keptId, otherId, verdict, reason }: SettlePair,
): Promise<Result<{ matchId: string }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const pair = await findPair(tx, actor, { keptId, otherId });
    if (!pair.ok) return pair;
    const { kept, other } = pair.value;
    const { siteId } = kept;
    const same = verdict === "same";
    const filled = same ? lacking(kept, other) : {};
    const match = await tx.eventMatch.create({
      data: {
        ...{ siteId, keptId, otherId, verdict, reason, filled, decidedBy: actor.name },
        decidedOn: new Date(`${today}T00:00:00Z`),
      },
    });
    if (same) await merge(tx, { kept, other, filled });
    record({
      ...{ deed: `event:${verdict}`, entity: "EventMatch", entityId: match.id, siteId },
      ...{ after: { keptId, otherId, reason, filled }, ...countsAsBefore(verdict) },
    });
    return ok({ matchId: match.id });
  });
}

/** Two records kept apart count as they did, so no figure moves. */
const countsAsBefore = (verdict: string) => (verdict === "same" ? {} : { beside: true as const });

/** The two records, held so that of two people settling them one comes after the other, and both still count. */
async function findPair(
  tx: Transaction,
  actor: Actor,
  { keptId, otherId }: Pick<SettlePair, "keptId" | "otherId">,
): Promise<Result<{ kept: Event; other: Event }, Refusal>> {
  const ids = [keptId, otherId];
  await tx.$queryRaw`SELECT "id" FROM "Event" WHERE "id" = ANY(${ids}::uuid[]) ORDER BY "id" FOR UPDATE`;
  const rows = await tx.event.findMany({ where: { id: { in: ids }, ...atSites(actor, "event:write") } });
  const [kept, other] = ids.map((id) => rows.find((row) => row.id === id));
  if (!kept || !other || kept.siteId !== other.siteId) return err(missing);
  const spoken = await tx.eventMatch.count({ where: { keptId: { in: ids }, otherId: { in: ids } } });
  const count = [kept, other].every(({ setAside }) => setAside === null);
  return count && spoken === 0 ? ok({ kept, other }) : err(settled);
}

/** Values taken over, as they are kept: decimals as text. */
type Filled = { [F in FilledField]?: string | boolean };

/** What the record that counts does not say and the other does. */
function lacking(kept: Event, other: Event): Filled {
  const plain = (value: Event[FilledField]) =>
    typeof value === "object" && value !== null ? value.toString() : value;
  return Object.fromEntries(
    (Object.keys(FILLED_FIELDS) as FilledField[]).flatMap((field) =>
      kept[field] === null && other[field] !== null ? [[field, plain(other[field])]] : [],
    ),
  );
}

interface Merged {
  readonly kept: Event;
  readonly other: Event;
  readonly filled: Filled;
}

async function merge(tx: Transaction, { kept, other, filled }: Merged): Promise<void> {
  await tx.event.update({ where: { id: kept.id }, data: filled as Prisma.EventUncheckedUpdateInput });
  await tx.event.update({
    where: { id: other.id },
    data: { setAside: `Same event as ${kept.source} ${kept.reference}` },
  });
}

/** Takes back what was said of two records: both count again, and what was taken over goes, unless changed since. */
export async function partEvents(actor: Actor, { matchId }: PartPair): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const match = await tx.eventMatch.findFirst({
      where: { id: matchId, ...atSites(actor, "event:write") },
      include: { kept: true },
    });
    if (!match) return err(gone);
    const filled = match.filled as Filled;
    const still = Object.entries(filled).filter(
      ([field, value]) => match.kept[field as FilledField]?.toString() === value?.toString(),
    );
    await tx.event.update({
      where: { id: match.keptId },
      data: Object.fromEntries(still.map(([field]) => [field, null])),
    });
    // The record set aside counts again by the trigger on this table.
    await tx.eventMatch.delete({ where: { id: matchId } });
    record({
      ...{ deed: "event:part", entity: "EventMatch", entityId: matchId, siteId: match.siteId },
      ...countsAsBefore(match.verdict),
      before: { keptId: match.keptId, otherId: match.otherId, verdict: match.verdict, reason: match.reason },
    });
    return ok(null);
  });
}
