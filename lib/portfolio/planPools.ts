import { doneIn, type PoolEffect, rowsWithLeaves } from "@/lib/portfolio/planEffects";
import type { Candidate } from "@/lib/portfolio/planSlots";
import { type PoolChange, poolAhead } from "@/lib/portfolio/poolAhead";
import type { StagedEvaluation } from "@/lib/risk/evaluate";
import type { InstalledInput, PoolResult } from "@/lib/risk/evaluation";
import { leavingByPool } from "@/lib/risk/leavingByPool";
import type { EvaluatedPool } from "@/lib/risk/stages";

/** A pool as some choices leave it. */
export interface PoolState {
  /** Unique among all states of all pools of one evaluator. */
  readonly name: number;
  readonly result: PoolResult;
}

/** The candidates of a plan and what each does to the pools, by its index. */
export interface CandidateEffects {
  readonly candidates: readonly Candidate[];
  readonly effects: readonly (readonly PoolEffect[])[];
}

function rowsByPool(installed: readonly InstalledInput[]): Map<string, InstalledInput[]> {
  const out = new Map<string, InstalledInput[]>();
  for (const row of installed) {
    const rows = out.get(row.poolId) ?? [];
    out.set(row.poolId, rows);
    rows.push(row);
  }
  return out;
}

/** The candidates that touch each pool. */
function touchingByPool(
  { effects }: CandidateEffects,
  { pools }: StagedEvaluation,
): Map<string, ReadonlySet<number>> {
  const out = new Map<string, Set<number>>();
  for (const [index, list] of effects.entries())
    for (const { poolId } of list) {
      if (!pools.has(poolId))
        throw new RangeError(`poolId of an option must be a pool of the group, got ${poolId}`);
      out.set(poolId, (out.get(poolId) ?? new Set<number>()).add(index));
    }
  return out;
}

/** What choices do to one pool, all those that touch it. */
function changeOf(
  poolId: string,
  chosen: readonly number[],
  about: CandidateEffects & { readonly staged: StagedEvaluation; readonly rows: readonly InstalledInput[] },
): PoolChange {
  const { input } = about.staged;
  const all = chosen.flatMap((index) =>
    (about.effects[index] ?? [])
      .filter((effect) => effect.poolId === poolId)
      .map((effect) => ({ candidate: about.candidates[index] as Candidate, ...effect })),
  );
  const leaving = all.flatMap(({ candidate, leaves }) =>
    leaves.map((leave) => ({ lineId: candidate.line.lineId, leave })),
  );
  const installed = rowsWithLeaves(about.rows, leaving);
  return {
    leaving: leavingByPool({ ...input, installed }).get(poolId) ?? [],
    arrivals: all.flatMap(({ arrivals }) => arrivals),
    added: all.flatMap(({ candidate, added }) =>
      added > 0 ? [{ at: doneIn(candidate, input.asOf), units: added }] : [],
    ),
  };
}

/**
 * The pools under any choices; each state of a pool is computed once.
 *
 * @throws {RangeError} for an option that touches a pool the group does not have.
 */
export function planPools(
  about: CandidateEffects,
  staged: StagedEvaluation,
): (poolId: string, chosen: readonly number[]) => PoolState {
  const rows = rowsByPool(staged.input.installed);
  const touching = touchingByPool(about, staged);
  const known = new Map<string, PoolState>();
  return (poolId, chosen) => {
    const touches = touching.get(poolId);
    const mine = touches ? chosen.filter((index) => touches.has(index)) : [];
    const key = `${poolId}|${mine}`;
    const before = known.get(key);
    if (before) return before;
    const evaluated = staged.pools.get(poolId) as EvaluatedPool;
    const here = { ...about, staged, rows: rows.get(poolId) ?? [] };
    const result =
      mine.length === 0
        ? evaluated.result
        : poolAhead(evaluated, changeOf(poolId, mine, here), staged.ground);
    const state = { name: known.size, result };
    known.set(key, state);
    return state;
  };
}
