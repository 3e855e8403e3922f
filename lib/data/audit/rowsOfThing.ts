import "server-only";
import { database } from "@/lib/data/client";
import type { AuditThing } from "@/lib/view/audit/auditEntry";
import { Prisma } from "@/prisma/generated/client";

type Model = Uncapitalize<Prisma.ModelName>;

/** What names a thing in the rows that belong to it. */
type ThingColumn = "lineId" | "machineId" | "partId" | "lotId" | "axisId" | "planId" | "projectId";

interface Belonging {
  readonly column: ThingColumn;
  readonly models: readonly Model[];
  /** Rows whose owner belongs to it: their model, and the relation to their owner. */
  readonly through?: readonly (readonly [model: Model, owner: string])[];
}

/** Rows that belong to a thing and have entries of their own. */
const PARTS_OF: Readonly<Record<AuditThing, Belonging>> = {
  line: {
    column: "lineId",
    models: [
      ...(["machine", "obligation", "riskAcceptance", "event", "contact"] as const),
      ...(["shutdownWindow", "reviewAction", "project"] as const),
    ],
  },
  machine: { column: "machineId", models: ["axis", "position", "panel", "event"] },
  part: {
    column: "partId",
    models: [
      ...([
        "stockLot",
        "lifecycleFact",
        "repairOrder",
        "partAlias",
        "transfer",
        "storageCare",
        "event",
      ] as const),
      ...(["successor", "reviewBuy", "reviewAction", "numberVerdict", "countLine"] as const),
      ...(["removedUnit", "fittedUnit"] as const),
    ],
  },
  lot: { column: "lotId", models: ["stockHold", "storageCare", "transfer", "countLine"] },
  axis: {
    column: "axisId",
    models: ["axisRecord", "position", "axisStep"],
    through: [["axisEntry", "record"]],
  },
  plan: { column: "planId", models: ["solveRun"] },
  project: {
    column: "projectId",
    models: [
      ...(["costEntry", "costImport", "changeOrder", "milestone", "projectTask", "projectGate"] as const),
      ...(["axisRecord", "cutover", "openPoint", "projectRisk", "removedUnit", "fittedUnit"] as const),
      ...(["closeStatement", "projectClosing"] as const),
    ],
    through: [
      ["axisEntry", "record"],
      ["cutoverStep", "cutover"],
    ],
  },
};

/** The column in a row of the past, as it stands in its index. */
const NAMED: Readonly<Record<ThingColumn, Prisma.Sql>> = {
  lineId: Prisma.sql`p."row"->>'lineId'`,
  machineId: Prisma.sql`p."row"->>'machineId'`,
  partId: Prisma.sql`p."row"->>'partId'`,
  lotId: Prisma.sql`p."row"->>'lotId'`,
  axisId: Prisma.sql`p."row"->>'axisId'`,
  planId: Prisma.sql`p."row"->>'planId'`,
  projectId: Prisma.sql`p."row"->>'projectId'`,
};

interface Finder {
  findMany(asked: object): Promise<readonly { readonly id: string }[]>;
}

/** Ids of the thing and of every row that belongs or belonged to it. */
export async function rowsOfThing({
  kind,
  id,
}: {
  readonly kind: AuditThing;
  readonly id: string;
}): Promise<string[]> {
  const { column, models, through = [] } = PARTS_OF[kind];
  const find = (model: Model, where: object) =>
    (database()[model] as unknown as Finder).findMany({ where, select: { id: true } });
  const rows = await Promise.all([
    ...models.map((model) => find(model, { [column]: id })),
    ...through.map(([model, owner]) => find(model, { [owner]: { [column]: id } })),
    goneRows(PARTS_OF[kind], id),
  ]);
  return [...new Set([id, ...rows.flat().map((row) => row.id)])];
}

/**
 * Rows of the past, by the index each column has. Events are by the million and have none: of them only what somebody
 * took back has an entry, and stands in the past at the time of that entry.
 */
function goneRows({ column, models }: Belonging, id: string): Promise<{ id: string }[]> {
  const tables = models.map((model) => model.charAt(0).toUpperCase() + model.slice(1));
  const named = Prisma.sql`${NAMED[column]} = ${id}`;
  const events = tables.includes("Event")
    ? Prisma.sql`UNION SELECT u."entityId" FROM undone u CROSS JOIN LATERAL (
          SELECT p."row" FROM "RowPast" p WHERE p."table" = 'Event' AND p."key" = u."entityId"
            AND p."at" BETWEEN u."at" - interval '2 minutes' AND u."at" + interval '2 minutes' OFFSET 0
        ) p WHERE ${named}`
    : Prisma.empty;
  return database().$queryRaw<{ id: string }[]>`
    WITH undone AS MATERIALIZED (
      SELECT "entityId", "at" FROM "AuditEntry"
      WHERE split_part("deed", ':', 1) = 'event' AND "deed" = 'event:undo'
    )
    SELECT p."key" AS "id" FROM "RowPast" p
    WHERE p."table" = ANY(${tables}::text[]) AND p."table" <> 'Event' AND ${named}
    ${events}`;
}
