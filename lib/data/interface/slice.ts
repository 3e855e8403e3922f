import "server-only";
import type { Actor } from "@/lib/access/actor";
import { atSites } from "@/lib/data/scope";

/** A slice of a list that is in the order of its ids. */
export interface SliceAsked {
  /** Rows at most. */
  readonly most: number;
  /** Id of the row before the first; null is from the beginning. */
  readonly after: string | null;
  /** Rows of this site alone; null is all the actor reads. */
  readonly siteId: string | null;
}

/** How the rows of a slice follow each other. */
export function inOrder({ most, after }: SliceAsked) {
  return {
    where: after === null ? {} : { id: { gt: after } },
    orderBy: { id: "asc" },
    take: most,
  } as const;
}

/** `where` of rows that carry `siteId`: those the actor reads, of the site asked for. */
export function atAskedSite(actor: Actor, { siteId }: Pick<SliceAsked, "siteId">) {
  return { AND: [atSites(actor, "read"), siteId === null ? {} : { siteId }] };
}
