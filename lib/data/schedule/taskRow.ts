import "server-only";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ScheduleTask } from "@/lib/view/schedule";
import type { Prisma } from "@/prisma/generated/client";

/** What a task is read with. */
export const taskParts = {
  after: { select: { afterId: true, lag: true } },
} satisfies Prisma.ProjectTaskInclude;

/** A stored task as a plain value. */
export function scheduleTask(row: Prisma.ProjectTaskGetPayload<{ include: typeof taskParts }>): ScheduleTask {
  const { id, code, name, days, inWindow, who, crews, milestoneId, version } = row;
  return {
    ...{ id, code, name, days, inWindow, who, crews, milestoneId, version },
    engineers: row.engineers?.toNumber() ?? null,
    after: row.after.map(({ afterId, lag }) => ({ id: afterId, lag })),
    notBefore: dayOf(row.notBefore),
    ...{ plannedStart: dayOf(row.plannedStart), plannedFinish: dayOf(row.plannedFinish) },
    ...{ baselineStart: dayOf(row.baselineStart), baselineFinish: dayOf(row.baselineFinish) },
    ...{ startedOn: dayOf(row.startedOn), finishedOn: dayOf(row.finishedOn) },
  };
}

const dayOf = (date: Date | null): IsoDate | null => date?.toISOString().slice(0, 10) ?? null;
