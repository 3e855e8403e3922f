import "server-only";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { readLineScope } from "@/lib/data/lineScope";
import { atSites } from "@/lib/data/scope";
import { readScopeNorms } from "@/lib/data/scopeNorms";
import { usualGates } from "@/lib/projects/usualGates";
import { templateTasks, type UsualTask, usualTasks } from "@/lib/projects/usualTasks";
import { buildScope, type Scope } from "@/lib/retrofit/scope/buildScope";
import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { targetChoices } from "@/lib/retrofit/scope/targetChoices";

/** What a project of a plan's line starts with. */
export interface UsualWork {
  /** By the scope of the line where there is one, else the template. */
  readonly tasks: readonly UsualTask[];
  /** What its retrofit takes and costs; null where that is not known. */
  readonly scope: Scope | null;
  readonly norms: ScopeNorms;
}

/** The work of a plan's line as far as it is known. */
export async function usualWorkOf(actor: Actor, planLineId: string): Promise<UsualWork> {
  const [{ norms }, asOf, planLine] = await Promise.all([
    readScopeNorms(actor),
    readAsOf(actor, undefined),
    database().planLine.findFirst({
      where: { id: planLineId, line: atSites(actor, "project:write") },
      select: { line: { select: { code: true } } },
    }),
  ]);
  const found = planLine && (await readLineScope(actor, { code: planLine.line.code, asOf }));
  const target = found && targetChoices(found.facts)[0]?.family;
  const built = target && found ? buildScope(found.facts, { target, norms }) : null;
  const scope = built?.ok ? built.value : null;
  return { tasks: usualTasks(scope?.schedule.tasks ?? templateTasks(norms), norms), scope, norms };
}

interface NewTasks {
  readonly projectId: string;
  readonly tasks: readonly UsualTask[];
}

/** Writes a project's tasks with their links, milestones and gates. */
export async function createTasks(tx: Transaction, { projectId, tasks }: NewTasks): Promise<void> {
  const milestones = await tx.milestone.findMany({
    where: { projectId },
    select: { id: true, sequence: true },
  });
  const milestoneIds = new Map(milestones.map(({ id, sequence }) => [sequence, id]));
  await tx.projectTask.createMany({
    data: tasks.map(({ after: _, milestone, ...task }, i) => ({
      ...{ ...task, projectId, sequence: i + 1 },
      milestoneId: milestone === null ? null : (milestoneIds.get(milestone) ?? null),
    })),
  });
  const stored = await tx.projectTask.findMany({ where: { projectId }, select: { id: true, code: true } });
  const ids = new Map(stored.map(({ id, code }) => [code, id]));
  await tx.taskLink.createMany({
    data: tasks.flatMap(({ code, after }) =>
      after.map((before) => ({ taskId: ids.get(code) ?? "", afterId: ids.get(before) ?? "" })),
    ),
  });
  for (const [i, { name, guards, items }] of usualGates.entries())
    await tx.projectGate.create({
      data: {
        ...{ projectId, name, sequence: i + 1, taskId: ids.get(guards) ?? null },
        items: { create: items.map((text, k) => ({ text, sequence: k + 1 })) },
      },
    });
}
