import "server-only";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import type { EvaluationMark } from "@/lib/data/group/evaluationMark";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { GroupInput, LineResult, PoolFigures, Span } from "@/lib/risk/evaluation";
import { monthsStored } from "@/lib/risk/evaluationRows";
import { type GroupByPool, groupByPool, type SeenPool } from "@/lib/risk/poolSites";
import { groundOf } from "@/lib/risk/stages";

const LONGEST_LOAD_MS = 120_000;

/** A part's pool with what is stored of it. */
export interface StoredPool extends SeenPool {
  readonly figures: PoolFigures;
  readonly noSpareByMonth: readonly Span[];
}

/** The group as it was evaluated: what a question about some pools starts from, without evaluating anything anew. */
export interface SeenGroup {
  readonly mark: EvaluationMark;
  readonly byPool: GroupByPool;
  readonly pools: readonly StoredPool[];
}

interface Laid {
  readonly id: string;
  readonly byPool: GroupByPool;
  readonly pools: ReadonlyMap<string, GroupInput["pools"][number]>;
}

/** The group laid out last, by its evaluation; kept over hot reloads. */
const kept = globalThis as typeof globalThis & { ebblineSeenGroup?: Promise<Laid> };

/** The group of a day with the stored results of some parts, or (null) of all. */
export async function loadSeenGroup(asOf: IsoDate, partIds: readonly string[] | null): Promise<SeenGroup> {
  const mark = await currentEvaluation(asOf);
  const [laid, rows] = await Promise.all([
    laidOut(mark),
    database().evaluatedPool.findMany({
      where: { evaluationId: mark.id, ...(partIds === null ? {} : { partId: { in: [...partIds] } }) },
      select: { partId: true, result: true, noSpareByMonth: true },
    }),
  ]);
  const pools = rows.flatMap(({ partId, result, noSpareByMonth }): StoredPool[] => {
    const pool = laid.pools.get(partId);
    const figures = result as unknown as PoolFigures;
    const { stage, removal } = figures;
    return pool ? [{ pool, stage, removal, figures, noSpareByMonth: monthsStored(noSpareByMonth) }] : [];
  });
  return { mark, byPool: laid.byPool, pools };
}

/** Reading the whole group is most of the work, and the same for every question about one evaluation. */
async function laidOut(mark: EvaluationMark): Promise<Laid> {
  const known = await kept.ebblineSeenGroup?.catch(() => undefined);
  if (known?.id === mark.id) return known;
  const loading = layOut(mark);
  kept.ebblineSeenGroup = loading;
  return loading;
}

async function layOut({ id, asOf, assumptions }: EvaluationMark): Promise<Laid> {
  const [input, lines] = await Promise.all([
    database().$transaction((tx) => loadGroupInput(tx, asOf), { timeout: LONGEST_LOAD_MS }),
    database().evaluatedLine.findMany({ where: { evaluationId: id }, select: { result: true } }),
  ]);
  const results = lines.map(({ result }) => result as unknown as LineResult);
  return {
    id,
    byPool: groupByPool(input, groundOf(input, assumptions), results),
    pools: new Map(input.pools.map((pool) => [pool.id, pool])),
  };
}
