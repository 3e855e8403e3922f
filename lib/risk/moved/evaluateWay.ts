import { evaluate } from "@/lib/risk/evaluate";
import type { GroupResult } from "@/lib/risk/evaluation";
import type { SnapshotInput } from "@/lib/risk/moved/snapshotInput";
import { stepwise } from "@/lib/risk/moved/stepwise";

/**
 * The group at the earlier snapshot, then after each step towards the later one; the last is the later one itself.
 *
 * @throws {RangeError} naming the argument and its value, from the evaluation.
 */
export function evaluateWay(before: SnapshotInput, after: SnapshotInput): GroupResult[] {
  return [before, ...stepwise(before, after)].map(({ input, assumptions }) => evaluate(input, assumptions));
}
