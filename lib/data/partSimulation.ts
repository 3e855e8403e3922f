import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { loadLeaving } from "@/lib/data/group/loadLeaving";
import { loadPoolsOf } from "@/lib/data/group/loadPools";
import type { PartQuestion } from "@/lib/data/partFacts";
import type { PoolFigures } from "@/lib/risk/evaluation";
import { monthsStored } from "@/lib/risk/evaluationRows";
import { leavingByPool } from "@/lib/risk/leavingByPool";
import { simulatePool } from "@/lib/risk/simulatePool";
import { withLeaves } from "@/lib/risk/withLeaves";
import type { SimulatedMonth } from "@/lib/view/partSimulation";

const MONTHS = [3, 6, 12, 24, 36, 60];
/** A share is then within 1 point of the truth in 19 of 20 simulations at the worst. */
const RUNS = 10_000;

/**
 * The no-spare chance of a part by simulation beside the one in use, some months ahead.
 *
 * As everything a pool says of the group: no site, unit or lot can be told from it.
 */
export async function readPartSimulation(
  actor: Actor,
  { partId, asOf }: Pick<PartQuestion, "partId" | "asOf">,
): Promise<readonly SimulatedMonth[]> {
  if (!maySomewhere(actor.grants, "read")) return [];
  const { id: evaluationId, assumptions } = await currentEvaluation(asOf);
  const [stored, [pool], lines, leaves] = await Promise.all([
    database().evaluatedPool.findFirst({ where: { evaluationId, partId } }),
    loadPoolsOf(database(), asOf, [partId]),
    readUnits(evaluationId, partId),
    loadLeaving(database(), asOf),
  ]);
  if (!stored || !pool) return [];
  const { removal, installed } = stored.result as unknown as PoolFigures;
  const rows = withLeaves(lines, leaves);
  const leaving =
    leavingByPool({ asOf, installed: rows, lines: [], pools: [], experience: [], restorations: [] }).get(
      partId,
    ) ?? [];
  const asked = { months: MONTHS, runs: RUNS, seed: Number(asOf.replaceAll("-", "")) };
  const seen = { pool, asOf, units: installed, leaving, removal, assumptions };
  const shares = simulatePool(seen, asked);
  const model = monthsStored(stored.noSpareByMonth);
  return MONTHS.flatMap((months, i) => {
    const span = model[months];
    return span ? [{ months, runs: RUNS, model: span.mean, simulated: shares[i] ?? 0 }] : [];
  });
}

/** Units of the part on each line, as evaluated. */
function readUnits(evaluationId: string, partId: string) {
  return database().$queryRaw<{ lineId: string; poolId: string; units: number }[]>`
    SELECT e."lineId"::text AS "lineId", ${partId} AS "poolId", (pool ->> 'units')::int AS "units"
    FROM "EvaluatedLine" e
    CROSS JOIN LATERAL jsonb_array_elements(e."result"::jsonb -> 'pools') AS pool
    WHERE e."evaluationId" = ${evaluationId}::uuid AND pool ->> 'poolId' = ${partId}`;
}
