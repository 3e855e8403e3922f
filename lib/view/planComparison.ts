import { shortWay } from "@/lib/view/boardWords";
import type { BoardView } from "@/lib/view/planBoard";

/** A plan in a comparison. */
export interface ComparedPlan {
  /** Null is the ranking on the same money, which nobody keeps. */
  readonly id: string | null;
  readonly name: string;
  readonly state: string;
  readonly view: BoardView;
}

/** What is done to a line in each plan, in the order of the plans; empty where nothing is. */
export interface ComparedLine {
  readonly code: string;
  readonly name: string;
  readonly does: readonly string[];
  /** Not the same in all plans. */
  readonly differs: boolean;
}

/** The lines any of the plans treats, with what each does. */
export function comparedLines(plans: readonly ComparedPlan[]): ComparedLine[] {
  const lines = new Map(
    plans.flatMap(({ view }) => view.lines.map((line) => [line.code, line.name] as const)),
  );
  return [...lines]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([code, name]) => {
      const does = plans.map(({ view }) => {
        const placed = view.lines.find((line) => line.code === code)?.placed ?? [];
        return placed.map(({ optionId, slotName }) => `${shortWay(optionId)}, ${slotName}`).join("; ");
      });
      return { code, name, does, differs: new Set(does).size > 1 };
    })
    .filter(({ does }) => does.some((one) => one !== ""));
}
