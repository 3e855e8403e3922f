import { err, ok, type Result } from "@/lib/kernel/result";
import { type Assumptions, likelyAssumptions } from "@/lib/risk/assumptions";
import { assumptionValues } from "@/lib/schema/assumptions";

/** A value that cannot be used: where it stands, and why. */
export interface AssumptionProblem {
  /** Names from the outside in, joined by points, e.g. `classes.drive.removalRate`. */
  readonly path: string;
  readonly message: string;
}

/**
 * Reads a whole set of assumptions, each value within its bounds and the sets of values in order.
 *
 * A value a set was written without, because the product did not have it yet, stands as likely; a name nobody
 * knows is a problem.
 */
export function readAssumptions(json: unknown): Result<Assumptions, readonly AssumptionProblem[]> {
  const read = assumptionValues.safeParse(completed(json));
  if (!read.success)
    return err(read.error.issues.map(({ path, message }) => ({ path: path.join("."), message })));
  return ok(read.data);
}

/** A stored set with the likely value wherever it was written before the product had one. */
export function completed(json: unknown): unknown {
  if (!isRecord(json)) return json;
  const { classes } = json;
  if (!isRecord(classes)) return { ...likelyAssumptions, ...json };
  const likely: Readonly<Record<string, object>> = likelyAssumptions.classes;
  const whole = Object.entries(classes).map(([name, own]) => [
    name,
    isRecord(own) ? { ...likely[name], ...own } : own,
  ]);
  return { ...likelyAssumptions, ...json, classes: { ...likely, ...Object.fromEntries(whole) } };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
