import type { AssumptionChoice } from "@/lib/schema/assumptions";

const NAMES: Readonly<Record<AssumptionChoice["kind"], string>> = {
  careful: "Careful",
  likely: "Likely",
  bold: "Bold",
  own: "Own",
};

/** What a set is called: `Careful`. */
export function assumptionKindName(kind: AssumptionChoice["kind"]): string {
  return NAMES[kind];
}

/** A version of a set beside the figures computed with it: `assumptions likely, version 1`. */
export function assumptionSetName({ kind, version }: AssumptionChoice): string {
  return `assumptions ${kind}, version ${version}`;
}
