import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere, seesAmounts } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import type { ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";

/** Parts with what an order asks, and what follows what; the catalogue belongs to everybody who may read at some site. */
export async function readScopeParts(
  actor: Actor,
  evaluationId: string,
): Promise<Pick<ScopeFacts, "parts" | "successors">> {
  if (!maySomewhere(actor.grants, "read")) return { parts: [], successors: [] };
  const [parts, successors] = await Promise.all([
    database().$queryRaw<ScopeFacts["parts"][number][]>`
      SELECT p."id"::text AS "id", p."number", p."itemClass"::text AS "itemClass", f."name" AS "family",
        (p."price" / rate."perEuro")::float8 AS "price", p."pricedOn"::text AS "pricedOn",
        p."leadWeeks"::float8 AS "leadWeeks", p."leadWeeksP80"::float8 AS "leadWeeksP80", e."result"->>'stage' AS "stage"
      FROM "Part" p
      LEFT JOIN "Family" f ON f."id" = p."familyId"
      LEFT JOIN "CurrencyRate" rate ON rate."currency" = p."priceCurrency"
      LEFT JOIN "EvaluatedPool" e ON e."partId" = p."id" AND e."evaluationId" = ${evaluationId}::uuid
      WHERE p."itemClass" IN ('drive', 'controller', 'io', 'hmi', 'network_card')
      ORDER BY p."number", p."id"`,
    database().successor.findMany({
      select: { partId: true, successorId: true, condition: true },
      orderBy: [{ partId: "asc" }, { successorId: "asc" }],
    }),
  ]);
  // A price is the group's, so it is told to whom every amount is.
  if (seesAmounts(actor.grants)) return { parts, successors };
  return { parts: parts.map((part) => ({ ...part, price: null, pricedOn: null })), successors };
}
