import "server-only";
import type { Transaction } from "@/lib/data/change";
import { productSets } from "@/lib/risk/assumptionSets";
import type { Assumptions } from "@/lib/risk/assumptions";
import { readAssumptions } from "@/lib/risk/readAssumptions";
import { type AssumptionChoice, assumptionChoice } from "@/lib/schema/assumptions";

/** Name of the group-wide setting that says which version of which set is in use. */
export const ASSUMPTION_SETTING = "assumptions";

/** A version of a set with its values. */
export interface SetInUse extends AssumptionChoice {
  readonly values: Assumptions;
}

/** The assumptions every figure of the group is computed with: those chosen, else the product's likely ones. */
export async function assumptionsInUse(tx: Transaction): Promise<SetInUse> {
  const setting = await tx.setting.findUnique({
    where: { key: ASSUMPTION_SETTING },
    select: { value: true },
  });
  if (!setting) return productSets.likely;
  const choice = assumptionChoice.parse(setting.value);
  const row = await tx.assumptionSet.findUniqueOrThrow({
    where: { kind_version: choice },
    select: { values: true },
  });
  return { ...choice, values: storedAssumptions(row.values) };
}

/**
 * The values of a stored version.
 *
 * @throws {RangeError} when a stored value breaks a rule that held when it was written.
 */
export function storedAssumptions(json: unknown): Assumptions {
  const read = readAssumptions(json);
  if (read.ok) return read.value;
  const [problem] = read.error;
  throw new RangeError(`stored assumptions must be readable, got ${problem?.path}: ${problem?.message}`);
}
