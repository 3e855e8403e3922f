import { thingWord } from "@/lib/view/importWords";
import { count } from "@/lib/view/number";

/** How many rows of each kind a merge moves or puts together. */
export interface MergeCounts {
  readonly moved: Readonly<Record<string, number>>;
  readonly folded: number;
  readonly successors: number;
  readonly filled: readonly string[];
}

interface Steps {
  readonly moved: readonly { readonly table: string; readonly ids: readonly string[] }[];
  readonly successors: readonly unknown[];
  readonly folded: readonly unknown[];
  readonly filled: Readonly<Record<string, unknown>>;
}

/** Counts what a merge did. */
export function mergeCounts({ moved, successors, folded, filled }: Steps): MergeCounts {
  return {
    moved: Object.fromEntries(moved.map(({ table, ids }) => [table, ids.length])),
    folded: folded.length,
    successors: successors.length,
    filled: Object.keys(filled).sort(),
  };
}

/** The counts as one mark: a merge is made only of what its preview showed. */
export function seenMark({ moved, folded, successors, filled }: MergeCounts): string {
  const rows = Object.entries(moved).sort(([a], [b]) => (a < b ? -1 : 1));
  return [...rows.map(([table, rowCount]) => `${table}:${rowCount}`), folded, successors, filled.length].join(
    " ",
  );
}

const OTHER_WORDS: Readonly<Record<string, readonly [string, string]>> = {
  RepairOrder: ["repair", "repairs"],
  PlannedRemoval: ["planned removal", "planned removals"],
  Transfer: ["transfer", "transfers"],
  CountLine: ["line of a count", "lines of counts"],
  StorageCare: ["care given", "cares given"],
  RemovedUnit: ["unit a project took out", "units projects took out"],
  FittedUnit: ["unit a project put in", "units projects put in"],
};

/** What moves, in words: `3 units`, `2 stock lots`. */
export function movedWords({ moved, folded, successors }: MergeCounts): string[] {
  const words = Object.entries(moved).map(([table, rows]) => {
    const [one, many] = OTHER_WORDS[table] ?? [thingWord(table, false), thingWord(table, true)];
    return count(rows, one, many);
  });
  return [
    ...words,
    ...(successors > 0 ? [count(successors, "successor")] : []),
    ...(folded > 0 ? [`${count(folded, "lot or removal", "lots or removals")} put together`] : []),
  ];
}
