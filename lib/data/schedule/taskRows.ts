import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { ScheduleTask } from "@/lib/view/schedule";

interface TaskRow extends ScheduleTask {
  readonly projectId: string;
}

/**
 * The tasks of projects with their links, by project and in their order, in one question whatever their number.
 *
 * The caller has narrowed the projects to those the person may see.
 */
export async function loadTaskRows(
  tx: Transaction,
  projectIds: readonly string[],
): Promise<ReadonlyMap<string, ScheduleTask[]>> {
  const rows = await tx.$queryRaw<TaskRow[]>`
    SELECT t."projectId"::text, t."id"::text, t."code", t."name", t."days", t."inWindow", t."who", t."crews",
      t."engineers"::float8, t."notBefore"::text, t."plannedStart"::text, t."plannedFinish"::text,
      t."baselineStart"::text, t."baselineFinish"::text, t."startedOn"::text, t."finishedOn"::text,
      t."milestoneId"::text, t."version", coalesce(l."after", '[]'::json) AS "after"
    FROM "ProjectTask" t
    LEFT JOIN (
      SELECT k."taskId", json_agg(json_build_object('id', k."afterId", 'lag', k."lag") ORDER BY b."sequence") AS "after"
      FROM "TaskLink" k JOIN "ProjectTask" b ON b."id" = k."afterId"
      WHERE b."projectId" = ANY(${projectIds}::uuid[])
      GROUP BY k."taskId"
    ) l ON l."taskId" = t."id"
    WHERE t."projectId" = ANY(${projectIds}::uuid[])
    ORDER BY t."projectId", t."sequence"`;
  const byProject = new Map<string, ScheduleTask[]>();
  for (const { projectId, ...task } of rows) {
    const own = byProject.get(projectId);
    if (own) own.push(task);
    else byProject.set(projectId, [task]);
  }
  return byProject;
}
