import "server-only";
import type { PartTable } from "@/lib/data/identity/partRows";
import type { Prisma } from "@/prisma/generated/client";

/** Two lots, or two planned removals, put together: what the kept one held before and after, and the one that went. */
export interface Folded {
  readonly table: "StockLot" | "PlannedRemoval";
  readonly keptId: string;
  readonly before: number | null;
  readonly after: number | null;
  /** The row that went, as the database wrote it. */
  readonly gone: Readonly<Record<string, Prisma.JsonValue>>;
}

/** Everything a merge did, so that it can be taken back. */
export interface MergeSteps {
  readonly moved: readonly { readonly table: PartTable; readonly ids: readonly string[] }[];
  readonly successors: readonly { readonly id: string; readonly side: "partId" | "successorId" }[];
  readonly folded: readonly Folded[];
  /** Fields the kept part lacked and took over, as the database writes them. */
  readonly filled: Readonly<Record<string, Prisma.JsonValue>>;
  /** The number of the part that went, as another number of the kept one; null where it was one already. */
  readonly aliasId: string | null;
}

/** Fields of a part that a merge fills where the kept one does not know them. */
export const FILLED_FIELDS = [
  "familyId",
  "price",
  "priceCurrency",
  "pricedOn",
  "leadWeeks",
  "leadWeeksP80",
  "repairYield",
  "repairTurnaroundDays",
  "powerKw",
  "profileFamily",
] as const;
