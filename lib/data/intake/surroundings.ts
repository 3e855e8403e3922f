import "server-only";
import type { Transaction } from "@/lib/data/change";
import { Catalogue, type KnownPart } from "@/lib/intake/intents/catalogue";
import type { Merged } from "@/lib/intake/intents/mergeIntents";
import type { Surroundings } from "@/lib/intake/intents/registerIntents";
import type { IsoDate } from "@/lib/kernel/isoDate";

/** The parts and lines known before a file is read. */
export async function loadSurroundings(tx: Transaction, recordedOn: IsoDate): Promise<Surroundings> {
  const parts = await tx.$queryRaw<KnownPart[]>`
    SELECT p."maker", p."number", p."itemClass"::text AS "itemClass",
      coalesce(array_agg(a."alias") FILTER (WHERE a."siteId" IS NULL AND a."alias" IS NOT NULL), '{}') AS "aliases"
    FROM "Part" p LEFT JOIN "PartAlias" a ON a."partId" = p."id"
    GROUP BY p."id" ORDER BY p."maker", p."number"`;
  const lines = await tx.line.findMany({ select: { code: true, site: { select: { code: true } } } });
  const siteByLine = new Map(lines.map((line) => [line.code, line.site.code]));
  return { catalogue: new Catalogue(parts), siteOfLine: (code) => siteByLine.get(code) ?? null, recordedOn };
}

/** Events say when on the site's own clock; here the times become instants by the zone of the site. */
export async function atSiteClocks(tx: Transaction, things: readonly Merged[]): Promise<Merged[]> {
  const events = things.filter(
    (thing) => thing.entity === "Event" && typeof thing.values.happenedAt === "string",
  );
  if (events.length === 0) return [...things];
  const instants = await tx.$queryRaw<{ key: string; at: string }[]>`
    SELECT e."key", to_char((e."local"::timestamp AT TIME ZONE s."timeZone") AT TIME ZONE 'UTC',
      'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS "at"
    FROM unnest(${events.map((e) => e.key)}::text[], ${events.map((e) => String(e.values.happenedAt))}::text[],
      ${events.map((e) => e.parents.siteId?.key ?? "")}::text[]) AS e("key", "local", "site")
    JOIN "Site" s ON s."code" = e."site"`;
  const byKey = new Map(instants.map(({ key, at }) => [key, at]));
  return things.map((thing) => {
    const at = thing.entity === "Event" ? byKey.get(thing.key) : undefined;
    return at === undefined ? thing : { ...thing, values: { ...thing.values, happenedAt: at } };
  });
}
