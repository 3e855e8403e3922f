import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { Project } from "@/prisma/generated/client";

const place = {
  select: {
    designation: true,
    axis: { select: { code: true } },
    machine: { select: { code: true } },
    placements: { where: { untilOn: null }, include: { unit: true } },
  },
} as const;

/** The rows a closing looks at, in a fixed number of questions. */
export async function loadCloseRecords(tx: Transaction, project: Project) {
  const { id: projectId } = project;
  const ofProject = { where: { projectId } };
  const [axes, standing, removed, fitted, statements, points, gates, commitments] = [
    await loadAxes(tx, project),
    await loadStanding(tx, project),
    await tx.removedUnit.findMany({
      ...ofProject,
      include: { part: { select: { number: true } }, position: place },
      orderBy: [{ part: { number: "asc" } }, { serial: "asc" }, { id: "asc" }],
    }),
    await tx.fittedUnit.findMany({
      ...ofProject,
      include: { part: { select: { number: true } }, position: place },
      orderBy: [
        { position: { machine: { code: "asc" } } },
        { position: { axis: { code: "asc" } } },
        { id: "asc" },
      ],
    }),
    await tx.closeStatement.findMany({ ...ofProject, orderBy: { kind: "asc" } }),
    await tx.openPoint.findMany({ ...ofProject, orderBy: [{ dueOn: "asc" }, { id: "asc" }] }),
    await tx.projectGate.findMany({ ...ofProject, orderBy: { sequence: "asc" } }),
    await loadCommitments(tx, projectId),
  ];
  return { axes, standing, removed, fitted, statements, points, gates, commitments };
}

/** The axes of the line that the project does not leave as they are. */
function loadAxes(tx: Transaction, { id: projectId, lineId }: Project) {
  return tx.axis.findMany({
    where: { machine: { lineId }, projectRounds: { none: { projectId, round: 0 } } },
    select: {
      ...{ id: true, code: true },
      machine: {
        select: {
          ...{ id: true, code: true },
          controller: {
            select: {
              ...{ id: true, designation: true, model: true },
              backups: {
                where: { kind: { in: ["program", "parameters"] } },
                orderBy: { takenOn: "desc" },
                take: 1,
              },
            },
          },
        },
      },
      positions: {
        where: { itemClass: "drive" },
        select: { id: true, designation: true, part: { select: { number: true } } },
      },
      records: { where: { projectId }, include: { entries: true } },
      projectSteps: { where: { projectId, step: "tuned" }, select: { doneOn: true } },
    },
    orderBy: [{ machine: { code: "asc" } }, { code: "asc" }],
  });
}

interface Standing {
  readonly id: string;
  readonly name: string;
  readonly units: number;
}

/** Parts the project is to take out, with the places of the line that still hold them and got no new unit. */
function loadStanding(tx: Transaction, { id, lineId }: Project): Promise<Standing[]> {
  return tx.$queryRaw<Standing[]>`
    SELECT part."id"::text AS "id", part."number" AS "name", count(p."id")::int AS "units"
    FROM "PlannedRemoval" r
    JOIN "Part" part ON part."id" = r."partId"
    LEFT JOIN "Machine" m ON m."lineId" = ${lineId}::uuid
    LEFT JOIN "Position" p ON p."partId" = r."partId" AND p."machineId" = m."id"
      AND NOT EXISTS (SELECT FROM "FittedUnit" f WHERE f."projectId" = r."projectId" AND f."positionId" = p."id")
    WHERE r."projectId" = ${id}::uuid
    GROUP BY part."id", part."number"
    ORDER BY part."number"`;
}

/** Orders whose invoices do not come to their amount. */
function loadCommitments(
  tx: Transaction,
  projectId: string,
): Promise<{ readonly id: string; readonly name: string }[]> {
  return tx.$queryRaw<{ readonly id: string; readonly name: string }[]>`
    SELECT c."id"::text AS "id", c."reference" || ', ' || c."text" AS "name"
    FROM "CostEntry" c
    WHERE c."projectId" = ${projectId}::uuid AND c."kind" = 'committed'
      AND c."amount" > coalesce((
        SELECT sum(i."amount") FROM "CostEntry" i
        WHERE i."projectId" = c."projectId" AND i."kind" = 'actual' AND i."orderReference" = c."reference"
      ), 0)
    ORDER BY c."spentOn", c."reference"`;
}
