import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { Entity, Kept } from "@/lib/intake/intents/intent";
import { Prisma } from "@/prisma/generated/client";

/** A thing as it stands in the database: its id, its fields, and the site it belongs to, if any. */
export interface Stored {
  readonly key: string;
  readonly id: string;
  readonly row: Readonly<Record<string, Kept>>;
}

/** Keys with their parts, so that each is found by the index of its table rather than by going over all rows. */
const parts = (keys: readonly string[]) =>
  Prisma.sql`(SELECT "key", string_to_array("key", '␟') AS p FROM unnest(${keys}::text[]) AS u("key")) k`;

type Find = (tx: Transaction, keys: readonly string[]) => Promise<Stored[]>;

/**
 * How each entity is found by the natural key people call it by.
 *
 * The separator is the one `keyOf` puts between the parts of a key.
 */
const finders: Readonly<Record<Entity, Find>> = {
  CurrencyRate: (tx, keys) => tx.$queryRaw`
    SELECT t."currency" AS "key", t."currency" AS "id", to_jsonb(t) AS "row"
    FROM "CurrencyRate" t WHERE t."currency" = ANY(${keys}::text[])`,
  Site: (tx, keys) => tx.$queryRaw`
    SELECT t."code" AS "key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM "Site" t WHERE t."code" = ANY(${keys}::text[])`,
  Line: (tx, keys) => tx.$queryRaw`
    SELECT t."code" AS "key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM "Line" t WHERE t."code" = ANY(${keys}::text[])`,
  Controller: (tx, keys) => tx.$queryRaw`
    SELECT s."code" || '␟' || t."designation" AS "key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM "Controller" t JOIN "Site" s ON s."id" = t."siteId"
    WHERE s."code" || '␟' || t."designation" = ANY(${keys}::text[])`,
  Machine: (tx, keys) => tx.$queryRaw`
    SELECT k."key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM ${parts(keys)} JOIN "Line" l ON l."code" = k.p[1]
    JOIN "Machine" t ON t."lineId" = l."id" AND t."code" = k.p[2]`,
  Panel: (tx, keys) => tx.$queryRaw`
    SELECT l."code" || '␟' || m."code" || '␟' || t."designation" AS "key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM "Panel" t JOIN "Machine" m ON m."id" = t."machineId" JOIN "Line" l ON l."id" = m."lineId"
    WHERE l."code" || '␟' || m."code" || '␟' || t."designation" = ANY(${keys}::text[])`,
  Network: (tx, keys) => tx.$queryRaw`
    SELECT s."code" || '␟' || t."name" AS "key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM "Network" t JOIN "Site" s ON s."id" = t."siteId"
    WHERE s."code" || '␟' || t."name" = ANY(${keys}::text[])`,
  Axis: (tx, keys) => tx.$queryRaw`
    SELECT l."code" || '␟' || m."code" || '␟' || t."code" AS "key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM "Axis" t JOIN "Machine" m ON m."id" = t."machineId" JOIN "Line" l ON l."id" = m."lineId"
    WHERE l."code" || '␟' || m."code" || '␟' || t."code" = ANY(${keys}::text[])`,
  Family: (tx, keys) => tx.$queryRaw`
    SELECT t."maker" || '␟' || t."name" AS "key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM "Family" t WHERE t."maker" || '␟' || t."name" = ANY(${keys}::text[])`,
  Part: (tx, keys) => tx.$queryRaw`
    SELECT k."key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM ${parts(keys)} JOIN "Part" t ON t."maker" = k.p[1] AND t."number" = k.p[2]`,
  PartAlias: (tx, keys) => tx.$queryRaw`
    SELECT coalesce(s."code", '') || '␟' || t."alias" AS "key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM "PartAlias" t LEFT JOIN "Site" s ON s."id" = t."siteId"
    WHERE coalesce(s."code", '') || '␟' || t."alias" = ANY(${keys}::text[])`,
  Successor: (tx, keys) => tx.$queryRaw`
    SELECT p."maker" || '␟' || p."number" || '␟' || n."maker" || '␟' || n."number" AS "key",
      t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM "Successor" t JOIN "Part" p ON p."id" = t."partId" JOIN "Part" n ON n."id" = t."successorId"
    WHERE p."maker" || '␟' || p."number" || '␟' || n."maker" || '␟' || n."number" = ANY(${keys}::text[])`,
  LifecycleFact: (tx, keys) => tx.$queryRaw`
    SELECT * FROM (
      SELECT coalesce('P␟' || p."maker" || '␟' || p."number", 'F␟' || f."maker" || '␟' || f."name")
          || '␟' || t."source" || '␟' || t."checkedOn" AS "key",
        t."id"::text AS "id", to_jsonb(t) AS "row"
      FROM "LifecycleFact" t
      LEFT JOIN "Part" p ON p."id" = t."partId" LEFT JOIN "Family" f ON f."id" = t."familyId"
    ) found WHERE found."key" = ANY(${keys}::text[])`,
  Position: (tx, keys) => tx.$queryRaw`
    SELECT k."key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM ${parts(keys)} JOIN "Line" l ON l."code" = k.p[1]
    JOIN "Machine" m ON m."lineId" = l."id" AND m."code" = k.p[2]
    JOIN "Position" t ON t."machineId" = m."id" AND t."designation" = k.p[3]`,
  Unit: (tx, keys) => tx.$queryRaw`
    SELECT p."maker" || '␟' || p."number" || '␟' || t."serial" AS "key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM "Unit" t JOIN "Part" p ON p."id" = t."partId"
    WHERE p."maker" || '␟' || p."number" || '␟' || t."serial" = ANY(${keys}::text[])`,
  Placement: (tx, keys) => tx.$queryRaw`
    SELECT l."code" || '␟' || m."code" || '␟' || p."designation" AS "key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM "Placement" t JOIN "Position" p ON p."id" = t."positionId"
    JOIN "Machine" m ON m."id" = p."machineId" JOIN "Line" l ON l."id" = m."lineId"
    WHERE t."untilOn" IS NULL AND l."code" || '␟' || m."code" || '␟' || p."designation" = ANY(${keys}::text[])`,
  StockLot: (tx, keys) => tx.$queryRaw`
    SELECT k."key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM ${parts(keys)} JOIN "Site" s ON s."code" = k.p[1]
    JOIN "Part" p ON p."maker" = k.p[2] AND p."number" = k.p[3]
    JOIN "StockLot" t ON t."siteId" = s."id" AND t."partId" = p."id" AND t."bin" = k.p[4]
      AND t."revision" = k.p[5] AND t."state"::text = k.p[6]`,
  Event: (tx, keys) => tx.$queryRaw`
    SELECT k."key", t."id"::text AS "id", to_jsonb(t) AS "row"
    FROM ${parts(keys)} JOIN "Site" s ON s."code" = k.p[1]
    JOIN "Event" t ON t."siteId" = s."id" AND t."source" = k.p[2] AND t."reference" = k.p[3]`,
  Backup: (tx, keys) => tx.$queryRaw`
    SELECT * FROM (
      SELECT s."code" || '␟' || c."designation" || '␟' || t."kind" || '␟' || t."takenOn" || '␟' || t."keptAt" AS "key",
        t."id"::text AS "id", to_jsonb(t) AS "row"
      FROM "Backup" t JOIN "Controller" c ON c."id" = t."controllerId" JOIN "Site" s ON s."id" = c."siteId"
    ) found WHERE found."key" = ANY(${keys}::text[]) ORDER BY "id" DESC`,
  Contact: (tx, keys) => tx.$queryRaw`
    SELECT * FROM (
      SELECT s."code" || '␟' || coalesce(l."code", '') || '␟' || t."role" AS "key",
        t."id"::text AS "id", to_jsonb(t) AS "row"
      FROM "Contact" t JOIN "Site" s ON s."id" = t."siteId" LEFT JOIN "Line" l ON l."id" = t."lineId"
    ) found WHERE found."key" = ANY(${keys}::text[]) ORDER BY "id" DESC`,
  ShutdownWindow: (tx, keys) => tx.$queryRaw`
    SELECT * FROM (
      SELECT s."code" || '␟' || coalesce(l."code", '') || '␟' || t."startsOn" AS "key",
        t."id"::text AS "id", to_jsonb(t) AS "row"
      FROM "ShutdownWindow" t JOIN "Site" s ON s."id" = t."siteId" LEFT JOIN "Line" l ON l."id" = t."lineId"
    ) found WHERE found."key" = ANY(${keys}::text[]) ORDER BY "id" DESC`,
  Sighting: (tx, keys) => tx.$queryRaw`
    SELECT * FROM (
      SELECT s."code" || '␟' || t."source" || '␟' || t."network" || '␟' || t."controller" || '␟' || t."slot"
          || '␟' || t."address" || '␟' || t."seenOn" AS "key",
        t."id"::text AS "id", to_jsonb(t) AS "row"
      FROM "Sighting" t JOIN "Site" s ON s."id" = t."siteId"
    ) found WHERE found."key" = ANY(${keys}::text[]) ORDER BY "id" DESC`,
};

/** What is stored under these natural keys, by key. */
export async function findStored(
  tx: Transaction,
  entity: Entity,
  keys: readonly string[],
): Promise<Map<string, Stored>> {
  const found = keys.length === 0 ? [] : await finders[entity](tx, keys);
  return new Map(found.map((one) => [one.key, one]));
}
