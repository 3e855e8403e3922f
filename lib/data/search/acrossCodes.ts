import "server-only";
import { holds } from "@/lib/data/search/matching";
import { Prisma } from "@/prisma/generated/client";

/**
 * Machines whose line's and own code together hold the text, as `id`: in the line's code alone, or from some letter of
 * it on and going on with the beginning of the machine's.
 *
 * @param seen Condition on the line `l`.
 */
export function machinesAcross(key: string, seen: Prisma.Sql): Prisma.Sql {
  return Prisma.sql`
    SELECT m."id" FROM "Line" l JOIN "Machine" m ON m."lineId" = l."id"
    WHERE ${seen} AND ${holds(key, Prisma.sql`l."code"`)}
    UNION
    SELECT m."id" FROM (${tailsOf(key, seen)}) tail JOIN "Machine" m ON m."lineId" = tail."lineId"
    WHERE "searchKey"(m."code") LIKE tail."rest" || '%'`;
}

/**
 * Axes whose line's, machine's and own code together hold the text, as `id`, where it does not lie in the axis's own.
 *
 * A text that starts in the middle of a machine's code and goes on in the axis's is not looked for: nobody types it.
 */
export function axesAcross(key: string, seen: Prisma.Sql): Prisma.Sql {
  return Prisma.sql`
    SELECT a."id" FROM "Axis" a WHERE a."machineId" IN (
      ${machinesAcross(key, seen)}
      UNION SELECT m."id" FROM "Machine" m JOIN "Line" l ON l."id" = m."lineId"
      WHERE ${holds(key, Prisma.sql`m."code"`)} AND ${seen})
    UNION
    SELECT a."id" FROM (
      SELECT m."id", substr(tail."rest", length("searchKey"(m."code")) + 1) AS "rest"
      FROM (${tailsOf(key, seen)}) tail JOIN "Machine" m ON m."lineId" = tail."lineId"
      WHERE starts_with(tail."rest", "searchKey"(m."code")) AND length(tail."rest") > length("searchKey"(m."code"))
      UNION
      SELECT m."id", substr(${key}, length("searchKey"(m."code")) + 1)
      FROM "Machine" m JOIN "Line" l ON l."id" = m."lineId"
      WHERE "searchKey"(m."code") COLLATE "C" = ANY(${beginningsOf(key)}::text[]) AND ${seen}
    ) machine JOIN "Axis" a ON a."machineId" = machine."id" AND "searchKey"(a."code") LIKE machine."rest" || '%'`;
}

const beginningsOf = (key: string) => [...key].slice(1).map((_, i) => [...key].slice(0, i + 1).join(""));

/** Lines whose code ends as the text begins, as `lineId`, with the rest of the text. */
function tailsOf(key: string, seen: Prisma.Sql): Prisma.Sql {
  return Prisma.sql`
    SELECT own."lineId", substr(${key}, cut + 1) AS "rest"
    -- OFFSET keeps the planner from working out each key once for each letter.
    FROM (SELECT l."id" AS "lineId", "searchKey"(l."code") AS "key" FROM "Line" l WHERE ${seen} OFFSET 0) own,
      generate_series(1, length(${key}) - 1) cut
    WHERE right(own."key", cut) = left(${key}, cut)`;
}
