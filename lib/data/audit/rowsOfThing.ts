import "server-only";
import { database } from "@/lib/data/client";
import type { AuditThing } from "@/lib/view/audit/auditEntry";
import type { Prisma } from "@/prisma/generated/client";

type Model = Uncapitalize<Prisma.ModelName>;
type Belonging = readonly [model: Model, column: string];

const inProject = (...models: Model[]) => models.map((model): Belonging => [model, "projectId"]);

/** Rows that belong to a thing: their model and the column that names it. */
const PARTS_OF: Readonly<Record<AuditThing, readonly Belonging[]>> = {
  line: [
    ["machine", "lineId"],
    ["obligation", "lineId"],
    ["riskAcceptance", "lineId"],
    ["event", "lineId"],
    ["contact", "lineId"],
  ],
  machine: [
    ["axis", "machineId"],
    ["position", "machineId"],
    ["panel", "machineId"],
    ["event", "machineId"],
  ],
  part: [
    ["stockLot", "partId"],
    ["lifecycleFact", "partId"],
    ["repairOrder", "partId"],
    ["partAlias", "partId"],
    ["transfer", "partId"],
    ["storageCare", "partId"],
  ],
  lot: [
    ["stockHold", "lotId"],
    ["storageCare", "lotId"],
  ],
  axis: [
    ["axisRecord", "axisId"],
    ["position", "axisId"],
  ],
  plan: [["solveRun", "planId"]],
  project: [
    ...inProject("costEntry", "costImport", "changeOrder", "milestone", "projectTask", "projectGate"),
    ...inProject("axisRecord", "cutover", "openPoint", "projectRisk", "removedUnit", "fittedUnit"),
    ...inProject("closeStatement", "projectClosing"),
  ],
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
  const there = PARTS_OF[kind].map(([model, column]) =>
    (database()[model] as unknown as Finder).findMany({ where: { [column]: id }, select: { id: true } }),
  );
  const tables = PARTS_OF[kind].map(([model]) => model.charAt(0).toUpperCase() + model.slice(1));
  const columns = PARTS_OF[kind].map(([, column]) => column);
  const gone = database().$queryRaw<{ id: string }[]>`
    SELECT DISTINCT p."key" AS "id" FROM unnest(${tables}::text[], ${columns}::text[]) AS of("table", "column")
    JOIN "RowPast" p ON p."table" = of."table" AND p."row"->>of."column" = ${id}`;
  const rows = await Promise.all([...there, gone]);
  return [...new Set([id, ...rows.flat().map((row) => row.id)])];
}
