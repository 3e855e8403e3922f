import type { Assumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, LineResult } from "@/lib/risk/evaluation";

/** Share of a pool's failures on a line that stop it. */
export type StopShareOf = (lineId: string, poolId: string) => number;

/**
 * The stop shares of the evaluation, which the draws take as they are: 1 where no machine can stand in for another.
 *
 * @param lines The evaluation's lines; computed when absent and needed.
 */
export function stopShareOf(
  input: GroupInput,
  assumptions: Assumptions,
  lines?: readonly LineResult[],
): StopShareOf {
  if (!input.installed.some(({ standby }) => standby)) return () => 1;
  const shares = new Map(
    (lines ?? evaluate(input, assumptions).lines).map(({ lineId, pools }) => [
      lineId,
      new Map(pools.map(({ poolId, stopShare }) => [poolId, stopShare])),
    ]),
  );
  return (lineId, poolId) => shares.get(lineId)?.get(poolId) ?? 1;
}
