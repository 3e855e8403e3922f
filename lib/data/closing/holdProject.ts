import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { atSites, projects } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { Project } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such project that you may change." };
const isClosed: Refusal = {
  code: "impossible",
  reason: "The project is closed. Take the closing back before anything in it is changed.",
};

/** A project the actor may change, held until the transaction ends; null when there is none. */
export async function holdProject(tx: Transaction, actor: Actor, projectId: string): Promise<Project | null> {
  await tx.$queryRaw`SELECT "id" FROM "Project" WHERE "id" = ${projectId}::uuid FOR UPDATE`;
  return tx.project.findFirst({ where: { id: projectId, ...atSites(actor, "project:write") } });
}

/** A project the actor records in, at its site or as its contractor, held the same way; refused once it is closed. */
export async function holdRecordedProject(
  tx: Transaction,
  actor: Actor,
  projectId: string,
): Promise<Result<Project, Refusal>> {
  await tx.$queryRaw`SELECT "id" FROM "Project" WHERE "id" = ${projectId}::uuid FOR UPDATE`;
  const project = await tx.project.findFirst({
    where: { AND: [{ id: projectId }, projects(actor, "event:write")] },
  });
  return openOf(project);
}

/** The same of one the actor may change, refused once the project is closed: what closing rested on stays as it was. */
export async function holdOpenProject(
  tx: Transaction,
  actor: Actor,
  projectId: string,
): Promise<Result<Project, Refusal>> {
  return openOf(await holdProject(tx, actor, projectId));
}

function openOf(project: Project | null): Result<Project, Refusal> {
  if (!project) return err(missing);
  return project.status === "closed" ? err(isClosed) : ok(project);
}
