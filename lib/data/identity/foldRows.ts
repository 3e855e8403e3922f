import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import type { Folded } from "@/lib/data/identity/mergeSteps";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { Prisma } from "@/prisma/generated/client";

export interface TwoParts {
  readonly keptId: string;
  readonly otherId: string;
}

interface LotPair {
  readonly keptId: string;
  readonly keptQuantity: number | null;
  readonly goneId: string;
  readonly quantity: number | null;
  readonly gone: Record<string, Prisma.JsonValue>;
  readonly place: string;
  readonly held: boolean;
}

const refused = (reason: string): Refusal => ({ code: "conflict", reason: `${reason} Nothing was changed.` });

/** Lots of both parts in one bin, revision and state become one: their pieces are added up, unknown with any is unknown. */
export async function foldLots(
  tx: Transaction,
  { keptId, otherId }: TwoParts,
): Promise<Result<Folded[], Refusal>> {
  const pairs = await tx.$queryRaw<LotPair[]>`
    SELECT k."id"::text AS "keptId", k."quantity" AS "keptQuantity", g."id"::text AS "goneId", g."quantity",
      to_jsonb(g) AS "gone", s."code" || ' ' || g."bin" AS "place",
      EXISTS (SELECT FROM "CountLine" c WHERE c."lotId" = g."id")
        OR EXISTS (SELECT FROM "StockHold" h WHERE h."lotId" = g."id")
        OR EXISTS (SELECT FROM "StorageCare" c WHERE c."lotId" = g."id")
        OR EXISTS (SELECT FROM "Transfer" t WHERE g."id" IN (t."lotId", t."toLotId")) AS "held"
    FROM "StockLot" g
    JOIN "StockLot" k ON k."partId" = ${keptId}::uuid AND k."siteId" = g."siteId" AND k."bin" = g."bin"
      AND k."revision" = g."revision" AND k."state" = g."state"
    JOIN "Site" s ON s."id" = g."siteId"
    WHERE g."partId" = ${otherId}::uuid ORDER BY "place", 1`;
  const held = pairs.filter((pair) => pair.held).map((pair) => pair.place);
  if (held.length > 0)
    return err(
      refused(
        `Pieces of both parts lie in one bin in one state (${held.join(", ")}), and counts, holds, care or transfers name the lot that would go. Move its pieces to another bin first.`,
      ),
    );
  for (const { keptId: id, keptQuantity, quantity, goneId } of pairs) {
    await tx.stockLot.update({ where: { id }, data: { quantity: sum(keptQuantity, quantity) } });
    await tx.stockLot.delete({ where: { id: goneId } });
  }
  return ok(
    pairs.map(({ keptId: id, keptQuantity, quantity, gone }) => ({
      ...{ table: "StockLot", keptId: id, before: keptQuantity, after: sum(keptQuantity, quantity), gone },
    })),
  );
}

function sum(one: number | null, other: number | null): number | null {
  return one === null || other === null ? null : one + other;
}

interface RemovalPair {
  readonly keptId: string;
  readonly keptUnits: number;
  readonly goneId: string;
  readonly units: number;
  readonly gone: Record<string, Prisma.JsonValue>;
  readonly project: string;
  readonly alike: boolean;
}

/** Planned removals of both parts by one project become one, where they leave the same line on the same day. */
export async function foldRemovals(
  tx: Transaction,
  { keptId, otherId }: TwoParts,
): Promise<Result<Folded[], Refusal>> {
  const pairs = await tx.$queryRaw<RemovalPair[]>`
    SELECT k."id"::text AS "keptId", k."units" AS "keptUnits", g."id"::text AS "goneId", g."units",
      to_jsonb(g) AS "gone", p."code" AS "project",
      k."lineId" = g."lineId" AND k."leavesOn" = g."leavesOn" AND k."kept" = g."kept" AS "alike"
    FROM "PlannedRemoval" g
    JOIN "PlannedRemoval" k ON k."projectId" = g."projectId" AND k."partId" = ${keptId}::uuid
    JOIN "Project" p ON p."id" = g."projectId"
    WHERE g."partId" = ${otherId}::uuid ORDER BY p."code"`;
  const unlike = pairs.filter((pair) => !pair.alike).map((pair) => pair.project);
  if (unlike.length > 0)
    return err(
      refused(`Project ${unlike.join(", ")} removes both parts on different days. Give them one day first.`),
    );
  for (const { keptId: id, keptUnits, units, goneId } of pairs) {
    await tx.plannedRemoval.update({ where: { id }, data: { units: keptUnits + units } });
    await tx.plannedRemoval.delete({ where: { id: goneId } });
  }
  return ok(
    pairs.map(({ keptId: id, keptUnits, units, gone }) => ({
      ...{ table: "PlannedRemoval", keptId: id, before: keptUnits, after: keptUnits + units, gone },
    })),
  );
}

/** Two records of one serial number: one unit cannot be told from two. */
export async function refuseSharedSerials(
  tx: Transaction,
  { keptId, otherId }: TwoParts,
): Promise<Result<null, Refusal>> {
  const shared = await tx.$queryRaw<{ serial: string }[]>`
    SELECT g."serial" FROM "Unit" g JOIN "Unit" k ON k."partId" = ${keptId}::uuid AND k."serial" = g."serial"
    WHERE g."partId" = ${otherId}::uuid ORDER BY 1 LIMIT 5`;
  if (shared.length === 0) return ok(null);
  const serials = shared.map(({ serial }) => serial).join(", ");
  return err(
    refused(`Both parts have a unit with the serial number ${serials}. Read the nameplates and correct one.`),
  );
}
