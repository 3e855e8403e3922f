import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { requireNumber } from "@/lib/kernel/requireNumber";

/** A task that needs hands from its first to its last day. */
export interface HandNeed {
  readonly project: string;
  readonly task: string;
  readonly start: IsoDate;
  readonly finish: IsoDate;
  /** Crews or engineers at work at the same time, >= 0. */
  readonly hands: number;
}

/** A stretch of days on which more hands are needed than there are. */
export interface Overload {
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** Most needed on a day of it. */
  readonly needed: number;
  readonly needs: readonly HandNeed[];
}

/**
 * Finds the days on which tasks together need more hands than there are; days on end with the same tasks or others
 * are one stretch.
 *
 * @throws {RangeError} when a number is negative or not finite.
 */
export function overloads(needs: readonly HandNeed[], available: number): Overload[] {
  requireNumber(available, "available", { least: 0 });
  for (const { hands, task } of needs) requireNumber(hands, `hands of ${task}`, { least: 0 });
  const turns = [...new Set(needs.flatMap(({ start, finish }) => [start, addDays(finish, 1)]))].sort();
  const found: Overload[] = [];
  turns.forEach((from, i) => {
    const next = turns[i + 1];
    if (next === undefined) return;
    const at = needs.filter(({ start, finish, hands }) => hands > 0 && start <= from && from <= finish);
    const needed = at.reduce((sum, { hands }) => sum + hands, 0);
    if (needed <= available) return;
    const stretch = { from, to: addDays(next, -1), needed, needs: at };
    const last = found.at(-1);
    if (last && addDays(last.to, 1) === from) found[found.length - 1] = joined(last, stretch);
    else found.push(stretch);
  });
  return found;
}

function joined(a: Overload, b: Overload): Overload {
  return {
    ...{ from: a.from, to: b.to, needed: Math.max(a.needed, b.needed) },
    needs: [...new Set([...a.needs, ...b.needs])],
  };
}
