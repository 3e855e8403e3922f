import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { ENTITIES, type Entity } from "@/lib/intake/intents/intent";
import type { Origin } from "@/lib/view/provenance";

const MOST_SHOWN = 20;

const thing = z.object({ entity: z.enum(ENTITIES), id: z.uuid() });

/**
 * Where a stored thing comes from: the rows of loaded files that made or changed it and the edits by hand since, the
 * newest first. A file that was taken back has left nothing and is not among them.
 *
 * @returns null when there is no such thing where the actor may read.
 */
export async function provenanceOf(
  actor: Actor,
  wanted: { readonly entity: string; readonly id: string },
): Promise<readonly Origin[] | null> {
  const read = thing.safeParse(wanted);
  if (!read.success || !(await maySee(actor, read.data))) return null;
  const { entity, id } = read.data;
  const [steps, edits] = await Promise.all([fromFiles(entity, id), byHand(entity, id)]);
  return [...steps, ...edits].sort((a, b) => b.at.localeCompare(a.at)).slice(0, MOST_SHOWN);
}

/** Whether the thing is there and its site is the actor's; what has no site belongs to the whole group. */
async function maySee(actor: Actor, { entity, id }: z.output<typeof thing>): Promise<boolean> {
  const scope = scopeOf(actor.grants, "read");
  const sites = scope === "all" ? [] : [...scope];
  const found = await database().$queryRaw<unknown[]>`
    WITH machine AS (SELECT m."id", l."siteId" FROM "Machine" m JOIN "Line" l ON l."id" = m."lineId"),
    place AS (SELECT p."id", m."siteId" FROM "Position" p JOIN machine m ON m."id" = p."machineId"),
    stay AS (SELECT s."id", s."unitId", p."siteId" FROM "Placement" s JOIN place p ON p."id" = s."positionId"),
    thing AS (
      SELECT 'Site' AS "entity", "id", "id" AS "siteId" FROM "Site"
      UNION ALL SELECT 'Line', "id", "siteId" FROM "Line"
      UNION ALL SELECT 'Controller', "id", "siteId" FROM "Controller"
      UNION ALL SELECT 'Network', "id", "siteId" FROM "Network"
      UNION ALL SELECT 'StockLot', "id", "siteId" FROM "StockLot"
      UNION ALL SELECT 'Event', "id", "siteId" FROM "Event"
      UNION ALL SELECT 'Contact', "id", "siteId" FROM "Contact"
      UNION ALL SELECT 'ShutdownWindow', "id", "siteId" FROM "ShutdownWindow"
      UNION ALL SELECT 'Sighting', "id", "siteId" FROM "Sighting"
      UNION ALL SELECT 'Machine', "id", "siteId" FROM machine
      UNION ALL SELECT 'Axis', a."id", m."siteId" FROM "Axis" a JOIN machine m ON m."id" = a."machineId"
      UNION ALL SELECT 'Panel', p."id", m."siteId" FROM "Panel" p JOIN machine m ON m."id" = p."machineId"
      UNION ALL SELECT 'Position', "id", "siteId" FROM place
      UNION ALL SELECT 'Placement', "id", "siteId" FROM stay
      UNION ALL SELECT 'Unit', "unitId", "siteId" FROM stay
      UNION ALL SELECT 'Backup', b."id", c."siteId" FROM "Backup" b JOIN "Controller" c ON c."id" = b."controllerId"
      UNION ALL SELECT 'Part', "id", NULL FROM "Part"
      UNION ALL SELECT 'PartAlias', "id", "siteId" FROM "PartAlias"
      UNION ALL SELECT 'Family', "id", NULL FROM "Family"
      UNION ALL SELECT 'Successor', "id", NULL FROM "Successor"
      UNION ALL SELECT 'LifecycleFact', "id", NULL FROM "LifecycleFact"
    )
    SELECT 1 FROM thing WHERE "entity" = ${entity} AND "id" = ${id}::uuid
      AND (${scope === "all"} OR "siteId" IS NULL OR "siteId" = ANY(${sites}::uuid[])) LIMIT 1`;
  return found.length > 0;
}

interface Step {
  readonly batchId: string;
  readonly fileName: string;
  readonly rowNumber: number;
  readonly at: string;
  readonly by: string;
  readonly fields: string[] | null;
}

async function fromFiles(entity: Entity, id: string): Promise<Origin[]> {
  const steps = await database().$queryRaw<Step[]>`
    SELECT b."id"::text AS "batchId", b."fileName", c."rowNumber",
      to_char(b."committedAt" AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS "at",
      coalesce(u."name", 'somebody no longer here') AS "by",
      CASE WHEN c."before" IS NULL THEN NULL ELSE ARRAY(SELECT jsonb_object_keys(c."after")) END AS "fields"
    FROM "ImportChange" c JOIN "ImportBatch" b ON b."id" = c."batchId" LEFT JOIN "User" u ON u."id" = b."createdBy"
    WHERE c."entity" = ${entity} AND c."entityId" = ${id} AND b."state" = 'committed'
    ORDER BY b."committedAt" DESC, c."sequence" DESC LIMIT ${MOST_SHOWN}`;
  return steps.map((step) => ({ kind: "file", ...step }));
}

async function byHand(entity: Entity, id: string): Promise<Origin[]> {
  const edits = await database().auditEntry.findMany({
    where: { entity, entityId: id },
    orderBy: { at: "desc" },
    take: MOST_SHOWN,
    select: { at: true, after: true, keyName: true, user: { select: { name: true } } },
  });
  return edits.map(({ at, after, keyName, user }) => ({
    ...{ kind: "hand", at: at.toISOString(), by: keyName ?? user?.name ?? "the installation itself" },
    fields: after !== null && typeof after === "object" && !Array.isArray(after) ? Object.keys(after) : [],
  }));
}
