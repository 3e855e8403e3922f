import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { atSiteIds, loadListed } from "@/lib/data/event/listedEvents";
import { WINDOW_YEARS } from "@/lib/data/group/loadExperience";
import { atSites, siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { type EventPair, FILLED_FIELDS, type ListedEvent, type SettledPair } from "@/lib/view/eventPair";
import { Prisma } from "@/prisma/generated/client";

const MOST_EVENTS = 3000;
const MOST_PAIRS = 100;
/** Days in which a second record of one event usually arrives. */
const CLOSE_DAYS = 3;

/** Events of the days before a day at the actor's sites, newest first; `cut` tells that there are more. */
export async function readEvents(
  actor: Actor,
  { asOf, days }: { readonly asOf: IsoDate; readonly days: number },
): Promise<{ events: ListedEvent[]; cut: boolean }> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const where = Prisma.sql`${atSiteIds(ids)} AND e."happenedAt" < ${asOf}::date + 1
    AND e."happenedAt" >= ${asOf}::date - ${days}::int`;
  const events = await loadListed(database(), { where, most: MOST_EVENTS + 1 });
  return { events: events.slice(0, MOST_EVENTS), cut: events.length > MOST_EVENTS };
}

interface PairRow {
  readonly first: string;
  readonly second: string;
  readonly hoursApart: number;
}

async function pairsOf<Row extends PairRow>(rows: readonly Row[]): Promise<(EventPair & { row: Row })[]> {
  const ids = [...new Set(rows.flatMap(({ first, second }) => [first, second]))];
  const where = Prisma.sql`e."id" = ANY(${ids}::uuid[])`;
  const events = await loadListed(database(), { where, most: Math.max(1, ids.length) });
  const byId = new Map(events.map((event) => [event.id, event]));
  return rows.flatMap((row) => {
    const [first, second] = [byId.get(row.first), byId.get(row.second)];
    return first && second ? [{ first, second, hoursApart: row.hoursApart, row }] : [];
  });
}

/**
 * Records of different registers that count both and may be of one event: the same line within three days, and
 * nothing that both say differs. Newest first; those a person parted are left out.
 */
export async function readLikelyPairs(actor: Actor, asOf: IsoDate): Promise<EventPair[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<PairRow[]>`
    WITH own AS MATERIALIZED (
      SELECT e."id", e."siteId", e."source", e."happenedAt", e."happenedAt"::date AS "day", e."positionId",
        coalesce(e."machineId", p."machineId") AS "machineId", coalesce(e."lineId", m."lineId") AS "lineId",
        coalesce(e."partId", p."partId") AS "partId", coalesce(p."itemClass", e."itemClass") AS "itemClass"
      FROM "Event" e
      LEFT JOIN "Position" p ON p."id" = e."positionId"
      LEFT JOIN "Machine" m ON m."id" = coalesce(e."machineId", p."machineId")
      WHERE e."setAside" IS NULL AND ${atSiteIds(ids)} AND e."happenedAt" < ${asOf}::date + 1
        AND e."happenedAt" >= ${asOf}::date - make_interval(years => ${WINDOW_YEARS}::int)
    )
    SELECT a."id"::text AS "first", b."id"::text AS "second",
      (abs(extract(epoch FROM a."happenedAt" - b."happenedAt")) / 3600)::float8 AS "hoursApart"
    FROM own a
    CROSS JOIN generate_series(-${CLOSE_DAYS}::int, ${CLOSE_DAYS}::int) AS apart
    JOIN own b ON b."lineId" = a."lineId" AND b."day" = a."day" + apart AND a."id" < b."id"
    WHERE a."source" <> b."source"
      AND abs(extract(epoch FROM a."happenedAt" - b."happenedAt")) <= ${CLOSE_DAYS}::int * 86400
      AND coalesce(a."machineId", b."machineId") IS NOT DISTINCT FROM coalesce(b."machineId", a."machineId")
      AND coalesce(a."positionId", b."positionId") IS NOT DISTINCT FROM coalesce(b."positionId", a."positionId")
      AND coalesce(a."partId", b."partId") IS NOT DISTINCT FROM coalesce(b."partId", a."partId")
      AND coalesce(a."itemClass", b."itemClass") IS NOT DISTINCT FROM coalesce(b."itemClass", a."itemClass")
      AND NOT EXISTS (
        SELECT FROM "EventMatch" s WHERE s."keptId" IN (a."id", b."id") AND s."otherId" IN (a."id", b."id")
      )
    ORDER BY greatest(a."happenedAt", b."happenedAt") DESC, 3, 1, 2
    LIMIT ${MOST_PAIRS}`;
  return (await pairsOf(rows)).map(({ row: _, ...pair }) => pair);
}

/** What people said of pairs at the actor's sites, newest first. */
export async function readSettledPairs(actor: Actor): Promise<SettledPair[]> {
  const matches = await database().eventMatch.findMany({
    where: atSites(actor, "read"),
    include: { kept: { select: { happenedAt: true } }, other: { select: { happenedAt: true } } },
    orderBy: { id: "desc" },
    take: MOST_PAIRS,
  });
  const rows = matches.map((match) => ({
    ...{ match, first: match.keptId, second: match.otherId },
    hoursApart: Math.abs(match.kept.happenedAt.getTime() - match.other.happenedAt.getTime()) / 3_600_000,
  }));
  return (await pairsOf(rows)).map(({ row: { match }, ...pair }) => ({
    ...{ ...pair, matchId: match.id, keptId: match.keptId, verdict: match.verdict, reason: match.reason },
    ...{ decidedBy: match.decidedBy, decidedOn: match.decidedOn.toISOString().slice(0, 10) },
    filled: Object.keys(match.filled as object).map(
      (field) => FILLED_FIELDS[field as keyof typeof FILLED_FIELDS],
    ),
    mayPart: mayAt(actor.grants, "event:write", match.siteId),
  }));
}
