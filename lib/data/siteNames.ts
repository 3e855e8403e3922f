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

/** Whose books the stock of a site is on, by code: the sites a person may read. */
export async function readSiteOwners(
  actor: Actor,
): Promise<ReadonlyMap<string, { readonly name: string; readonly currency: string }>> {
  const rows = await database().site.findMany({
    where: sites(actor, "read"),
    orderBy: { code: "asc" },
    select: { code: true, name: true, currency: true },
  });
  return new Map(rows.map(({ code, ...owner }) => [code, owner]));
}
