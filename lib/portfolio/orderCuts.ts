import type { LimitRow } from "@/lib/portfolio/planLimits";
import type { Candidate } from "@/lib/portfolio/planSlots";

/** A choice that needs one of its partners: what must be before it, or follow it. */
interface Need {
  readonly row: LimitRow;
  readonly own: number;
  readonly partners: readonly number[];
}

function needOf(row: LimitRow): Need | null {
  if (row.limit.kind !== "after" && row.limit.kind !== "commits-to") return null;
  const signs = [...row.takes];
  const own = signs.find(([, amount]) => amount > 0);
  const partners = signs.flatMap(([index, amount]) => (amount < 0 ? [index] : []));
  return own ? { row, own: own[0], partners } : null;
}

/** Of one stage at most one is chosen, so all that need no more than these partners may lean on them together. */
function together(need: Need, stage: readonly Need[]): LimitRow {
  const mine = new Set(need.partners);
  const alike = stage.filter(({ partners }) => partners.every((index) => mine.has(index)));
  return {
    ...need.row,
    takes: new Map([
      ...alike.map(({ own }): [number, number] => [own, 1]),
      ...need.partners.map((index): [number, number] => [index, -1]),
    ]),
  };
}

/**
 * The same limits for whole choices, tighter for parts of them: choices of one stage share what they need, instead of
 * each leaning on the whole of it.
 */
export function sharedNeeds(
  limits: readonly LimitRow[],
  candidates: readonly Pick<Candidate, "line" | "option">[],
): LimitRow[] {
  const stages = new Map<string, Need[]>();
  const others: LimitRow[] = [];
  for (const row of limits) {
    const need = needOf(row);
    const candidate = need && candidates[need.own];
    if (!need || !candidate) {
      others.push(row);
      continue;
    }
    const key = JSON.stringify([row.limit.kind, candidate.line.lineId, candidate.option.stage]);
    stages.set(key, [...(stages.get(key) ?? []), need]);
  }
  return [
    ...others,
    ...[...stages.values()].flatMap((stage) => {
      const once = new Map(stage.map((need) => [need.partners.join(), need]));
      return [...once.values()].map((need) => together(need, stage));
    }),
  ];
}
