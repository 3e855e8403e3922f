import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { AxisCount } from "@/lib/projects/progress";
import type { AxisStepKind } from "@/lib/schema/axisStep";

/** What milestones earned by axes are counted from, for some projects. */
export interface AxisCounts {
  /** The axes a milestone is earned by; null when it is earned whole. */
  readonly of: (milestone: StepOfMilestone) => AxisCount | null;
}

interface StepOfMilestone {
  readonly projectId: string;
  readonly axisStep: AxisStepKind | null;
  readonly axisRound: number | null;
}

interface CountedRow {
  readonly projectId: string;
  readonly round: number;
  /** Null counts all axes of the round. */
  readonly step: AxisStepKind | null;
  readonly on: IsoDate | null;
  readonly axes: number;
}

/**
 * Counts the axes of projects by round, step and day, in one question whatever their number.
 *
 * The caller has narrowed the projects to those the person may see.
 */
export async function countAxes(tx: Transaction, projectIds: readonly string[]): Promise<AxisCounts> {
  const rows = projectIds.length === 0 ? [] : await ask(tx, projectIds);
  const byProject = new Map<string, CountedRow[]>();
  for (const row of rows) {
    const own = byProject.get(row.projectId);
    if (own) own.push(row);
    else byProject.set(row.projectId, [row]);
  }
  return {
    of: ({ projectId, axisStep, axisRound }) => {
      if (axisStep === null) return null;
      const own = (byProject.get(projectId) ?? []).filter(
        ({ round }) => axisRound === null || round === axisRound,
      );
      const total = own.reduce((sum, { step, axes }) => sum + (step === null ? axes : 0), 0);
      const done = own.flatMap(({ step, on, axes }) =>
        step === axisStep && on !== null ? { on, axes } : [],
      );
      return { total, done };
    },
  };
}

function ask(tx: Transaction, projectIds: readonly string[]): Promise<CountedRow[]> {
  return tx.$queryRaw<CountedRow[]>`
    WITH own AS (
      SELECT p."id" AS "projectId", a."id" AS "axisId", coalesce(r."round", 1) AS "round"
      FROM "Project" p
      JOIN "Machine" m ON m."lineId" = p."lineId"
      JOIN "Axis" a ON a."machineId" = m."id"
      LEFT JOIN "ProjectAxis" r ON r."projectId" = p."id" AND r."axisId" = a."id"
      WHERE p."id" = ANY(${projectIds}::uuid[]) AND coalesce(r."round", 1) > 0
        AND EXISTS (SELECT FROM "Milestone" s WHERE s."projectId" = p."id" AND s."axisStep" IS NOT NULL)
    )
    SELECT "projectId"::text, "round", NULL AS "step", NULL AS "on", count(*)::int AS "axes"
    FROM own GROUP BY "projectId", "round"
    UNION ALL
    SELECT own."projectId"::text, own."round", s."step"::text, s."doneOn"::text, count(*)::int
    FROM own JOIN "AxisStep" s ON s."projectId" = own."projectId" AND s."axisId" = own."axisId"
    GROUP BY own."projectId", own."round", s."step", s."doneOn"
    ORDER BY 1, 2, 3, 4`;
}
