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
      coalesce(array_agg(a."alias") FILTER (WHERE a."siteId" IS NULL AND a."alias" IS NOT NULL), '{}') AS "aliases",
      coalesce(jsonb_agg(jsonb_build_object('siteCode', s."code", 'alias', a."alias"))
        FILTER (WHERE s."code" IS NOT NULL), '[]') AS "siteAliases"
    FROM "Part" p
    LEFT JOIN "PartAlias" a ON a."partId" = p."id"
    LEFT JOIN "Site" s ON s."id" = a."siteId"
    WHERE p."mergedIntoId" IS NULL
    GROUP BY p."id" ORDER BY p."maker", p."number"`;
  const merged = await loadMerged(tx);
  const lines = await tx.line.findMany({ select: { code: true, site: { select: { code: true } } } });
  const sites = await tx.site.findMany({ select: { code: true, timeZone: true } });
  const zones = new Map(sites.map(({ code, timeZone }) => [code, timeZone]));
  const siteByLine = new Map(lines.map((line) => [line.code, line.site.code]));
  return {
    catalogue: new Catalogue([...parts, ...merged]),
    siteOfLine: (code) => siteByLine.get(code) ?? null,
    recordedOn,
    zoneOfSite: (code) => zones.get(code) ?? null,
  };
}

/** Parts set aside: their maker and number still name the part they were merged into, over however many merges. */
async function loadMerged(tx: Transaction): Promise<KnownPart[]> {
  return tx.$queryRaw<KnownPart[]>`
    WITH RECURSIVE way AS (
      SELECT "id", "maker", "number", "itemClass", "mergedIntoId" AS "intoId" FROM "Part" WHERE "mergedIntoId" IS NOT NULL
      UNION ALL
      SELECT way."id", way."maker", way."number", way."itemClass", p."mergedIntoId"
      FROM way JOIN "Part" p ON p."id" = way."intoId" WHERE p."mergedIntoId" IS NOT NULL
    )
    SELECT way."maker", way."number", way."itemClass"::text AS "itemClass", '{}'::text[] AS "aliases",
      jsonb_build_object('maker', k."maker", 'number', k."number") AS "means"
    FROM way JOIN "Part" k ON k."id" = way."intoId" AND k."mergedIntoId" IS NULL
    ORDER BY way."maker", way."number"`;
}

/** Events say when on the site's own clock; here the times become instants by the zone of the site. */
export async function atSiteClocks(tx: Transaction, things: readonly Merged[]): Promise<Merged[]> {
  const events = things.filter(
    (thing) => thing.entity === "Event" && typeof thing.values.happenedAt === "string",
  );
  if (events.length === 0) return [...things];
  const [instants] = await tx.$queryRaw<{ at: (string | null)[] }[]>`
    SELECT array_agg(to_char((e."local"::timestamp AT TIME ZONE s."timeZone") AT TIME ZONE 'UTC',
      'YYYY-MM-DD"T"HH24:MI:SS"Z"') ORDER BY e."place") AS "at"
    FROM unnest(${events.map((e) => String(e.values.happenedAt))}::text[],
      ${events.map((e) => e.parents.siteId?.key ?? "")}::text[]) WITH ORDINALITY AS e("local", "site", "place")
    LEFT JOIN "Site" s ON s."code" = e."site"`;
  const atOf = new Map(events.map((event, place) => [event, instants?.at[place] ?? null]));
  return things.map((thing) => {
    const at = atOf.get(thing) ?? null;
    return at === null ? thing : { ...thing, values: { ...thing.values, happenedAt: at } };
  });
}
