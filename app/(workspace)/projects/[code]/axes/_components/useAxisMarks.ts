"use client";

import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { markTheseAxes, setThisRound, unmarkTheseAxes } from "@/app/(workspace)/projects/[code]/axes/actions";
import { ok } from "@/lib/kernel/result";
import type { AxisStepKind } from "@/lib/schema/axisStep";
import { type AxisStepsFile, axisStepWord, type LeftAxis } from "@/lib/view/axisSteps";
import { count } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface Marking {
  readonly file: AxisStepsFile;
  readonly change: ReturnType<typeof useProjectChange>;
  /** Day and name of what is marked. */
  readonly on: string;
  readonly by: string;
}

interface Former {
  readonly axisId: string;
  readonly on: string;
  readonly by: string;
}

/** Marks steps of axes, takes them back, and puts axes into rounds, each with its way back. */
export function useAxisMarks({ file: { projectId, axes }, change, on, by }: Marking) {
  const mark = (axisIds: readonly string[], step: AxisStepKind) =>
    change.run({
      run: () => markTheseAxes({ projectId, axisIds: [...axisIds], step, on, by }),
      done: ({ axisIds: marked, left }) =>
        `${count(marked.length, "axis", "axes")} ${step} on ${day(on)}.${leftWords(left)}`,
      undo: ({ axisIds: marked }) => unmarkTheseAxes({ projectId, axisIds: [...marked], step }),
    });
  const unmark = (axisIds: readonly string[], step: AxisStepKind) =>
    change.run({
      run: () => unmarkTheseAxes({ projectId, axisIds: [...axisIds], step }),
      done: ({ axisIds: taken, left }) =>
        `${axisStepWord(step)} taken back of ${count(taken.length, "axis", "axes")}.${leftWords(left)}`,
      undo: ({ former }) => markAgain(former, step),
    });
  /** As they were marked before: one change for each day and name. */
  const markAgain = async (former: readonly Former[], step: AxisStepKind) => {
    for (const { axisIds, ...said } of alike(former)) {
      const again = await markTheseAxes({ projectId, axisIds, step, ...said });
      if (!again.ok) return again;
    }
    return ok(null);
  };
  const round = (axisIds: readonly string[], wanted: number) =>
    change.run({
      run: () => setThisRound({ projectId, axisIds: [...axisIds], round: wanted }),
      done: `${count(axisIds.length, "axis", "axes")} ${wanted === 0 ? "stay as they are" : `in round ${wanted}`}.`,
      undo: async () => {
        for (const before of new Set(axes.map((one) => one.round))) {
          const ids = axes
            .filter((one) => one.round === before && axisIds.includes(one.id))
            .map(({ id }) => id);
          const back =
            ids.length === 0 ? ok(null) : await setThisRound({ projectId, axisIds: ids, round: before });
          if (!back.ok) return back;
        }
        return ok(null);
      },
    });
  return { mark, unmark, round };
}

function leftWords(left: readonly LeftAxis[]): string {
  const [first] = left;
  return first ? ` ${left.length} left as they are; first: ${first.axis} ${first.reason}.` : "";
}

function alike(former: readonly Former[]) {
  const groups = new Map<string, { on: string; by: string; axisIds: string[] }>();
  for (const { axisId, on, by } of former) {
    const key = `${on} ${by}`;
    const group = groups.get(key) ?? { on, by, axisIds: [] };
    group.axisIds.push(axisId);
    groups.set(key, group);
  }
  return [...groups.values()];
}
