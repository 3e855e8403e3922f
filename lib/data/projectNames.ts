import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";

export interface ProjectName {
  readonly id: string;
  readonly code: string;
  readonly name: string;
}

/** The projects somebody can be let into, by code: those at sites where the actor runs projects. */
export function readProjectNames(actor: Actor): Promise<ProjectName[]> {
  return database().project.findMany({
    where: atSites(actor, "project:write"),
    orderBy: { code: "asc" },
    select: { id: true, code: true, name: true },
  });
}
