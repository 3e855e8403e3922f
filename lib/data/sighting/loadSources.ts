import "server-only";
import type { Transaction } from "@/lib/data/change";
import { inService } from "@/lib/data/quality/inService";
import { compareSources, type SourceComparison } from "@/lib/intake/sightings/compareSources";
import type { RegisterItem, SeenDevice } from "@/lib/intake/sightings/device";
import type { IsoDate } from "@/lib/kernel/isoDate";

export interface AtSite {
  readonly siteId: string;
  readonly asOf: IsoDate;
}

/** Where a list may have seen the things of one machine. */
export interface Around {
  /** Networks and controllers. */
  readonly places: readonly string[];
  readonly serials: readonly string[];
}

/** What lists saw at a site up to a day, or only around one machine; alike devices put together. */
export function loadDevices(
  tx: Transaction,
  { siteId, asOf }: AtSite,
  around: Around | null = null,
): Promise<SeenDevice[]> {
  const { places = null, serials = null } = around ?? {};
  return tx.$queryRaw<SeenDevice[]>`
    SELECT (array_agg(t."id" ORDER BY t."seenOn" DESC, t."id"))[1]::text AS "id",
      t."source", t."line", t."machine", t."network", t."controller", t."slot", t."address", t."name", t."maker",
      t."number", t."revision", t."firmware", t."serial", (array_agg(t."status" ORDER BY t."seenOn" DESC, t."id"))[1] AS "status",
      min(t."seenOn")::text AS "firstOn", max(t."seenOn")::text AS "lastOn"
    FROM "Sighting" t WHERE t."siteId" = ${siteId}::uuid AND t."seenOn" <= ${asOf}::date
      AND (${places}::text[] IS NULL OR t."network" = ANY(${places}::text[]) OR t."controller" = ANY(${places}::text[])
        OR t."name" = ANY(${places}::text[]) OR t."serial" = ANY(${serials}::text[]))
    GROUP BY 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14
    ORDER BY t."source", t."network", t."controller", t."slot", t."address", max(t."seenOn") DESC, 1`;
}

/** The drive places and controllers of a site, or of one machine of it, on a day, without what is retired. */
export async function loadRegisterItems(
  tx: Transaction,
  { siteId, asOf }: AtSite,
  machineId: string | null = null,
): Promise<RegisterItem[]> {
  const places = await tx.$queryRaw<RegisterItem[]>`
    SELECT 'place' AS "kind", p."id"::text AS "id", l."code" AS "lineCode", m."code" AS "machineCode",
      m."id"::text AS "machineId", a."code" AS "axisCode", p."designation", n."name" AS "network",
      a."nodeAddress" AS "node", c."designation" AS "controller", part."maker", part."number",
      array(SELECT alias."alias" FROM "PartAlias" alias
        WHERE alias."partId" = part."id" AND (alias."siteId" IS NULL OR alias."siteId" = l."siteId")) AS "aliases",
      u."revision", u."serial", NULL AS "firmware"
    FROM "Position" p
    JOIN "Machine" m ON m."id" = p."machineId"
    JOIN "Line" l ON l."id" = m."lineId"
    LEFT JOIN "Axis" a ON a."id" = p."axisId"
    LEFT JOIN "Network" n ON n."id" = a."networkId"
    LEFT JOIN "Controller" c ON c."id" = m."controllerId"
    LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
      AND coalesce(pl."fromOn" <= ${asOf}::date, true) AND coalesce(pl."untilOn" > ${asOf}::date, true)
    LEFT JOIN "Unit" u ON u."id" = pl."unitId"
    LEFT JOIN "Part" part ON part."id" = coalesce(u."partId", p."partId")
    WHERE l."siteId" = ${siteId}::uuid AND p."itemClass" = 'drive'
      AND (${machineId}::uuid IS NULL OR m."id" = ${machineId}::uuid)
      AND ${inService(asOf)}
    ORDER BY l."code", m."code", p."designation"`;
  const controllers = await tx.$queryRaw<RegisterItem[]>`
    SELECT 'controller' AS "kind", c."id"::text AS "id", min(l."code") AS "lineCode", NULL AS "machineCode",
      (array_agg(m."id" ORDER BY m."code"))[1]::text AS "machineId", NULL AS "axisCode", c."designation",
      NULL AS "network", NULL AS "node", c."designation" AS "controller", NULL AS "maker",
      nullif(c."model", 'not recorded') AS "number", '{}'::text[] AS "aliases", NULL AS "revision", NULL AS "serial",
      coalesce(c."firmwareRaw", c."firmware"::text) AS "firmware"
    FROM "Controller" c
    LEFT JOIN "Machine" m ON m."controllerId" = c."id"
    LEFT JOIN "Line" l ON l."id" = m."lineId"
    WHERE c."siteId" = ${siteId}::uuid AND (${machineId}::uuid IS NULL OR m."id" = ${machineId}::uuid)
    GROUP BY c."id" ORDER BY c."designation"`;
  return [...places, ...controllers];
}

/** What a site's lists and its register say of each other; a site without lists costs one question. */
export async function loadComparison(tx: Transaction, at: AtSite): Promise<SourceComparison> {
  const devices = await loadDevices(tx, at);
  return compareSources(devices.length === 0 ? [] : await loadRegisterItems(tx, at), devices);
}
