import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { sites } from "@/lib/data/scope";

export interface SiteName {
  readonly id: string;
  readonly code: string;
  readonly name: string;
}

/** The sites a person may read, by code. */
export async function readSiteNames(actor: Actor): Promise<SiteName[]> {
  return database().site.findMany({
    where: sites(actor, "read"),
    orderBy: { code: "asc" },
    select: { id: true, code: true, name: true },
  });
}
