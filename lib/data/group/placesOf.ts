import "server-only";
import { Prisma } from "@/prisma/generated/client";

/** Ids of the places that hold or held the parts. */
export const placesOf = (partIds: readonly string[]): Prisma.Sql => Prisma.sql`
  SELECT "id" FROM "Position" WHERE "partId" = ANY(${partIds}::uuid[])
  UNION
  SELECT pl."positionId" FROM "Unit" u JOIN "Placement" pl ON pl."unitId" = u."id"
  WHERE u."partId" = ANY(${partIds}::uuid[])`;
